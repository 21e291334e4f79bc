import { describe, expect, test } from "vitest";
import {
  A2,
  A3,
  A4,
  A5,
  A6,
  A7,
  A8,
  A9,
  A10,
  A11,
  A12,
  B,
  C,
  E5,
  type Field,
  OUT_A,
  OUT_B,
  OUT_FIRST_SUM,
  OUT_SIZE,
  step,
  stepError,
} from "../../../core/swing/dormand-prince.ts";
import { system } from "./systems.ts";

const rows: readonly (readonly number[])[] = [[], A2, A3, A4, A5, A6, A7, A8, A9, A10, A11, A12];
const nodes = [0, ...C, 1];
const sum = (terms: readonly number[]) => terms.reduce((a, b) => a + b, 0);

describe("coefficients", () => {
  test("every row adds up to its node", () => {
    rows.forEach((row, i) => {
      expect(sum(row)).toBeCloseTo(nodes[i], 13);
    });
  });

  test("the weights integrate powers of t up to order 8", () => {
    for (let k = 0; k < 8; k++) expect(sum(B.map((b, i) => b * nodes[i] ** k))).toBeCloseTo(1 / (k + 1), 13);
    expect(Math.abs(sum(B.map((b, i) => b * nodes[i] ** 8)) - 1 / 9)).toBeGreaterThan(1e-6);
  });

  test("tall trees: b A c^k meets its order conditions up to order 8", () => {
    const inner = (values: readonly number[]) => rows.map((row) => sum(row.map((a, j) => a * values[j])));
    for (let k = 1; k < 7; k++) {
      const ac = inner(nodes.map((c) => c ** k));
      expect(sum(B.map((b, i) => b * ac[i]))).toBeCloseTo(1 / ((k + 1) * (k + 2)), 13);
    }
    const aac = inner(inner(nodes));
    expect(sum(B.map((b, i) => b * aac[i]))).toBeCloseTo(1 / 24, 13);
  });

  test("the error weights vanish for powers below order 5", () => {
    for (let k = 0; k < 5; k++) expect(sum(E5.map((e, i) => e * nodes[i] ** k))).toBeCloseTo(0, 12);
  });
});

/** a' = b, b' = −a, and the sum of b²: sine and cosine. */
const circle: Field = (_system, _forces, io) => {
  const [, a, b] = io;
  io[0] = b;
  io[1] = -a;
  io[2] = b * b;
  io[3] = 0;
};
const forces = { sign: 1, damping: 0, friction: 0 };
const any = system();

/** Error of sine at 1 with `count` steps, and the largest estimate made on the way. */
function sineError(count: number): { error: number; estimate: number; sumError: number } {
  const out = new Float64Array(OUT_SIZE);
  const h = 1 / count;
  let [a, b, total, estimate] = [0, 1, 0, 0];
  for (let i = 0; i < count; i++) {
    step(circle, any, forces, i * h, a, b, h, out);
    [a, b] = [out[OUT_A], out[OUT_B]];
    total += out[OUT_FIRST_SUM];
    estimate = Math.max(estimate, stepError(out, h, 1, 1, 1e9));
  }
  return {
    error: Math.abs(a - Math.sin(1)),
    estimate,
    sumError: Math.abs(total - (0.5 + Math.sin(2) / 4)),
  };
}

describe("a step", () => {
  test("its error falls with the eighth power of the step", () => {
    const ratios = [1, 2].map((n) => sineError(n).error / sineError(2 * n).error);
    for (const ratio of ratios) expect(Math.log2(ratio)).toBeGreaterThan(7.4);
  });

  test("the sum it carries has the same order", () => {
    expect(sineError(4).sumError).toBeLessThan(1e-11);
  });

  test("the true error of one step is at most the estimate", () => {
    for (const count of [1, 2, 4]) {
      const { error, estimate } = sineError(count);
      expect(error / count).toBeLessThan(estimate);
    }
  });

  test("a stage outside the field's domain gives an error that is not a number", () => {
    const root: Field = (_s, _f, io) => {
      io[1] = Math.sqrt(io[1]);
      io[0] = -1;
      io[2] = 0;
      io[3] = 0;
    };
    const out = new Float64Array(OUT_SIZE);
    step(root, any, forces, 0, 0.5, 0, 1, out);
    expect(stepError(out, 1, 1, 1, 1e9)).toBeNaN();
  });
});
