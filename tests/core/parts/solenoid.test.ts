import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Driver, Latch, Solenoid, Supply } from "../../../core/door/door.ts";
import {
  CLASS_LIMIT,
  forceAt,
  pullIn,
  pullInCurrent,
  pullInTime,
  ratedForce,
  releaseCurrent,
  releaseTime,
  sideLoadLimit,
  solenoidResult,
  withdrawForce,
} from "../../../core/parts/solenoid.ts";
import { si } from "../../../core/quantity/brands.ts";
import { darlington as driver, mosfet } from "./plain-parts.ts";

const solenoid: Solenoid = {
  ratedVoltage: si(24),
  ratedCurrent: si(0.12),
  inductance: si(0.3),
  stroke: si(0.008),
  pull: [
    { stroke: si(0), force: si(6) },
    { stroke: si(0.004), force: si(2.4) },
    { stroke: si(0.008), force: si(1.2) },
  ],
  thermalResistance: si(25),
  thermalTimeConstant: si(300),
  insulationClass: "B",
  ambient: si(20),
};
const latch: Latch = {
  boltWidth: si(0.008),
  slotWidth: si(0.012),
  distanceFromHinge: si(0.4),
  tipGap: si(0.002),
  engagement: si(0.004),
  edgeHalfWidth: si(0.01),
  boltMass: si(0.02),
  springForce: si(0.5),
  frictionCoefficient: si(0.2),
  guideFactor: si(2),
  sideLoad: si(0),
  offset: si(0),
  boltPoints: "up",
};
const supply: Supply = {
  voltage: si(24),
  currentLimit: si(0.5),
  logicVoltage: si(5),
  logicCurrent: si(0.04),
  regulator: "linear",
  efficiency: si(0.85),
  thermalResistance: si(65),
  ambient: si(25),
};

function bolt(over: { solenoid?: Solenoid; driver?: Driver; latch?: Latch; voltage?: number }) {
  const s = { ...supply, voltage: si<"V">(over.voltage ?? 24) };
  const all = solenoidResult(over.solenoid ?? solenoid, over.driver ?? driver, s, over.latch ?? latch, 12);
  if (all.bolt === null) throw new Error("the door of this test has a bolt");
  return all.bolt;
}

describe("the rated pull curve", () => {
  test("is straight between its points and flat beyond them", () => {
    expect(ratedForce(solenoid.pull, 0)).toBe(6);
    expect(ratedForce(solenoid.pull, 0.002)).toBeCloseTo(4.2, 12);
    expect(ratedForce(solenoid.pull, 0.004)).toBe(2.4);
    expect(ratedForce(solenoid.pull, 0.007)).toBeCloseTo(1.5, 12);
    expect(ratedForce(solenoid.pull, 0.02)).toBe(1.2);
    expect(ratedForce(solenoid.pull.slice(1), 0)).toBe(2.4);
  });

  test("falls with the square of the current", () => {
    expect(forceAt(6, 0.06, 0.12)).toBeCloseTo(1.5, 12);
  });
});

describe("the trade's small pull solenoid, 24 V and 120 mA (common practice, no source)", () => {
  const at = (voltage: number) => pullIn(solenoid, driver, latch, voltage, 20);

  test("is not pulled in by 12 V, is by 15 V, and surely by 24 V", () => {
    expect(at(12).pullsIn).toBe(false);
    expect(at(12).time).toBeNull();
    expect(at(15).pullsIn).toBe(true);
    expect(at(24).pullsIn).toBe(true);
    expect(at(24).force / at(24).needed).toBeGreaterThan(2);
  });

  test("has 200 ohm, and 24 V less the drop drive 114 mA through it", () => {
    const result = solenoidResult(solenoid, driver, supply, latch, 12);
    expect(result.resistance).toBeCloseTo(200, 12);
    expect(result.coil?.current).toBeCloseTo(0.114, 12);
  });

  test("pulls in at the voltage where its pull equals the need, and takes forever just there", () => {
    const voltage = at(24).pullInVoltage ?? 0;
    const net = 0.5 - 0.02 * 9.80665;
    expect(voltage).toBeCloseTo(0.12 * Math.sqrt(net / 1.2) * 200 + 1.2, 12);
    expect(at(voltage * 0.9999).pullsIn).toBe(false);
    expect(at(voltage * 1.0001).pullsIn).toBe(true);
    expect(at(voltage * 1.0001).force).toBeCloseTo(net, 3);
  });

  test("pulls in later through a MOSFET's resistance at the same current", () => {
    expect(pullIn(solenoid, mosfet, latch, 24, 20).current).toBeCloseTo(24 / 200.5, 12);
    const needed = 0.12 * Math.sqrt((0.5 - 0.02 * 9.80665) / 1.2);
    expect(pullIn(solenoid, mosfet, latch, 24, 20).pullInVoltage).toBeCloseTo(needed * 200.5, 12);
  });
});

describe("pull-in", () => {
  // A coil's current grows as i (1 − e^(−t/τ)): 63.2 % after one time constant (any textbook of circuits).
  test("takes one time constant to 63.2 % of the current", () => {
    expect(pullInTime(1.5e-3, 1 - Math.exp(-1), 1)).toBeCloseTo(1.5e-3, 15);
  });

  test("never comes where the current stays below, or only reaches it", () => {
    expect(pullInTime(1e-3, 1, 1)).toBeNull();
    expect(pullInTime(1e-3, 2, 1)).toBeNull();
    expect(pullInTime(1e-3, 0, 0)).toBeNull();
  });

  test("needs no current for a bolt that falls back by itself, and none helps a coil without pull", () => {
    expect(pullInCurrent(0.12, -0.1, 1.2)).toBe(0);
    expect(pullInCurrent(0.12, 0.1, 0)).toBeNull();
  });

  test("is judged hot and at the supply's low end", () => {
    const { pullIn: nominal, pullInHot, pullInLow, pullInHotLow } = bolt({});
    expect(pullInHot.temperature).toBeGreaterThan(60);
    expect(pullInHot.pullInCurrent).toBe(nominal.pullInCurrent);
    expect(pullInHot.current).toBeLessThan(nominal.current);
    expect(pullInLow.supplyVoltage).toBeCloseTo(22.8, 12);
    expect(pullInHotLow.current).toBeLessThan(Math.min(pullInHot.current, pullInLow.current));
    expect(pullInHotLow.temperature).toBe(pullInHot.temperature);
  });
});

describe("the force to withdraw", () => {
  test("is the spring's less the bolt's weight pointing up, plus it pointing down", () => {
    expect(bolt({}).pullIn.needed).toBeCloseTo(0.5 - 0.02 * 9.80665, 12);
    expect(bolt({ latch: { ...latch, boltPoints: "down" } }).pullIn.needed).toBeCloseTo(
      0.5 + 0.02 * 9.80665,
      12,
    );
  });

  test("grows by k_g μ N under a side load", () => {
    expect(withdrawForce(0.4, 2, 0.2, 5)).toBeCloseTo(2.4, 12);
  });

  test("meets the pull of the hot coil at the side load limit", () => {
    const limit = bolt({}).sideLoadLimit ?? Number.NaN;
    const loaded = bolt({ latch: { ...latch, sideLoad: si(limit) } });
    expect(loaded.pullInHot.force).toBeCloseTo(loaded.pullInHot.needed, 12);
    expect(limit).toBeGreaterThan(0);
    expect(loaded.sideLoadLimit).toBe(limit);
  });

  test("is a negative limit where the coil fails unloaded, and none without friction", () => {
    expect(bolt({ voltage: 9 }).sideLoadLimit).toBeLessThan(0);
    expect(bolt({ latch: { ...latch, frictionCoefficient: si(0) } }).sideLoadLimit).toBeNull();
    expect(sideLoadLimit(2, 1, 2, 0.25)).toBe(2);
  });
});

describe("release", () => {
  test("without clamp voltage is the plain decay, τ ln(i/i_r)", () => {
    expect(releaseTime(0.3, 200, 0, Math.E * 0.04, 0.04)).toBeCloseTo(1.5e-3, 12);
  });

  test("solves L di/dt = −(R i + V_f) from i to i_r", () => {
    // The exact i(t) put back in: (i + V_f/R) e^(−R t/L) − V_f/R = i_r.
    const time = releaseTime(0.3, 200, 24.7, 0.114, 0.03);
    const clampCurrent = 24.7 / 200;
    expect((0.114 + clampCurrent) * Math.exp((-200 * time) / 0.3) - clampCurrent).toBeCloseTo(0.03, 12);
  });

  test("comes at the current where seated pull and spring agree", () => {
    expect(releaseCurrent(0.12, 1.5, 6)).toBeCloseTo(0.06, 12);
    expect(releaseCurrent(0.12, 0, 6)).toBeNull();
    expect(releaseCurrent(0.12, 1, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  test("is faster with a zener than with a diode, none without a clamp, none for a bolt that never rises", () => {
    const diode = bolt({}).releaseTime ?? 0;
    const zener = bolt({ driver: { ...driver, clamp: "zener", clampVoltage: si(24.7) } }).releaseTime ?? 0;
    expect(zener).toBeGreaterThan(0);
    expect(zener).toBeLessThan(diode);
    expect(bolt({ driver: { ...driver, clamp: "none" } }).releaseTime).toBeNull();
    expect(bolt({ latch: { ...latch, springForce: si(0.1) } }).releaseTime).toBeNull();
  });

  test("is at once where the coil can't keep the bolt in", () => {
    expect(bolt({ voltage: 3 }).releaseTime).toBe(0);
    expect(releaseTime(0.3, 200, 0, 0.1, 0.1)).toBe(0);
  });
});

describe("a door without some of the parts", () => {
  test("has what can be said without them and null for the rest", () => {
    expect(solenoidResult(solenoid, null, supply, latch, 12)).toEqual({
      resistance: 200,
      pullInVoltage: null,
      coil: null,
      bolt: null,
    });
    const noSupply = solenoidResult(solenoid, driver, null, latch, 12);
    expect([noSupply.coil, noSupply.bolt]).toEqual([null, null]);
    expect(noSupply.pullInVoltage).toBe(bolt({}).pullIn.pullInVoltage);
    const noLatch = solenoidResult(solenoid, driver, supply, null, null);
    expect(noLatch.bolt).toBeNull();
    expect(noLatch.coil?.holdTemperature).toBeNull();
    expect(noLatch.coil?.continuousTemperature).toBeGreaterThan(60);
  });
});

test("the insulation classes are those of IEC 60085", () => {
  expect(CLASS_LIMIT).toEqual({ A: 105, E: 120, B: 130, F: 155, H: 180 });
});

test("more supply never pulls in later, nor a hotter coil sooner; no figure is NaN", () => {
  const volts = fc.double({ min: 0, max: 48, noNaN: true });
  const degrees = fc.double({ min: -20, max: 150, noNaN: true });
  const load = fc.double({ min: 0, max: 5, noNaN: true });
  fc.assert(
    fc.property(
      volts,
      degrees,
      load,
      fc.constantFrom(driver, mosfet),
      (voltage, temperature, sideLoad, drive) => {
        const loaded = { ...latch, sideLoad: si<"N">(sideLoad) };
        const time = (v: number, t: number) =>
          pullIn(solenoid, drive, loaded, v, t).time ?? Number.POSITIVE_INFINITY;
        expect(time(voltage + 1, temperature)).toBeLessThanOrEqual(time(voltage, temperature));
        const hotter = pullIn(solenoid, drive, loaded, voltage, temperature + 10);
        if (hotter.pullsIn) expect(time(voltage, temperature)).toBeLessThan(Number.POSITIVE_INFINITY);
        for (const figure of Object.values(hotter)) expect(figure).not.toBeNaN();
      },
    ),
  );
});
