import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type HeatedCoil, temperatureAfter } from "../../../core/parts/coil-heating.ts";
import { HEATING_TIME, thermalResistanceFrom } from "../../../core/parts/coil-trial.ts";

const COIL: HeatedCoil = {
  resistance20: 200,
  voltage: 24,
  seriesResistance: 0,
  ambient: 20,
  thermalResistance: 15,
  timeConstant: 400,
};

test("little heat: ΔT = R_th (V²/R)(1 − e^(−t/τ)), the plain exponential", () => {
  // 0.05 K of warming changes the copper by 0.02 %: the closed form holds to that.
  const coil = { ...COIL, voltage: 1 };
  const power = 1 / 200;
  const warming = 10 * power * (1 - Math.exp(-HEATING_TIME / coil.timeConstant));
  const found = thermalResistanceFrom(coil, HEATING_TIME, coil.ambient + warming) ?? 0;
  expect(found / 10).toBeCloseTo(1, 3);
});

test("long after: the fixed point T = T_a + R_th P(T) of the model, solved for R_th by hand", () => {
  // At 80 °C the coil has 200 (1 + 0.00393 · 60) = 247.16 ohm and 24²/247.16 = 2.33047 W; 60 K over that is 25.746 K/W.
  expect(thermalResistanceFrom(COIL, 1e6, 80)).toBeCloseTo(60 / (576 / 247.16), 6);
});

test("what the forward model gives is found again", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 60, noNaN: true }),
      fc.double({ min: 60, max: 2000, noNaN: true }),
      fc.double({ min: -10, max: 40, noNaN: true }),
      (thermalResistance, timeConstant, ambient) => {
        const coil = { ...COIL, thermalResistance, timeConstant, ambient };
        const hot = temperatureAfter(coil, HEATING_TIME);
        // Its own value is not looked at.
        const found = thermalResistanceFrom({ ...coil, thermalResistance: 1 }, HEATING_TIME, hot);
        expect((found ?? 0) / thermalResistance).toBeCloseTo(1, 6);
      },
    ),
    { numRuns: 60 },
  );
});

describe("none", () => {
  test.each([20, 12])("at %d °C it is no warmer than its surroundings", (temperature) => {
    expect(thermalResistanceFrom(COIL, HEATING_TIME, temperature)).toBeNull();
  });
  test("a voltage that heats nothing", () => {
    expect(thermalResistanceFrom({ ...COIL, voltage: 0 }, HEATING_TIME, 30)).toBeNull();
  });
});
