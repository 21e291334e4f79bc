import { describe, expect, test } from "vitest";
import {
  integrate,
  lastTerms,
  legendreIntegrals,
  POINT,
  POINTS,
  PointPolynomial,
  WEIGHT,
} from "../../../core/swing/gauss.ts";

const power = (k: number) => POINT.map((u) => u ** k);

describe("points and weights", () => {
  test("are the published ones (Abramowitz and Stegun, table 25.4, n = 10)", () => {
    const published = [
      [0.1488743389816312, 0.2955242247147529],
      [0.4333953941292472, 0.2692667193099964],
      [0.6794095682990244, 0.2190863625159821],
      [0.8650633666889845, 0.1494513491505806],
      [0.9739065285171717, 0.0666713443086881],
    ];
    published.forEach(([z, weight], i) => {
      for (const at of [5 + i, 4 - i]) {
        expect(Math.abs(2 * POINT[at] - 1)).toBeCloseTo(z, 15);
        expect(2 * WEIGHT[at]).toBeCloseTo(weight, 15);
      }
    });
  });

  test("integrate powers up to degree 19 and no further", () => {
    const whole = (k: number) => WEIGHT.reduce((sum, weight, i) => sum + weight * POINT[i] ** k, 0);
    for (let k = 0; k < 2 * POINTS; k++) expect(whole(k)).toBeCloseTo(1 / (k + 1), 14);
    expect(Math.abs(whole(2 * POINTS) - 1 / (2 * POINTS + 1))).toBeGreaterThan(1e-13);
  });
});

describe("integrals up to each point", () => {
  test("are exact for polynomials of degree 9", () => {
    const integrals = new Float64Array(POINTS);
    for (let k = 0; k < POINTS; k++) {
      expect(integrate(power(k), integrals)).toBeCloseTo(1 / (k + 1), 14);
      integrals.forEach((value, i) => {
        expect(value).toBeCloseTo(POINT[i] ** (k + 1) / (k + 1), 14);
      });
    }
  });

  test("follow a smooth function to its tenth derivative", () => {
    const integrals = new Float64Array(POINTS);
    integrate(POINT.map(Math.exp), integrals);
    integrals.forEach((value, i) => {
      expect(value).toBeCloseTo(Math.expm1(POINT[i]), 13);
    });
  });
});

describe("the polynomial through the points", () => {
  test("is the power it was made from, and its integral", () => {
    const polynomial = new PointPolynomial();
    const padded = Float64Array.from([7, 7, ...power(6)]);
    polynomial.take(padded, 2);
    for (const u of [0, 0.1, 0.37, 0.5, 0.99, 1]) {
      polynomial.read(u);
      expect(polynomial.value).toBeCloseTo(u ** 6, 13);
      expect(polynomial.integral).toBeCloseTo(u ** 7 / 7, 14);
    }
  });

  test("Legendre's integrals vanish over the whole but for the first", () => {
    expect(legendreIntegrals(1)[0]).toBe(1);
    for (const value of legendreIntegrals(1).slice(1)) expect(value).toBeCloseTo(0, 15);
  });

  test("its last terms are none for degree 7, and (8!)²/16! of P_8 in u⁸", () => {
    expect(lastTerms(power(7))).toBeLessThan(1e-14);
    let leading = 1;
    for (let i = 1; i <= 8; i++) leading *= i / (8 + i);
    expect(lastTerms(power(8)) / leading).toBeCloseTo(1, 9);
  });
});
