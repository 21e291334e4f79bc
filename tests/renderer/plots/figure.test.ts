/** Numbers on their way into a picture: reading columns, ticks, drawing, readings. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawFigure, frameOf, legendOf, pointsOf } from "../../../renderer/plots/draw.ts";
import { DASHES, extent, type Figure, readAt, roomy, stacked } from "../../../renderer/plots/figure.ts";
import type { Pen } from "../../../renderer/plots/pen.ts";
import { nearestSample, readingText } from "../../../renderer/plots/readings.ts";
import { axisTicks } from "../../../renderer/plots/ticks.ts";

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("reading a column at other places", () => {
  const rising = fc
    .uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 2, maxLength: 40 })
    .map((xs) => xs.sort((a, b) => a - b));

  test("gives back its own values, and straight lines between them", () => {
    fc.assert(
      fc.property(rising, (x) => {
        const values = x.map((v) => 3 * v - 7);
        expect([...readAt(x, values, x)].every((v, i) => Math.abs(v - values[i]) < 1e-9)).toBe(true);
        const between = x.slice(1).map((v, i) => (v + x[i]) / 2);
        for (const [i, v] of readAt(x, values, between).entries())
          expect(v).toBeCloseTo(3 * between[i] - 7, 8);
      }),
    );
  });

  test("is NaN outside, also of nothing and of a single value", () => {
    expect([...readAt([1, 2], [5, 6], [0, 1.5, 3])]).toEqual([Number.NaN, 5.5, Number.NaN]);
    expect([...readAt([], [], [1])]).toEqual([Number.NaN]);
    expect([...readAt([1], [4], [1, 2])]).toEqual([4, Number.NaN]);
  });
});

describe("ranges and ticks", () => {
  test("extent leaves NaN out and knows of nothing", () => {
    expect(extent([1, Number.NaN, -4], [2])).toEqual({ least: -4, most: 2 });
    expect(extent([], [Number.NaN])).toBeNull();
  });

  test("an axis is never empty", () => {
    fc.assert(
      fc.property(finite(-1e6, 1e6), finite(0, 1e6), (least, length) => {
        const { from, to } = roomy(least, least + length);
        expect(to).toBeGreaterThan(from);
      }),
    );
  });

  test("ticks lie on the axis, no more than asked, each written apart", () => {
    fc.assert(
      fc.property(
        finite(-1e4, 1e4),
        finite(1e-3, 1e4),
        fc.integer({ min: 1, max: 12 }),
        (from, length, most) => {
          const ticks = axisTicks({ from, to: from + length }, most);
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          expect(new Set(ticks.map(({ text }) => text)).size).toBe(ticks.length);
          for (const { value } of ticks) {
            expect(value).toBeGreaterThanOrEqual(from - 1e-6 * length);
            expect(value).toBeLessThanOrEqual(from + length * (1 + 1e-6));
          }
        },
      ),
    );
  });

  test("a real minus, and none before zero", () => {
    expect(axisTicks({ from: -1, to: 1 }, 4).map(({ text }) => text)).toEqual([
      "−1.0",
      "−0.5",
      "0.0",
      "0.5",
      "1.0",
    ]);
    expect(axisTicks({ from: 1, to: 1 }, 4)).toEqual([]);
  });

  test("readings have a unit and as many places as can be told apart", () => {
    expect(readingText(12.3456, { label: "", unit: "mJ", from: 0, to: 100 })).toBe("12.3 mJ");
    expect(readingText(-0.0004, { label: "", unit: "s", from: 0, to: 1 })).toBe("0.000 s");
    expect(readingText(-3.21, { label: "", unit: "°", from: -60, to: 60 })).toBe("−3.2°");
  });
});

const FIGURE: Figure = {
  id: "one",
  title: "One",
  note: "",
  x: { label: "x", unit: "s", from: 0, to: 10 },
  y: { label: "y", unit: "m", from: -2, to: 8 },
  values: [0, 5, 10],
  lines: [{ label: "line", ink: "ink", dash: DASHES.solid, width: 1, values: [1, Number.NaN, 3] }],
  layers: [
    { label: "low", ink: "flap", fill: "even", values: [1, 2, 3] },
    { label: "high", ink: "open", fill: "dots", values: [3, 2, 1] },
  ],
  bands: [{ axis: "y", from: 0, to: 1, label: "band", ink: "caught" }],
  eitherWay: [{ label: "either", ink: "metal", fill: "rising", values: [1, 1, 1] }],
  marks: [{ x: 4, label: "mark" }],
  points: [{ x: 2, y: 2, label: "point", shape: "round" }],
};

/** A pen that writes down what it is told. */
function recorder() {
  const texts: { text: string; x: number; y: number; anchor: string; size: number }[] = [];
  const areas: number[][] = [];
  const pen: Pen = {
    rect: () => {},
    line: () => {},
    area: (points) => areas.push(Array.from(points)),
    dot: () => {},
    text: (x, y, text, { anchor, size }) => texts.push({ text, x, y, anchor, size }),
    clip: () => {},
    unclip: () => {},
  };
  return { pen, texts, areas };
}

describe("drawing", () => {
  test("layers lie on each other", () => {
    expect(stacked(FIGURE.layers).map((edge) => [...edge])).toEqual([
      [1, 2, 3],
      [4, 4, 4],
    ]);
  });

  test("places: left to right, bottom to top", () => {
    const { toX, toY } = frameOf(FIGURE, { x: 50, y: 20, width: 100, height: 200 });
    expect([toX(0), toX(10)]).toEqual([50, 150]);
    expect([toY(-2), toY(8)]).toEqual([220, 20]);
  });

  test("NaN lifts the pen; points closer than half a pixel are left out, the last stays", () => {
    const frame = frameOf(FIGURE, { x: 0, y: 0, width: 100, height: 100 });
    expect(pointsOf([0, 5, 10], [1, Number.NaN, 3], frame)).toEqual([0, 70, 50, Number.NaN, 100, 50]);
    const close = pointsOf([0, 0.01, 0.02, 0.03], [0, 0, 0, 0], frame);
    expect(close).toHaveLength(4);
    expect(close[2]).toBeCloseTo(0.3, 9);
  });

  test("a file's legend names everything once, side by side without overlap", () => {
    const { pen, texts, areas } = recorder();
    drawFigure(pen, FIGURE, 300, 300, 12, (text) => 8 * text.length);
    const names = legendOf(FIGURE).map(({ label }) => label);
    expect(names).toEqual(["line", "high", "low", "either", "band"]);
    const legend = texts.filter(({ text, anchor }) => names.includes(text) && anchor === "start");
    expect(legend.map(({ text }) => text)).toEqual(names);
    legend.slice(1).forEach((entry, i) => {
      const before = legend[i];
      if (entry.y === before.y) expect(entry.x - 24).toBeGreaterThan(before.x + 8 * before.text.length);
      else expect(entry.y).toBeGreaterThan(before.y + 12);
    });
    expect(texts.some(({ text }) => text === "x (s)")).toBe(true);
    expect(areas.flat().every(Number.isFinite)).toBe(true);
  });
});

describe("the nearest sample", () => {
  const identity = (value: number) => value;

  test("is the nearest within reach", () => {
    const points = { x: [0, 10, 20], y: [0, 0, 0] };
    expect(nearestSample(points, identity, identity, { x: 11, y: 3 }, 24)).toBe(1);
    expect(nearestSample(points, identity, identity, { x: 11, y: 30 }, 24)).toBeNull();
    expect(nearestSample({ x: [], y: [] }, identity, identity, { x: 0, y: 0 }, 24)).toBeNull();
  });
});
