import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type OneShotRequest,
  oneShotParts,
  type PreferredNumbers,
  preferredAtLeast,
  preferredAtMost,
} from "../../../core/parts/one-shot-parts.ts";
import { LN_3, oneShotTime } from "../../../core/parts/timer.ts";

// IEC 60063, E3, E6 and E24.
const E3 = [1, 2.2, 4.7];
const E6 = [1, 1.5, 2.2, 3.3, 4.7, 6.8];
const E24 = [
  1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2,
  9.1,
];
const preferred: PreferredNumbers = { resistors: E24, trimmers: E3, capacitors: E6 };
const request: OneShotRequest = {
  holdTime: 12,
  logicVoltage: 5,
  resistorTolerance: 0.05,
  capacitorTolerance: 0.2,
};

describe("preferred numbers", () => {
  test("at and around a value, across decades", () => {
    expect(preferredAtMost(47e3, E24)).toBe(47e3);
    expect(preferredAtMost(46.9e3, E24)).toBe(43e3);
    expect(preferredAtLeast(9.2, E24)).toBe(10);
    expect(preferredAtMost(0.99, E3)).toBe(0.47);
    expect(preferredAtLeast(4.71e-6, E3)).toBe(1e-5);
    expect(preferredAtMost(1e-6, E3)).toBe(1e-6);
  });

  test("are the same written from 10 to 91", () => {
    const tens = E24.map((number) => Math.round(number * 10));
    expect(preferredAtMost(46.9e3, tens)).toBe(43e3);
    expect(preferredAtLeast(1.01e-4, tens)).toBe(1.1e-4);
  });
});

describe("parts for a hold", () => {
  test("of 2 s keep the leakage ratio", () => {
    const parts = oneShotParts({ ...request, holdTime: 2 }, preferred);
    expect(parts?.leakage.enough).toBe(true);
  });

  test("of 12 s can't keep it with an electrolytic, and say so with parts all the same", () => {
    const parts = oneShotParts(request, preferred);
    expect(parts?.leakage.enough).toBe(false);
    expect(parts?.leakage.ratio).toBeGreaterThan(2.5);
  });

  test("don't exist for no hold, an endless one, or a tolerance of 100 %", () => {
    expect(oneShotParts({ ...request, holdTime: 0 }, preferred)).toBeNull();
    expect(oneShotParts({ ...request, holdTime: Number.POSITIVE_INFINITY }, preferred)).toBeNull();
    expect(oneShotParts({ ...request, capacitorTolerance: 1 }, preferred)).toBeNull();
  });

  test("can be trimmed to it from every corner of their tolerances, and are preferred numbers", () => {
    const hold = fc.double({ min: 0.1, max: 120, noNaN: true });
    const tolerance = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(hold, tolerance, tolerance, fc.constantFrom(3.3, 5, 12), (holdTime, r, c, logicVoltage) => {
        const asked = { holdTime, logicVoltage, resistorTolerance: r, capacitorTolerance: c };
        const parts = oneShotParts(asked, preferred);
        if (parts === null) throw new Error("there are parts for every ordinary hold");
        for (const dr of [1 - r, 1 + r]) {
          for (const dc of [1 - c, 1 + c]) {
            const least = oneShotTime(parts.resistor * dr, parts.capacitor * dc);
            const most = oneShotTime(parts.resistor * dr + 0.8 * parts.trimmer, parts.capacitor * dc);
            expect(least).toBeLessThanOrEqual(holdTime * (1 + 1e-12));
            expect(most).toBeGreaterThanOrEqual(holdTime * (1 - 1e-12));
          }
        }
        expect(preferredAtMost(parts.capacitor, E6)).toBe(parts.capacitor);
        expect(preferredAtMost(parts.resistor, E24)).toBe(parts.resistor);
        expect(preferredAtMost(parts.trimmer, E3)).toBe(parts.trimmer);
        const total = parts.resistor + parts.trimmerSetting;
        expect(total * parts.capacitor * LN_3).toBeCloseTo(holdTime, 9);
        expect(total).toBeGreaterThan(9.9e3);
        expect(total).toBeLessThan(1.01e6);
        expect(parts.trimsFrom).toBeLessThanOrEqual(holdTime * (1 + 1e-12));
        expect(parts.trimsTo).toBeGreaterThanOrEqual(holdTime * (1 - 1e-12));
      }),
    );
  });
});
