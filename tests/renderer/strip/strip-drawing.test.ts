/** What the strip is drawn from: rows, angles, paths, probabilities. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { angleScale, angleTicks, angleY } from "../../../renderer/strip/angle-scale.ts";
import { ninesShare, percent, TOP_NINES } from "../../../renderer/strip/nines.ts";
import { leastHeight, stripRows } from "../../../renderer/strip/rows.ts";
import { firstFrom, tracePath } from "../../../renderer/strip/trace-path.ts";

describe("rows", () => {
  const size = fc.record({
    height: fc.integer({ min: 100, max: 900 }),
    rem: fc.integer({ min: 12, max: 32 }),
    timer: fc.boolean(),
    study: fc.boolean(),
  });

  test("follow each other without overlap and, where the height does, within it", () => {
    fc.assert(
      fc.property(size, ({ height, rem, timer, study }) => {
        const { marks, probability, trace, hold, ribbon, axis } = stripRows(height, rem, { timer, study });
        const rows = [marks, ...(probability === null ? [] : [probability]), trace, hold, ribbon, axis];
        rows.forEach((row, i) => {
          if (timer || (row !== hold && row !== ribbon)) expect(row.height).toBeGreaterThan(0);
          if (i > 0) expect(row.top).toBeGreaterThanOrEqual(rows[i - 1].top + rows[i - 1].height - 1e-9);
        });
        if (height >= leastHeight(rem, { timer, study }))
          expect(axis.top + axis.height).toBeLessThanOrEqual(height + 1e-9);
        expect(probability !== null).toBe(study);
      }),
    );
  });

  test("160 px hold the strip with its head of 30 px at the usual text size", () => {
    expect(leastHeight(16, { timer: true, study: false })).toBeLessThanOrEqual(130);
  });
});

describe("angles", () => {
  const scale = angleScale(0.01, 0.012, 1.05, 100, 80);

  test("the slot is in the middle, outdoors up, the ends inside", () => {
    expect(angleY(scale, 0.01)).toBe(140);
    expect(angleY(scale, 0.5)).toBeLessThan(140);
    expect(angleY(scale, 0.01 + 1.05)).toBeGreaterThan(100);
    expect(angleY(scale, 0.01 - 1.05)).toBeLessThan(180);
  });

  test("rises with the angle all the way, as far out as in", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
        (a, by) => {
          expect(angleY(scale, a + by)).toBeLessThan(angleY(scale, a));
          expect(angleY(scale, 0.01 + a) - 140).toBeCloseTo(140 - angleY(scale, 0.01 - a), 9);
        },
      ),
    );
  });

  test("the capture band is wide enough to see where it is a hundredth of the swing", () => {
    expect(angleY(scale, 0.01 - 0.012) - angleY(scale, 0.01 + 0.012)).toBeGreaterThan(10);
  });

  test("without a latch to scale", () => {
    const plain = angleScale(0, null, 1, 0, 100);
    expect(50 - angleY(plain, 0.8)).toBeCloseTo(2 * (50 - angleY(plain, 0.4)), 9);
  });

  test("ticks at round degrees within the largest angle", () => {
    expect(angleTicks(scale).map((a) => (a * 180) / Math.PI)).toEqual([expect.closeTo(60, 9)]);
  });
});

describe("probabilities in nines", () => {
  test.each([
    [0, 0],
    [0.9, 1],
    [0.99, 2],
    [0.999, 3],
  ])("%d lies at %d nines", (p, nines) => {
    expect(ninesShare(p) * TOP_NINES).toBeCloseTo(nines, 9);
  });

  test("certain is the top, and nothing lies over it", () => {
    expect(ninesShare(1)).toBe(1);
    expect(ninesShare(0.9999999)).toBe(1);
    expect(ninesShare(-0.1)).toBe(0);
  });

  test.each([
    [0.5, "50 %"],
    [0.9, "90 %"],
    [0.99, "99 %"],
    [0.999, "99.9 %"],
    [0.9993, "99.93 %"],
    [0.9999, "99.99 %"],
    [1, "100 %"],
  ])("%d is written %s", (p, text) => {
    expect(percent(p)).toBe(text);
  });
});

describe("paths", () => {
  const time = Float64Array.from({ length: 5000 }, (_, i) => i / 240);
  const value = time.map((t) => Math.sin(7 * t));
  const scale = { from: 5, to: 15, left: 70, width: 400 };
  const numbers = (path: string): number[][] =>
    path
      .slice(1)
      .split(/[LM]/)
      .map((pair) => pair.split(" ").map(Number));

  test("keeps peaks, at most three points a pixel, inside the window but for one at each side", () => {
    const points = numbers(tracePath(scale, { time, value }, (v) => 50 - 40 * v, { from: 0, to: 99 }));
    expect(points.length).toBeLessThan(3 * 402);
    expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(10, 1);
    expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(90, 1);
    expect(points[1][0]).toBeGreaterThanOrEqual(70 - 0.1);
    expect(points[points.length - 2][0]).toBeLessThanOrEqual(470 + 0.1);
    for (let i = 1; i < points.length; i++) expect(points[i][0]).toBeGreaterThanOrEqual(points[i - 1][0]);
  });

  test("leaves out nothing that is more than a pixel away", () => {
    // A kink in the middle of a fall, as where the bolt catches the flap.
    const kinked = value.map((v, i) => (i > 2100 ? value[2100] : v));
    const y = (v: number): number => 50 - 40 * v;
    const points = numbers(tracePath(scale, { time, value: kinked }, y, { from: 0, to: 99 }));
    for (let i = 1200; i < 3600; i++) {
      const [x0, y0] = [70 + (time[i] - 5) * 40, y(kinked[i])];
      const near = points.slice(1).map(([x, py], k) => {
        const [fromX, fromY] = points[k];
        const [dx, dy] = [x - fromX, py - fromY];
        const along = ((x0 - fromX) * dx + (y0 - fromY) * dy) / (dx * dx + dy * dy || 1);
        const part = Math.min(1, Math.max(0, along));
        return Math.hypot(fromX + part * dx - x0, fromY + part * dy - y0);
      });
      expect(Math.min(...near)).toBeLessThan(1);
    }
  });

  test("a stretch of it, shifted", () => {
    const points = numbers(tracePath(scale, { time, value }, (v) => v, { from: 8, to: 9, shift: 2 }));
    expect(points[0][0]).toBeGreaterThanOrEqual(70 + 0.3 * 400 - 0.1);
    expect(points[points.length - 1][0]).toBeLessThanOrEqual(70 + 0.4 * 400 + 0.1);
  });

  test("nothing where there is nothing to see", () => {
    expect(tracePath(scale, { time: [0, 1], value: [0, 1] }, (v) => v, { from: 0, to: 99 })).toBe("");
    expect(tracePath(scale, { time: [], value: [] }, (v) => v, { from: 0, to: 99 })).toBe("");
  });

  test("the first sample at or after a moment", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 9, noNaN: true })),
        fc.double({ min: -1, max: 10, noNaN: true }),
        (times, at) => {
          const sorted = [...times].sort((a, b) => a - b);
          const found = sorted.findIndex((t) => t >= at);
          expect(firstFrom(sorted, at)).toBe(found < 0 ? sorted.length : found);
        },
      ),
    );
  });
});
