import { describe, expect, test } from "vitest";
import { profile, profileAt } from "../../../core/parts/magnet-profile.ts";
import { chooseZones, knotAngle, knotCount, zoneError } from "../../../core/parts/magnet-zones.ts";

const f = (x: number) => x / (0.01 + x * x);
const fine = profile(f, 2, { first: 0.1, least: 1e-4 }, 5);

describe("a profile", () => {
  test("is the function, to its tail", () => {
    for (let x = 0; x <= 2; x += 0.0137) expect(Math.abs(profileAt(fine, x) - f(x))).toBeLessThan(5e-9);
  });

  test("has the function's derivatives", () => {
    const slope = (x: number) => (0.01 - x * x) / (0.01 + x * x) ** 2;
    const curvature = (x: number) => (2 * x * (x * x - 0.03)) / (0.01 + x * x) ** 3;
    for (let x = 0; x <= 2; x += 0.0171) {
      expect(Math.abs(profileAt(fine, x, 1) - slope(x))).toBeLessThan(1e-7 * 100);
      expect(Math.abs(profileAt(fine, x, 2) - curvature(x))).toBeLessThan(1e-5 * 1e3);
    }
  });

  test("asks for few values", () => {
    let calls = 0;
    profile(
      (x) => {
        calls++;
        return f(x);
      },
      2,
      { first: 0.1, least: 1e-4 },
      5,
    );
    expect(calls).toBeLessThan(250);
  });

  test("ends on a function that rounding makes rough", () => {
    let calls = 0;
    const rough = profile(
      (x) => {
        calls++;
        return x + 1e-6 * Math.sin(1e9 * x);
      },
      1,
      { first: 0.1, least: 0.02 },
      1,
    );
    expect(profileAt(rough, 0.5)).toBeCloseTo(0.5, 5);
    expect(calls).toBeLessThan(16 * 2 * 100);
  });
});

describe("the zones", () => {
  test.each([1e-4, 1e-6, 1e-8])(
    "keep the quintics within %f of the peak, with no cells to spare",
    (tolerance) => {
      const zones = chooseZones([fine], tolerance);
      expect(zoneError(fine, zones)).toBeLessThanOrEqual(tolerance);
      const wider = {
        ...zones,
        fineWidth: zones.fineWidth * 1.3,
        fineCells: Math.ceil(zones.fineCells / 1.3),
      };
      expect(zoneError(fine, wider)).toBeGreaterThan(tolerance);
    },
  );

  test("need cells as the sixth root of the tolerance, the order of the quintic", () => {
    const count = (tolerance: number) => knotCount(chooseZones([fine], tolerance));
    expect(count(1e-9) / count(1e-6)).toBeGreaterThan(2.4);
    expect(count(1e-9) / count(1e-6)).toBeLessThan(4);
  });

  test("start at 0 and end at the profile's end", () => {
    const zones = chooseZones([fine], 1e-6);
    expect(knotAngle(zones, 0)).toBe(0);
    expect(knotAngle(zones, knotCount(zones) - 1)).toBeCloseTo(2, 12);
  });
});
