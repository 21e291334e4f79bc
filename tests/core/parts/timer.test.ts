import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Timer } from "../../../core/door/door.ts";
import {
  chargingCurrent,
  electrolyticLeakage,
  LN_3,
  LONGEST_ELECTROLYTIC_HOLD,
  leakageCheck,
  oneShotTime,
  timerResult,
} from "../../../core/parts/timer.ts";
import { si } from "../../../core/quantity/brands.ts";

const timer: Timer = {
  holdTime: si(12),
  retriggers: true,
  resistor: null,
  capacitor: null,
  resistorTolerance: si(0.05),
  capacitorTolerance: si(0.2),
};

describe("the one-shot", () => {
  test("runs for ln 3 = 1.098612 time constants, published as 1.1", () => {
    expect(LN_3).toBeCloseTo(1.098612, 6);
    expect(oneShotTime(100e3, 100e-6)).toBeCloseTo(10.98612, 5);
    expect(oneShotTime(1, 1).toFixed(1)).toBe("1.1");
  });

  test("is where a capacitor charged through R from 0 reaches two thirds", () => {
    const [r, c] = [47e3, 22e-6];
    expect(1 - Math.exp(-oneShotTime(r, c) / (r * c))).toBeCloseTo(2 / 3, 14);
  });

  test("has a third of the logic voltage left across R at the threshold", () => {
    expect(chargingCurrent(5, 100e3)).toBeCloseTo((5 - (2 / 3) * 5) / 100e3, 15);
  });
});

describe("a timer", () => {
  test("of a set hold spreads by both tolerances", () => {
    expect(timerResult(timer, 5)).toEqual({
      nominal: 12,
      shortest: 12 * 0.95 * 0.8,
      longest: 12 * 1.05 * 1.2,
      mismatch: null,
      leakage: null,
    });
  });

  test("of R and C holds for R C ln 3 and says how far that is from the hold the builder set", () => {
    const built = { ...timer, resistor: si<"ohm">(100e3), capacitor: si<"F">(100e-6) };
    const result = timerResult(built, 5);
    expect(result.nominal).toBeCloseTo(10.98612, 5);
    expect(result.shortest).toBeCloseTo(10.98612 * 0.76, 5);
    expect(result.longest).toBeCloseTo(10.98612 * 1.26, 5);
    expect(result.mismatch).toBeCloseTo(10.98612 / 12 - 1, 6);
    expect(timerResult(built, null).leakage).toBeNull();
  });

  test("holds exactly what is set with both tolerances 0", () => {
    const exact = timerResult({ ...timer, resistorTolerance: si(0), capacitorTolerance: si(0) }, null);
    expect([exact.shortest, exact.longest]).toEqual([12, 12]);
  });
});

describe("leakage of the capacitor", () => {
  // 0.01 C V with C in µF and V in volts gives µA: 100 µF at 16 V, 16 µA, and 3 µA more.
  test("is 19 µA for 100 µF at 16 V", () => {
    expect(electrolyticLeakage(100e-6, 16)).toBeCloseTo(19e-6, 15);
  });

  test("must be a tenth of the charging current", () => {
    // 5 V: 1 µF has 3.05 µA, so R up to 5/(3 · 30.5 µA) = 54.6 kΩ.
    expect(leakageCheck(5, 54.6e3, 1e-6).enough).toBe(true);
    expect(leakageCheck(5, 54.7e3, 1e-6).enough).toBe(false);
  });

  test("allows no hold above 3.66 s, whatever R and C", () => {
    expect(LONGEST_ELECTROLYTIC_HOLD).toBeCloseTo(3.66204, 5);
    const decade = fc.double({ min: -6, max: -2, noNaN: true });
    const volts = fc.double({ min: 2, max: 18, noNaN: true });
    fc.assert(
      fc.property(decade, volts, fc.double({ min: 1, max: 20, noNaN: true }), (log, voltage, factor) => {
        const capacitor = 10 ** log;
        const resistor = (LONGEST_ELECTROLYTIC_HOLD * factor) / (capacitor * LN_3);
        expect(leakageCheck(voltage, resistor, capacitor).enough).toBe(false);
      }),
    );
  });
});
