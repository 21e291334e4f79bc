import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type OneShotRequest, oneShotParts, type Stock } from "../../../core/parts/one-shot-parts.ts";
import { LN_3, oneShotTime } from "../../../core/parts/timer.ts";
import { nearestPreferred } from "../../../core/quantity/preferred.ts";

const stock: Stock = { resistors: "E24", trimmers: "E3", capacitors: "E6" };
const request: OneShotRequest = {
  holdTime: 12,
  logicVoltage: 5,
  resistorTolerance: 0.05,
  capacitorTolerance: 0.2,
};

describe("parts for a hold", () => {
  test("of 2 s keep the leakage ratio", () => {
    const parts = oneShotParts({ ...request, holdTime: 2 }, stock);
    expect(parts?.leakage.enough).toBe(true);
  });

  test("of 12 s can't keep it with an electrolytic, and say so with parts all the same", () => {
    const parts = oneShotParts(request, stock);
    expect(parts?.leakage.enough).toBe(false);
    expect(parts?.leakage.ratio).toBeGreaterThan(2.5);
  });

  test("don't exist for no hold, an endless one, or a tolerance of 100 %", () => {
    expect(oneShotParts({ ...request, holdTime: 0 }, stock)).toBeNull();
    expect(oneShotParts({ ...request, holdTime: Number.POSITIVE_INFINITY }, stock)).toBeNull();
    expect(oneShotParts({ ...request, capacitorTolerance: 1 }, stock)).toBeNull();
  });

  test("can be trimmed to it from every corner of their tolerances, and are preferred numbers", () => {
    const hold = fc.double({ min: 0.1, max: 120, noNaN: true });
    const tolerance = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(hold, tolerance, tolerance, fc.constantFrom(3.3, 5, 12), (holdTime, r, c, logicVoltage) => {
        const asked = { holdTime, logicVoltage, resistorTolerance: r, capacitorTolerance: c };
        const parts = oneShotParts(asked, stock);
        if (parts === null) throw new Error("there are parts for every ordinary hold");
        for (const dr of [1 - r, 1 + r]) {
          for (const dc of [1 - c, 1 + c]) {
            const least = oneShotTime(parts.resistor * dr, parts.capacitor * dc);
            const most = oneShotTime(parts.resistor * dr + 0.8 * parts.trimmer, parts.capacitor * dc);
            expect(least).toBeLessThanOrEqual(holdTime * (1 + 1e-12));
            expect(most).toBeGreaterThanOrEqual(holdTime * (1 - 1e-12));
          }
        }
        expect(nearestPreferred(parts.capacitor, "E6")).toBe(parts.capacitor);
        expect(nearestPreferred(parts.resistor, "E24")).toBe(parts.resistor);
        expect(nearestPreferred(parts.trimmer, "E3")).toBe(parts.trimmer);
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
