import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lowerBound, samplesAllowing, samplesNeeded, successesNeeded } from "../../../core/study/binomial.ts";

describe("the lower bound of Clopper and Pearson", () => {
  test.each([
    // successes, samples, bound: lower ends of the published two-sided 90 % limits (Clopper and Pearson 1934; Documenta Geigy)
    [5, 10, 0.2224],
    [9, 10, 0.6058],
    [18, 20, 0.7174],
  ])("for %d of %d is %d as tabled", (successes, samples, bound) => {
    expect(lowerBound(successes, samples)).toBeCloseTo(bound, 4);
  });

  test("has its closed forms at all and at one: 0.05^(1/n) and 1 − 0.95^(1/n)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (n) => {
        expect(lowerBound(n, n)).toBeCloseTo(0.05 ** (1 / n), 10);
        expect(lowerBound(1, n)).toBeCloseTo(1 - 0.95 ** (1 / n), 10);
        expect(lowerBound(0, n)).toBe(0);
      }),
    );
  });

  test("leaves 5 % of the binomial at or above the count", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 59 }), (n, less) => {
        const k = Math.max(1, n - less);
        expect(tail(n, k, lowerBound(k, n))).toBeCloseTo(0.05, 9);
      }),
    );
  });
});

/** P(X ≥ k) of a binomial, by adding up its terms. */
function tail(n: number, k: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = k === 0 ? term : 0;
  for (let i = 1; i <= n; i++) {
    term *= ((n - i + 1) / i) * (p / (1 - p));
    if (i >= k) sum += term;
  }
  return sum;
}

describe("numbers of samples", () => {
  test("without a failure are those of the model and of Wilks", () => {
    expect(samplesNeeded(0.999)).toBe(2995);
    expect(samplesNeeded(0.99)).toBe(299);
    expect(samplesNeeded(0.95)).toBe(59);
    expect(samplesNeeded(0.9)).toBe(29);
  });

  test("with failures allowed are the tabled order-statistic limits", () => {
    // 95 % of a population at 95 % confidence, orders 1 … 6 (Wilks 1941; tabled for safety analyses of reactors)
    expect([0, 1, 2, 3, 4, 5].map((m) => samplesAllowing(m, 0.95))).toEqual([59, 93, 124, 153, 181, 208]);
    expect([0, 1, 5].map((m) => samplesAllowing(m, 0.999))).toEqual([2995, 4742, 10_511]);
  });

  test("decide how many successes are enough, and that too few samples never are", () => {
    expect(successesNeeded(0.999, 2994)).toBeNull();
    expect(successesNeeded(0.999, 2995)).toBe(2995);
    expect(successesNeeded(0.999, 4741)).toBe(4741);
    expect(successesNeeded(0.999, 4742)).toBe(4741);
    expect(successesNeeded(0.999, 10_511)).toBe(10_506);
    const needed = successesNeeded(0.999, 20_000) ?? Number.NaN;
    expect(lowerBound(needed, 20_000)).toBeGreaterThanOrEqual(0.999);
    expect(lowerBound(needed - 1, 20_000)).toBeLessThan(0.999);
  });
});
