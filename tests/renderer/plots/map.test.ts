/** Maps: cells and places, keys, and a colour scale that can be read in grey. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cellAfterKey,
  cellAt,
  cellBox,
  labelEvery,
  nearestIndex,
  plain,
} from "../../../renderer/plots/map-grid.ts";
import { mapColour, mapRange, okLabToSrgb, shareOf } from "../../../renderer/plots/map-scale.ts";

const box = { left: 70, top: 8, width: 390, height: 250 };
const grid = fc.record({ x: fc.integer({ min: 1, max: 40 }), y: fc.integer({ min: 1, max: 40 }) });

describe("cells", () => {
  test("the middle of every cell is in that cell; the first row is at the foot", () => {
    fc.assert(
      fc.property(grid, fc.nat(), fc.nat(), (count, i, j) => {
        const cell = { x: i % count.x, y: j % count.y };
        const { left, top, width, height } = cellBox(box, count.x, count.y, cell);
        expect(cellAt(box, count.x, count.y, left + width / 2, top + height / 2)).toEqual(cell);
      }),
    );
    expect(cellBox(box, 3, 5, { x: 0, y: 0 }).top).toBeCloseTo(box.top + 200, 9);
  });

  test("outside there is none", () => {
    for (const [x, y] of [
      [69, 100],
      [461, 100],
      [100, 7],
      [100, 259],
    ]) {
      expect(cellAt(box, 4, 4, x, y)).toBeNull();
    }
  });

  test("arrows walk and stop at the edges", () => {
    expect(cellAfterKey({ x: 1, y: 1 }, "ArrowRight", 3, 3)).toEqual({ x: 2, y: 1 });
    expect(cellAfterKey({ x: 2, y: 1 }, "ArrowRight", 3, 3)).toEqual({ x: 2, y: 1 });
    expect(cellAfterKey({ x: 1, y: 1 }, "ArrowUp", 3, 3)).toEqual({ x: 1, y: 2 });
    expect(cellAfterKey({ x: 1, y: 0 }, "ArrowDown", 3, 3)).toEqual({ x: 1, y: 0 });
    expect(cellAfterKey({ x: 1, y: 1 }, "Home", 3, 3)).toEqual({ x: 0, y: 1 });
    expect(cellAfterKey({ x: 1, y: 1 }, "x", 3, 3)).toBeNull();
  });

  test("labels have room", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 10, max: 800 }), (count, length) => {
        const every = labelEvery(count, length, 40);
        const shown = Math.ceil(count / every);
        if (shown > 1) expect(length / (count / every)).toBeGreaterThanOrEqual(40 - 1e-9);
      }),
    );
  });

  test("numbers to read off", () => {
    expect([plain(0.1 + 0.2), plain(-12.3456), plain(0)]).toEqual(["0.3", "−12.35", "0"]);
    expect(nearestIndex([3, 2, 1], 1.4)).toBe(2);
  });
});

describe("colours", () => {
  /** Relative luminance of WCAG 2. */
  function luminance(colour: string): number {
    const [r, g, b] = (colour.match(/\d+/g) ?? []).map((part) => {
      const c = Number(part) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  }

  // Ottosson's published pairs: white, black, and the sRGB primaries.
  test.each([
    [
      [1, 0, 0],
      [255, 255, 255],
    ],
    [
      [0, 0, 0],
      [0, 0, 0],
    ],
    [
      [0.627955, 0.224863, 0.125846],
      [255, 0, 0],
    ],
    [
      [0.86644, -0.233888, 0.179498],
      [0, 255, 0],
    ],
    [
      [0.452014, -0.032457, -0.311528],
      [0, 0, 255],
    ],
  ])("OKLab %j is sRGB %j", ([l, a, b], srgb) => {
    const found = okLabToSrgb(l, a, b);
    for (const [i, part] of found.entries()) expect(Math.abs(part - srgb[i])).toBeLessThanOrEqual(1);
  });

  test("darker all the way, so that the scale can be read in grey", () => {
    for (let i = 1; i <= 100; i++) {
      expect(luminance(mapColour(i / 100))).toBeLessThan(luminance(mapColour((i - 1) / 100)));
    }
    expect((luminance(mapColour(0)) + 0.05) / (luminance(mapColour(1)) + 0.05)).toBeGreaterThan(12);
  });

  test("shares beyond the ends are the ends", () => {
    expect(mapColour(-1)).toBe(mapColour(0));
    expect(mapColour(2)).toBe(mapColour(1));
  });

  test("ranges leave out what does not exist; one value lies in the middle", () => {
    expect(mapRange([null, 3, 1, null])).toEqual({ least: 1, most: 3 });
    expect(mapRange([null, null])).toBeNull();
    expect(shareOf(2, { least: 1, most: 3 })).toBe(0.5);
    expect(shareOf(2, { least: 2, most: 2 })).toBe(0.5);
  });
});
