import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Tolerance } from "../../../core/door/index.ts";
import { type Limits, type Spread, spreadOf, spreadValue } from "../../../core/study/spread.ts";
import { sampleStream } from "../../../core/study/stream.ts";

const FREE: Limits = { low: -1e9, high: 1e9 };

function spread(tolerance: Tolerance, nominal: number, limits = FREE): Spread {
  const made = spreadOf(tolerance, nominal, limits);
  if (made === null || made === "unphysical") throw new Error(`${made}`);
  return made;
}

/** Share of a fine comb of uniform numbers whose values satisfy a condition. */
function shareOf(of: Spread, condition: (value: number) => boolean): number {
  const comb = 100_000;
  let count = 0;
  for (let i = 0; i < comb; i++) if (condition(spreadValue(of, (i + 0.5) / comb))) count++;
  return count / comb;
}

describe("a text tolerance", () => {
  test("is ± two standard deviations: 95.45 % within it, 68.27 % within half", () => {
    const friction = spread({ shape: "normal", twoSigma: 0.4, relative: true }, 2);
    expect(shareOf(friction, (v) => Math.abs(v - 2) <= 0.8)).toBeCloseTo(0.9545, 4);
    expect(shareOf(friction, (v) => Math.abs(v - 2) <= 0.4)).toBeCloseTo(0.6827, 4);
    const gap = spread({ shape: "normal", twoSigma: 0.5e-3, relative: false }, 4e-3);
    expect(shareOf(gap, (v) => v > 4.5e-3)).toBeCloseTo(0.02275, 4);
  });
});

describe("an object tolerance", () => {
  test("is uniform between its offsets", () => {
    const factor = spread({ shape: "uniform", low: -0.5, high: 1.5, relative: false }, 1);
    expect(spreadValue(factor, 0.25)).toBeCloseTo(1, 12);
    expect(spreadValue(factor, 1e-12)).toBeCloseTo(0.5, 9);
    expect(spreadValue(factor, 1 - 1e-12)).toBeCloseTo(2.5, 9);
  });

  test("is a triangle with its top at the nominal: mean (a + b + c)/3", () => {
    const value = spread({ shape: "triangular", low: -1, high: 3, relative: false }, 10);
    let sum = 0;
    for (let i = 0; i < 50_000; i++) sum += spreadValue(value, (i + 0.5) / 50_000) / 50_000;
    expect(sum).toBeCloseTo((9 + 13 + 10) / 3, 4);
    expect(shareOf(value, (v) => v < 10)).toBeCloseTo(0.25, 4);
  });

  test("is normal with the offsets as its ± 2 σ points", () => {
    const value = spread({ shape: "normal", low: 0, high: 4, relative: false }, 1);
    expect(spreadValue(value, 0.5)).toBeCloseTo(3, 12);
    expect(shareOf(value, (v) => v > 5)).toBeCloseTo(0.02275, 4);
  });
});

describe("drawn again until physical", () => {
  test.each(["normal", "uniform", "triangular"] as const)("is what comes out, %s", (shape) => {
    const tolerance = { shape, low: -2, high: 3, relative: false } as const;
    const limits = { low: -0.5, high: 2.2 };
    const cut = spread(tolerance, 1, limits);
    const whole = spread(tolerance, 1);
    const uniform = sampleStream(11, 0);
    const again: number[] = [];
    while (again.length < 20_000) {
      const value = spreadValue(whole, uniform());
      if (value >= limits.low && value <= limits.high) again.push(value);
    }
    for (const edge of [-0.2, 0.4, 1, 1.7]) {
      const share = again.filter((v) => v < edge).length / again.length;
      expect(shareOf(cut, (v) => v < edge)).toBeCloseTo(share, 1.7);
    }
  });

  test("leaves every value within the limits and rising with the uniform number", () => {
    const shapes = fc.constantFrom("normal", "uniform", "triangular");
    const real = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        shapes,
        real,
        real,
        real,
        fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }),
        (shape, a, b, nominal, u) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const limits = { low: nominal - 1, high: nominal + 2 };
          const made = spreadOf({ shape, low, high, relative: false } as Tolerance, nominal, limits);
          if (made === null || made === "unphysical") return;
          const value = spreadValue(made, u);
          expect(value).toBeGreaterThanOrEqual(limits.low);
          expect(value).toBeLessThanOrEqual(limits.high);
          expect(spreadValue(made, u / 2)).toBeLessThanOrEqual(value);
        },
      ),
    );
  });
});

describe("a tolerance that spreads nothing", () => {
  test("is none, and a share of 0 neither", () => {
    expect(spreadOf({ shape: "normal", twoSigma: 0, relative: true }, 5, FREE)).toBeNull();
    expect(spreadOf({ shape: "normal", twoSigma: 0.4, relative: true }, 0, FREE)).toBeNull();
  });

  test("but moves its value is kept, and none of it physical is said", () => {
    expect(spreadValue(spread({ shape: "uniform", low: 1, high: 1, relative: false }, 5), 0.3)).toBe(6);
    const limits = { low: 0, high: 10 };
    expect(spreadOf({ shape: "uniform", low: -9, high: -8, relative: false }, 5, limits)).toBe("unphysical");
    expect(spreadOf({ shape: "uniform", low: 6, high: 6, relative: false }, 5, limits)).toBe("unphysical");
  });
});
