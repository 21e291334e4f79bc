import fc from "fast-check";
import { expect, test } from "vitest";
import { normalProbability, normalQuantile } from "../../../core/study/normal.ts";

/** Quantiles as tabled by Abramowitz & Stegun, table 26.5 and 26.6; the last two are Wichura's own checks of AS 241. */
const TABLED = [
  [0.975, 1.959963984540054],
  [0.995, 2.575829303548901],
  [0.999, 3.090232306167813],
  [0.9, 1.2815515655446004],
  [0.25, -0.6744897501960817],
  [0.001, -3.090232306167814],
  [1e-20, -9.262340089798407],
] as const;

test.each(TABLED)("the quantile of %d is %d", (p, z) => {
  expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(1e-14);
});

test("the ends are infinite", () => {
  expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
});

test("the probability undoes the quantile, and both are odd about the middle", () => {
  expect(normalProbability(0)).toBeCloseTo(0.5, 15);
  expect(normalProbability(-1)).toBeCloseTo(0.15865525393145707, 15);
  fc.assert(
    fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
      const p = normalProbability(z);
      if (z < 0) expect(normalQuantile(p)).toBeCloseTo(z, 10);
      expect(normalProbability(-z)).toBeCloseTo(1 - p, 14);
    }),
  );
});
