/** The time axis: pixels and moments there and back, zoom about a place, ticks. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  decimalsOf,
  niceStep,
  panned,
  SHORTEST_WINDOW,
  type TimeScale,
  timeTicks,
  toTime,
  toX,
  zoomed,
} from "../../../renderer/strip/time-axis.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const scales = fc.record({
  from: finite(0, 100),
  length: finite(SHORTEST_WINDOW, 600),
  left: finite(0, 100),
  width: finite(50, 3000),
});
const scaleOf = ({
  from,
  length,
  left,
  width,
}: {
  from: number;
  length: number;
  left: number;
  width: number;
}): TimeScale => {
  return { from, to: from + length, left, width };
};
const whole = { from: 0, to: 700 };

describe("moments and pixels", () => {
  test("the window's ends are the drawing's ends", () => {
    const scale = { from: 2, to: 12, left: 70, width: 1000 };
    expect(toX(scale, 2)).toBe(70);
    expect(toX(scale, 12)).toBe(1070);
    expect(toX(scale, 7)).toBe(570);
    expect(toTime(scale, 570)).toBe(7);
  });

  test("there and back", () => {
    fc.assert(
      fc.property(scales, finite(-100, 800), (parts, time) => {
        const scale = scaleOf(parts);
        const error = Math.abs(toTime(scale, toX(scale, time)) - time);
        expect(error).toBeLessThan(1e-9 * (1 + Math.abs(time) + parts.length));
      }),
    );
  });
});

describe("zoom", () => {
  test("the moment under the pointer keeps its place unless an end is in the way", () => {
    fc.assert(
      fc.property(
        finite(200, 400),
        finite(1, 100),
        finite(0, 1),
        finite(0.5, 2),
        (from, length, share, factor) => {
          const window = { from, to: from + length };
          const time = from + share * length;
          const next = zoomed(window, whole, time, factor);
          expect((time - next.from) / (next.to - next.from)).toBeCloseTo(share, 6);
          expect(next.to - next.from).toBeCloseTo(length * factor, 6);
        },
      ),
    );
  });

  test("stays within the whole and above the shortest stretch", () => {
    fc.assert(
      fc.property(finite(0, 600), finite(0.05, 100), finite(0.001, 1000), (from, length, factor) => {
        const next = zoomed({ from, to: from + length }, whole, from, factor);
        expect(next.from).toBeGreaterThanOrEqual(0);
        expect(next.to).toBeLessThanOrEqual(whole.to + 1e-9);
        expect(next.to - next.from).toBeGreaterThanOrEqual(SHORTEST_WINDOW - 1e-9);
      }),
    );
  });

  test("a whole that is shorter than the shortest stretch is shown whole", () => {
    const tiny = { from: 0, to: 0.01 };
    expect(zoomed(tiny, tiny, 0, 0.1)).toEqual(tiny);
  });

  test("panning stops at the ends", () => {
    expect(panned({ from: 1, to: 3 }, { from: 0, to: 10 }, -5)).toEqual({ from: 0, to: 2 });
    expect(panned({ from: 1, to: 3 }, { from: 0, to: 10 }, 50)).toEqual({ from: 8, to: 10 });
  });
});

describe("ticks", () => {
  test("at least as far apart as asked, inside the window, and written apart", () => {
    fc.assert(
      fc.property(scales, finite(20, 200), (parts, room) => {
        const scale = scaleOf(parts);
        const ticks = timeTicks(scale, room);
        for (let i = 0; i < ticks.length; i++) {
          expect(ticks[i].time).toBeGreaterThan(scale.from - 1e-6);
          expect(ticks[i].time).toBeLessThan(scale.to + 1e-6);
          if (i === 0) continue;
          expect(toX(scale, ticks[i].time) - toX(scale, ticks[i - 1].time)).toBeGreaterThan(
            room * (1 - 1e-6),
          );
          expect(ticks[i].text).not.toBe(ticks[i - 1].text);
        }
      }),
    );
  });

  test.each([
    [0.3, 0.5],
    [0.5, 0.5],
    [0.51, 1],
    [3, 5],
    [60, 100],
    [0.002, 0.002],
  ])("the step for %d is %d", (least, step) => {
    expect(niceStep(least)).toBeCloseTo(step, 12);
  });

  test.each([
    [5, 0],
    [0.5, 1],
    [0.02, 2],
    [100, 0],
  ])("a step of %d needs %i places", (step, places) => {
    expect(decimalsOf(step)).toBe(places);
  });
});
