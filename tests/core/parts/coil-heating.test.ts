import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  coilPower,
  continuousTemperature,
  type HeatedCoil,
  heatingRate,
  resistanceAt,
  temperatureAfter,
  temperatureOf,
} from "../../../core/parts/coil-heating.ts";

/** The public ODE library odex; its types are TypeScript source that our stricter settings refuse. */
const { Solver } = createRequire(import.meta.url)("odex") as {
  Solver: new (
    size: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    solve(f: (x: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[] };
  };
};

const coil: HeatedCoil = {
  resistance20: 200,
  voltage: 22.8,
  seriesResistance: 0,
  ambient: 20,
  thermalResistance: 25,
  timeConstant: 300,
};

function byOdex(heated: HeatedCoil, time: number): number {
  const solver = new Solver(1);
  solver.absoluteTolerance = 1e-14;
  solver.relativeTolerance = 1e-14;
  return solver.solve((_, y) => [heatingRate(heated, y[0])], 0, [heated.ambient], time).y[0];
}

const heatedCoils = fc.record({
  resistance20: fc.double({ min: 5, max: 500, noNaN: true }),
  voltage: fc.double({ min: 0, max: 48, noNaN: true }),
  seriesResistance: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 50, noNaN: true })),
  ambient: fc.double({ min: -20, max: 60, noNaN: true }),
  thermalResistance: fc.double({ min: 0, max: 60, noNaN: true }),
  timeConstant: fc.double({ min: 1, max: 2000, noNaN: true }),
});

describe("copper", () => {
  // IEC 60028: 0.003 93 per kelvin at 20 °C; so 1.3144 times at 100 °C.
  test("has 1.3144 times its resistance at 100 °C", () => {
    expect(resistanceAt(1, 20)).toBe(1);
    expect(resistanceAt(1, 100)).toBeCloseTo(1.3144, 12);
    expect(temperatureOf(200, resistanceAt(200, 87.5))).toBeCloseTo(87.5, 10);
  });
});

describe("the fixed point", () => {
  test("is where loss and heat agree", () => {
    const end = continuousTemperature(coil);
    expect(end).toBeCloseTo(coil.ambient + coil.thermalResistance * coilPower(coil, end), 10);
  });

  test("of a coil straight on its voltage is the root of a quadratic", () => {
    // (T − 20)(1 + α (T − 20)) = R_th V²/R_20, ambient 20 °C
    const heat = (25 * 22.8 ** 2) / 200;
    const rise = (Math.sqrt(1 + 4 * 0.00393 * heat) - 1) / (2 * 0.00393);
    expect(continuousTemperature(coil)).toBeCloseTo(20 + rise, 10);
  });

  test("is the fixed point and stable for any coil, also behind a large resistance", () => {
    fc.assert(
      fc.property(heatedCoils, (heated) => {
        const end = continuousTemperature(heated);
        const rest = heated.thermalResistance * coilPower(heated, end) + heated.ambient - end;
        expect(Math.abs(rest)).toBeLessThan(1e-9 * (1 + Math.abs(end)));
        expect(heatingRate(heated, end + 1)).toBeLessThan(0);
        expect(heatingRate(heated, heated.ambient)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe("after a hold", () => {
  test("the coil is at ambient if the hold is 0 or the voltage is", () => {
    expect(temperatureAfter(coil, 0)).toBe(20);
    expect(temperatureAfter({ ...coil, voltage: 0 }, 100)).toBe(20);
  });

  test("a coil fed through a resistance far above its own, so nearly at constant current, follows the exact exponential", () => {
    // i constant: dT/dt is linear in T, T = T_∞ + (T_a − T_∞) e^(−λ t), λ = (1 − R_th i² α R_20)/τ_th.
    const fed = { ...coil, voltage: 1e8, seriesResistance: 1e9 };
    const slope = 1 - 25 * 0.1 ** 2 * 0.00393 * 200;
    const rise = (25 * 0.1 ** 2 * 200) / slope;
    for (const time of [1, 12, 300, 2000]) {
      const exact = 20 + rise * -Math.expm1((-slope * time) / 300);
      expect(Math.abs(temperatureAfter(fed, time) - exact)).toBeLessThan(1e-4 * rise);
    }
  });

  test("a weak heater, at constant power, follows 1 − e^(−t/τ)", () => {
    const weak = { ...coil, thermalResistance: 1e-6 };
    const rise = 1e-6 * (22.8 ** 2 / 200);
    for (const time of [10, 300, 1500]) {
      expect((temperatureAfter(weak, time) - 20) / rise).toBeCloseTo(-Math.expm1(-time / 300), 7);
    }
  });

  test("without series resistance it meets the implicit solution", () => {
    // r dr/(r² − r_a r − K) = −dt/τ with roots r1 > 0 > r2: Σ ± r_k ln(r − r_k)/(r1 − r2).
    const constant = 0.00393 * 200 * 25 * 22.8 ** 2;
    const root = Math.sqrt(200 ** 2 / 4 + constant);
    const [r1, r2] = [100 + root, 100 - root];
    const clock = (r: number) => -300 * ((r1 * Math.log(r1 - r) - r2 * Math.log(r - r2)) / (r1 - r2));
    for (const time of [0.5, 12, 60, 300, 1800]) {
      const r = resistanceAt(200, temperatureAfter(coil, time));
      expect(Math.abs((clock(r) - clock(200)) / time - 1)).toBeLessThan(1e-9);
    }
  });

  test("it agrees with odex, whatever the driver", () => {
    fc.assert(
      fc.property(heatedCoils, fc.double({ min: 0.1, max: 60, noNaN: true }), (heated, time) => {
        const span = Math.min(time, 20 * heated.timeConstant);
        const rise = Math.max(1, continuousTemperature(heated) - heated.ambient);
        expect(Math.abs(temperatureAfter(heated, span) - byOdex(heated, span))).toBeLessThan(1e-9 * rise);
      }),
      { numRuns: 300 },
    );
  });

  test("it rises with time towards the fixed point and never passes it", () => {
    fc.assert(
      fc.property(heatedCoils, fc.double({ min: 0.01, max: 1e5, noNaN: true }), (heated, time) => {
        const sooner = temperatureAfter(heated, time);
        const later = temperatureAfter(heated, 1.5 * time);
        const end = continuousTemperature(heated);
        expect(later).toBeGreaterThanOrEqual(sooner - 1e-9);
        expect(later).toBeLessThanOrEqual(end + 1e-9 * (1 + Math.abs(end)));
      }),
      { numRuns: 50 },
    );
  });

  test("however long, it ends at the fixed point", () => {
    expect(temperatureAfter({ ...coil, seriesResistance: 30 }, 1e7)).toBeCloseTo(
      continuousTemperature({ ...coil, seriesResistance: 30 }),
      10,
    );
  });
});
