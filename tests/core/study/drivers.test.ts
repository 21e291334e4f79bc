import { describe, expect, test } from "vitest";
import { firstOrderIndex, midRanks, sensitivity } from "../../../core/study/drivers.ts";
import { sampleStream } from "../../../core/study/stream.ts";

const N = 8192;

/** Columns of uniform numbers as the study draws them. */
function columns(count: number, seed: number): Float64Array[] {
  const made = Array.from({ length: count }, () => new Float64Array(N));
  for (let i = 0; i < N; i++) {
    const uniform = sampleStream(seed, i);
    for (const column of made) column[i] = uniform();
  }
  return made;
}

describe("on Ishigami's function, a = 7, b = 0.1", () => {
  // Ishigami and Homma 1990; indices in closed form: V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2
  const [a, b] = [7, 0.1];
  const variance = a ** 2 / 8 + (b * Math.PI ** 4) / 5 + (b ** 2 * Math.PI ** 8) / 18 + 0.5;
  const known = [(1 + (b * Math.PI ** 4) / 5) ** 2 / 2 / variance, a ** 2 / 8 / variance, 0];
  const inputs = columns(3, 5);
  const y = new Float64Array(N);
  for (let i = 0; i < N; i++) {
    const [x1, x2, x3] = inputs.map((column) => Math.PI * (2 * column[i] - 1));
    y[i] = Math.sin(x1) + a * Math.sin(x2) ** 2 + b * x3 ** 4 * Math.sin(x1);
  }

  test("the known indices are the published 0.3139, 0.4424, 0", () => {
    expect(known[0]).toBeCloseTo(0.3139, 4);
    expect(known[1]).toBeCloseTo(0.4424, 4);
  });

  test.each([0, 1, 2])("input %d comes out within four of its standard errors", (i) => {
    const { value, error } = sensitivity(inputs[i], y);
    expect(error).not.toBeNull();
    expect(error).toBeLessThan(0.02);
    expect(Math.abs(value - known[i])).toBeLessThan(4 * (error ?? 0));
  });

  test("the stated errors are about the spread over seeds", () => {
    const values: number[] = [];
    const errors: number[] = [];
    for (let seed = 100; seed < 140; seed++) {
      const drawn = columns(3, seed);
      const [x1, x2, x3] = drawn.map((column) => column.map((u) => Math.PI * (2 * u - 1)));
      const result = x1.map((x, i) => Math.sin(x) + a * Math.sin(x2[i]) ** 2 + b * x3[i] ** 4 * Math.sin(x));
      const { value, error } = sensitivity(drawn[1], result);
      values.push(value);
      errors.push(error ?? Number.NaN);
    }
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    const spread = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
    const stated = errors.reduce((sum, v) => sum + v, 0) / errors.length;
    expect(mean).toBeCloseTo(known[1], 1.8);
    expect(stated / spread).toBeGreaterThan(0.65);
    expect(stated / spread).toBeLessThan(1.6);
  });
});

describe("on ranks", () => {
  test("an input that decides everything has index 1, one that decides nothing 0, never included", () => {
    const [x, other] = columns(2, 9);
    const y = x.map((u) => (u > 0.9 ? Number.POSITIVE_INFINITY : Math.exp(20 * u)));
    const ranks = midRanks(y);
    expect(firstOrderIndex(x, ranks)).toBeGreaterThan(0.995);
    expect(Math.abs(firstOrderIndex(other, ranks))).toBeLessThan(0.05);
  });

  test("equal values share theirs", () => {
    expect([...midRanks(Float64Array.of(3, 1, 3, Number.POSITIVE_INFINITY, 2))]).toEqual([3.5, 1, 3.5, 5, 2]);
  });

  test("no error is stated from too few samples", () => {
    const [x] = columns(1, 2).map((column) => column.subarray(0, 100));
    expect(sensitivity(x, x).error).toBeNull();
  });
});
