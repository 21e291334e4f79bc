import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Counts, curvePoints, recommendedPlace } from "../../../core/study/curve.ts";
import { GridCount, gridSpacing } from "../../../core/study/grid.ts";
import { BIN_WIDTH, TimeHistogram } from "../../../core/study/histogram.ts";
import { Stretches } from "../../../core/study/stretches.ts";

describe("counts along a grid", () => {
  const ranges = fc.array(fc.tuple(fc.nat(900), fc.nat(900)), { maxLength: 30 });

  test("are what counting one by one gives, however they were merged", () => {
    fc.assert(
      fc.property(ranges, fc.nat(30), (all, cut) => {
        const [one, two] = [new GridCount(), new GridCount()];
        all.forEach(([from, to], i) => {
          (i < cut ? one : two).add(from, to > 800 ? Number.POSITIVE_INFINITY : to);
        });
        two.merge(one);
        const counts = two.counts(1000);
        for (let i = 0; i < 1000; i += 7) {
          const direct = all.filter(
            ([from, to]) => i >= from && (i < to || to > 800) && (to > from || to > 800),
          );
          expect(counts[i]).toBe(direct.length);
        }
      }),
    );
  });

  test("lie a hundredth of a second apart, further only where a curve were endless", () => {
    expect(gridSpacing(800)).toBe(0.01);
    expect(gridSpacing(20_000)).toBe(0.04);
  });
});

describe("quantiles of counted times", () => {
  test("are the order statistics to half a bin", () => {
    const times = fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(times, fc.constantFrom(0.05, 0.5, 0.95, 0.99), (values, p) => {
        const histogram = new TimeHistogram();
        for (const value of values) histogram.add(value);
        const sorted = [...values].sort((a, b) => a - b);
        const exact = sorted[Math.ceil(p * values.length - 1e-9) - 1];
        expect(Math.abs((histogram.quantile(p) ?? Number.NaN) - exact)).toBeLessThanOrEqual(
          BIN_WIDTH * 1.001,
        );
      }),
    );
  });

  test("are null where that one is never", () => {
    const histogram = new TimeHistogram();
    for (let i = 0; i < 96; i++) histogram.add(2);
    for (let i = 0; i < 4; i++) histogram.add(Number.POSITIVE_INFINITY);
    expect(histogram.quantile(0.95)).toBeCloseTo(2, 3);
    expect(histogram.quantile(0.99)).toBeNull();
    expect(new TimeHistogram().quantile(0.5)).toBeNull();
  });

  test("are 0 for flaps that never were outside", () => {
    const histogram = new TimeHistogram();
    histogram.add(0);
    expect(histogram.quantile(0.5)).toBe(0);
  });
});

/** Counts of `samples` of which at each setting so many are caught, throughout the cells as well. */
function countsFrom(caught: readonly number[], samples: number): Counts {
  const array = Int32Array.from(caught);
  const none = new Int32Array(array.length);
  return {
    samples,
    spacing: 0.01,
    size: array.length,
    cannotWork: 0,
    restsOutside: 0,
    caught: array,
    underAnimal: none,
    stuck: none,
    shutOut: none,
    caughtThroughout: array,
  };
}

describe("the recommendation", () => {
  test("is the least setting from which on the count stays high enough, past any earlier hump", () => {
    expect(recommendedPlace(countsFrom([0, 300, 300, 290, 299, 300, 300], 300), 0.99)).toBe(5);
    expect(recommendedPlace(countsFrom([300, 300, 300], 300), 0.99)).toBe(0);
  });

  test("is none where the end is not high enough or the samples are too few", () => {
    expect(recommendedPlace(countsFrom([300, 300, 290], 300), 0.99)).toBeNull();
    expect(recommendedPlace(countsFrom([298, 298], 298), 0.99)).toBeNull();
  });
});

describe("the curve", () => {
  test("goes from 0 to its end in steps of at most 0.05 s where it changes, the recommendation among its points", () => {
    const caught = Array.from({ length: 1001 }, (_, i) => (i < 300 ? 0 : i < 600 ? i - 300 : 300));
    const points = curvePoints(countsFrom(caught, 300), 597);
    expect(points[0]).toEqual([0, 0, 0]);
    expect(points.at(-1)?.[0]).toBe(10);
    expect(points.some(([setting]) => setting === 5.97)).toBe(true);
    for (let i = 1; i < points.length; i++) {
      const [[before, p], [here, q]] = [points[i - 1], points[i]];
      if (p !== q) expect(here - before).toBeLessThanOrEqual(0.05 + 1e-9);
    }
  });
});

test("stretches that touch are one, and what is not listed is shut out", () => {
  const stretches = new Stretches();
  stretches.addBefore(5, Number.POSITIVE_INFINITY, 0);
  stretches.addBefore(4, 5, 0);
  stretches.addBefore(2, 4, 1);
  stretches.addBefore(1, 2, 2);
  expect(stretches.count).toBe(2);
  expect([0.5, 1.5, 3, 4.5, 1e9].map((t) => stretches.at(t))).toEqual([2, 2, 1, 0, 0]);
});
