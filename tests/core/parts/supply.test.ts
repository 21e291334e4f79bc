import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Supply } from "../../../core/door/door.ts";
import {
  REGULATOR_CAUTION,
  REGULATOR_FAIL,
  supplyResult,
  switchingDissipation,
  switchingInput,
} from "../../../core/parts/supply.ts";
import { si } from "../../../core/quantity/brands.ts";

const supply: Supply = {
  voltage: si(24),
  currentLimit: si(0.5),
  logicVoltage: si(5),
  logicCurrent: si(0.1),
  regulator: "linear",
  efficiency: si(0.85),
  thermalResistance: si(65),
  ambient: si(25),
};
const switching: Supply = { ...supply, regulator: "switching" };

describe("24 V dropped to 5 V (common practice, no source)", () => {
  test("needs a heat sink in a linear regulator", () => {
    const result = supplyResult(supply, null);
    expect(result.regulatorDissipation).toBeCloseTo(1.9, 12);
    expect(result.regulatorTemperature).toBeCloseTo(148.5, 10);
    expect(result.regulatorTemperature).toBeGreaterThan(REGULATOR_FAIL);
  });

  test("stays cool in a switching one", () => {
    const result = supplyResult(switching, null);
    expect(result.regulatorDissipation).toBeCloseTo(0.5 * (1 / 0.85 - 1), 12);
    expect(result.regulatorTemperature).toBeLessThan(REGULATOR_CAUTION - 60);
  });
});

describe("the supply's current", () => {
  test("is the coil's and what the regulator takes", () => {
    expect(supplyResult(supply, 0.114).current).toBeCloseTo(0.214, 12);
    expect(supplyResult(switching, 0.114).current).toBeCloseTo(0.114 + 0.5 / (0.85 * 24), 12);
    expect(supplyResult(supply, null).current).toBeNull();
  });
});

test("a supply not above the logic voltage has nothing to drop and can't regulate", () => {
  const low = supplyResult({ ...supply, voltage: si(5) }, null);
  expect(low.regulates).toBe(false);
  expect(low.regulatorDissipation).toBe(0);
  expect(supplyResult({ ...supply, voltage: si(3) }, null).regulatorDissipation).toBe(0);
  expect(supplyResult(supply, null).regulates).toBe(true);
});

test("a switching regulator takes in what it gives out and what it loses", () => {
  const volts = fc.double({ min: 1, max: 48, noNaN: true });
  const efficiency = fc.double({ min: 0.3, max: 1, noNaN: true });
  fc.assert(
    fc.property(volts, volts, efficiency, (vIn, vOut, eta) => {
      const taken = vIn * switchingInput(vIn, vOut, 0.04, eta);
      expect(taken).toBeCloseTo(vOut * 0.04 + switchingDissipation(vOut, 0.04, eta), 9);
    }),
  );
});
