import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  endsAtRest,
  evenLoss,
  evenWay,
  HALF_SWING,
  placeOf,
  shareAt,
  slopeAt,
} from "../../../core/swing/ways.ts";

const anyWay = fc.oneof(fc.constantFrom(0, 0.5, 1, HALF_SWING), fc.double({ min: 0, max: 1, noNaN: true }));
const unit = fc.double({ min: 0, max: 1, noNaN: true });

/** Integral by Simpson's rule, 200 steps. */
function simpson(f: (u: number) => number, end: number): number {
  const n = 200;
  let sum = f(0) + f(end);
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * f((end * i) / n);
  return (sum * end) / (3 * n);
}

describe("a way", () => {
  test("goes from nothing to all of it, its slope is its derivative, and its place is its inverse", () => {
    fc.assert(
      fc.property(anyWay, unit, (way, u) => {
        expect(shareAt(way, 0)).toBe(0);
        expect(shareAt(way, 1)).toBeCloseTo(1, 15);
        expect(simpson((v) => slopeAt(way, v), u)).toBeCloseTo(shareAt(way, u), 9);
        const share = shareAt(way, u);
        expect(shareAt(way, placeOf(way, share))).toBeCloseTo(share, 13);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  test("from rest starts with u², to rest ends so, and one between two speeds has their ratio", () => {
    expect(shareAt(evenWay(0, 2), 0.1)).toBeCloseTo(0.01, 15);
    expect(shareAt(evenWay(2, 0), 0.9)).toBeCloseTo(0.99, 15);
    const way = evenWay(3, 1);
    expect(slopeAt(way, 0) / slopeAt(way, 1)).toBeCloseTo(3, 14);
    expect([0, 0.5, 1, HALF_SWING].map(endsAtRest)).toEqual([false, false, true, true]);
  });

  test("the loss of an evenly changing torque is its integral", () => {
    fc.assert(
      fc.property(unit, unit, unit, unit, (way, u, start, end) => {
        const loss = simpson((v) => slopeAt(way, v) * (start + v * (end - start)), u);
        expect(evenLoss(way, u, start, end)).toBeCloseTo(loss, 10);
      }),
      { seed: 2, numRuns: 100 },
    );
  });
});
