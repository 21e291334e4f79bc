// The method against certified values of the NIST Statistical Reference Datasets, and its limits and robustness.
import { describe, expect, test } from "vitest";
import { covariance, studentQuantile } from "../../../../core/study/fit/errors.ts";
import { fitted, type Problem, robustSpread } from "../../../../core/study/fit/least-squares.ts";
import { noise } from "./helpers.ts";

/** A curve through points, by parameters, with derivatives by small steps. */
function curve(
  x: readonly number[],
  y: readonly number[],
  scale: readonly number[],
  model: (x: number, p: ArrayLike<number>) => number,
  lower: readonly number[] = scale.map(() => Number.NEGATIVE_INFINITY),
): Problem {
  const size = scale.length;
  const residuals = (p: Float64Array, out: Float64Array) => {
    x.forEach((at, i) => {
      out[i] = model(at, p) - y[i];
    });
  };
  return {
    count: x.length,
    size,
    lower: Float64Array.from(lower),
    upper: new Float64Array(size).fill(Number.POSITIVE_INFINITY),
    scale: Float64Array.from(scale),
    residuals,
    jacobian(p, _r, out) {
      for (let j = 0; j < size; j++) {
        const h = 1e-6 * scale[j];
        const shifted = (by: number) => p.map((v, i) => (i === j ? v + by : v));
        const [up, down] = [new Float64Array(x.length), new Float64Array(x.length)];
        residuals(shifted(h), up);
        residuals(shifted(-h), down);
        for (let i = 0; i < x.length; i++) out[i * size + j] = (up[i] - down[i]) / (2 * h);
      }
    },
  };
}

const PLAIN = { spread: Number.POSITIVE_INFINITY, iterations: 200, tolerance: 1e-12 };

describe("certified values (NIST StRD, Misra1a: monomolecular adsorption)", () => {
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
  const problem = curve(x, y, [100, 1e-4], (at, p) => p[0] * (1 - Math.exp(-p[1] * at)));

  test.each([
    [500, 1e-4],
    [250, 5e-4],
  ])("from %f, %f: values, standard errors, residual deviation", (b1, b2) => {
    const fit = fitted(problem, Float64Array.of(b1, b2), PLAIN);
    expect(fit.p[0]).toBeCloseTo(238.94212918, 4);
    expect(fit.p[1]).toBeCloseTo(5.5015643181e-4, 10);
    const { errors, sigma, freedom } = covariance(fit, 2);
    // The residuals of this set follow each other; the certified errors take them as independent.
    const alone = covariance(fit, 2, sigma);
    expect(freedom).toBe(12);
    expect(sigma).toBeCloseTo(0.1018787633, 6);
    expect(alone.errors[0]).toBeCloseTo(2.7070075241, 3);
    expect(alone.errors[1] / 7.2668688436e-6).toBeCloseTo(1, 3);
    expect(errors[0]).toBeGreaterThanOrEqual(alone.errors[0]);
  });
});

describe("Student's t (Abramowitz & Stegun, table 26.10; two tails of 5 %)", () => {
  test.each([
    [1, 12.706],
    [5, 2.571],
    [10, 2.228],
    [30, 2.042],
    [120, 1.98],
    [1e6, 1.96],
  ])("%i degrees of freedom", (freedom, t) => {
    expect(studentQuantile(0.05, freedom)).toBeCloseTo(t, 3);
  });

  test("no freedom, no bound", () => {
    expect(studentQuantile(0.05, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("limits and stray readings", () => {
  const x = Array.from({ length: 40 }, (_, i) => i / 10);

  test("a parameter whose best value is past its limit ends on it, the others are best given that", () => {
    const y = x.map((at) => 2 * at - 0.5);
    const fit = fitted(
      curve(x, y, [1, 1], (at, p) => p[0] * at + p[1], [0, 0]),
      Float64Array.of(1, 1),
      PLAIN,
    );
    expect(fit.p[1]).toBe(0);
    // Through the origin: Σxy/Σx².
    const slope = x.reduce((s, at, i) => s + at * y[i], 0) / x.reduce((s, at) => s + at * at, 0);
    expect(fit.p[0]).toBeCloseTo(slope, 9);
  });

  test("one reading in ten wildly off hardly moves the robust fit", () => {
    const draw = noise(1, 0.01);
    const y = x.map((at, i) => 3 * at + 1 + draw() + (i % 10 === 4 ? 5 : 0));
    const line = curve(x, y, [1, 1], (at, p) => p[0] * at + p[1]);
    const robust = fitted(line, Float64Array.of(0, 0));
    const plain = fitted(line, Float64Array.of(0, 0), PLAIN);
    expect(Math.abs(robust.p[1] - 1)).toBeLessThan(0.05);
    expect(Math.abs(plain.p[1] - 1)).toBeGreaterThan(0.2);
  });

  test("the robust spread of normal noise is its standard deviation", () => {
    const draw = noise(2, 0.7);
    expect(robustSpread(Float64Array.from({ length: 4001 }, draw))).toBeCloseTo(0.7, 1);
  });

  test("two parameters that do one thing: the condition tells, and which", () => {
    const y = x.map((at) => 2 * at);
    const fit = fitted(
      curve(x, y, [1, 1], (at, p) => (p[0] + p[1]) * at),
      Float64Array.of(0.5, 0.5),
      PLAIN,
    );
    const { condition, weakest } = covariance(fit, 2, 1);
    expect(condition).toBeGreaterThan(1e5);
    expect(Math.abs(weakest[0])).toBeCloseTo(Math.SQRT1_2, 3);
    expect(weakest[0] * weakest[1]).toBeLessThan(0);
  });

  test("neighbours that err alike widen the errors by what a first-order process asks for", () => {
    const draw = noise(3, 1);
    const many = Array.from({ length: 3000 }, (_, i) => i);
    let drift = 0;
    const y = many.map(() => {
      drift = 0.8 * drift + draw();
      return drift;
    });
    const fit = fitted(
      curve(many, y, [1], (_, p) => p[0]),
      Float64Array.of(0),
      PLAIN,
    );
    // Variance of the mean of an AR(1) process: (1 + ρ)/(1 − ρ) = 9 times that of independent readings.
    const ratio =
      (covariance(fit, 1).errors[0] / covariance(fit, 1, covariance(fit, 1).sigma).errors[0]) ** 2;
    expect(ratio).toBeGreaterThan(6);
    expect(ratio).toBeLessThan(12);
  });
});
