import { describe, expect, test } from "vitest";
import { LARGEST_SEED, sampleStream } from "../../../core/study/stream.ts";

/** Numbers of many streams, `per` from each. */
function numbers(seed: number, streams: number, per: number): number[] {
  return Array.from({ length: streams }, (_, index) => {
    const uniform = sampleStream(seed, index);
    return Array.from({ length: per }, uniform);
  }).flat();
}

function correlation(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] - 0.5) * (b[i] - 0.5) * 12;
  return sum / a.length;
}

describe("a sample's stream", () => {
  test("is the same every time and another for every sample and seed", () => {
    const first = (seed: number, index: number) => sampleStream(seed, index)();
    expect(first(7, 12)).toBe(first(7, 12));
    const seen = new Set<number>();
    for (const seed of [0, 1, 2, 2 ** 32, 2 ** 32 + 1, LARGEST_SEED]) {
      for (let index = 0; index < 500; index++) seen.add(first(seed, index));
    }
    expect(seen.size).toBe(6 * 500);
  });

  test("is uniform over streams, bin by bin (chi square, 99 bins, 1 in 10 000)", () => {
    const values = numbers(1, 20_000, 2);
    for (const place of [0, 1]) {
      const bins = new Array(100).fill(0);
      for (let i = place; i < values.length; i += 2) bins[Math.floor(values[i] * 100)]++;
      const chi = bins.reduce((sum, n) => sum + (n - 200) ** 2 / 200, 0);
      expect(chi).toBeLessThan(159);
      expect(chi).toBeGreaterThan(52);
    }
  });

  test("does not follow its neighbours, nor itself (five standard errors)", () => {
    const limit = 5 / Math.sqrt(20_000);
    const values = numbers(3, 20_001, 2);
    const firsts = values.filter((_, i) => i % 2 === 0);
    const seconds = values.filter((_, i) => i % 2 === 1);
    expect(Math.abs(correlation(firsts.slice(0, -1), firsts.slice(1)))).toBeLessThan(limit);
    expect(Math.abs(correlation(firsts.slice(1), seconds.slice(1)))).toBeLessThan(limit);
    const other = numbers(4, 20_001, 1);
    expect(Math.abs(correlation(firsts.slice(1), other.slice(1)))).toBeLessThan(limit);
  });

  test("never gives an end of the interval", () => {
    for (const value of numbers(5, 2000, 50)) {
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThan(1);
    }
  });
});
