/** Maps: cells and places, keys, and a colour scale that can be read in grey. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gridOrder } from "../../../core/study/map-order.ts";
import {
  alongPlaces,
  CURVE_PLACES,
  cellAfterKey,
  cellAt,
  cellBox,
  MAP_PLACES,
  nearestIndex,
  placeTicks,
  plain,
  roughValues,
} from "../../../renderer/plots/map-grid.ts";
import { isSingle, mapColour, mapRange, okLabToSrgb, shareOf } from "../../../renderer/plots/map-scale.ts";

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

  test("numbers to read off", () => {
    expect([plain(0.1 + 0.2), plain(-12.3456), plain(0)]).toEqual(["0.3", "−12.35", "0"]);
    expect(nearestIndex([3, 2, 1], 1.4)).toBe(2);
  });
});

describe("round numbers along an axis", () => {
  test("a place's own value stands in its middle, whichever way the axis runs", () => {
    expect([0, 1, 2, 3].map((i) => alongPlaces([2, 3, 4, 5], 2 + i))).toEqual([0.125, 0.375, 0.625, 0.875]);
    expect(alongPlaces([5, 4, 3, 2], 5)).toBe(0.125);
    expect(alongPlaces([2, 3, 4, 5], 1)).toBe(-0.125);
  });

  test("they are where their numbers say, within the places, no more than there is room for", () => {
    const end = fc.double({ min: -1e3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(
        end,
        end,
        fc.integer({ min: 2, max: 80 }),
        fc.integer({ min: 2, max: 20 }),
        (a, b, n, most) => {
          fc.pre(Math.abs(a - b) > 1e-3);
          const values = Array.from({ length: n }, (_, i) => a + ((b - a) * i) / (n - 1));
          const ticks = placeTicks(values, most);
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          for (const { share, text } of ticks) {
            expect(share).toBeGreaterThan(0);
            expect(share).toBeLessThan(1);
            const told = Number(text.replace("−", "-"));
            expect(Math.abs(told - (a + (b - a) * ((share * n - 0.5) / (n - 1))))).toBeLessThan(1e-6);
          }
        },
      ),
    );
    expect(placeTicks([3, 4.5, 6, 7.5, 9], 4).map(({ text }) => text)).toEqual(["4", "6", "8"]);
    expect(placeTicks([2, 2], 4)).toEqual([{ share: 0.5, text: "2" }]);
  });
});

describe("a map that comes in coarse to fine", () => {
  /** Values are the numbers of their places. */
  function arrived(points: number, x: number, y: number): (number | undefined)[] {
    const values = new Array<number | undefined>(x * y).fill(undefined);
    for (const at of gridOrder(x, y).slice(0, points)) values[at.y * x + at.x] = at.y * x + at.x;
    return values;
  }

  test("its first picture is whole after the first pass, and that is within a tenth of it", () => {
    for (const [x, y] of [
      [CURVE_PLACES, 1],
      [MAP_PLACES, MAP_PLACES],
    ] as const) {
      const order = gridOrder(x, y);
      const first = order.filter(({ block }) => block === order[0].block).length;
      expect(first).toBeLessThanOrEqual(0.1 * order.length);
      expect(roughValues(arrived(first, x, y), x)).not.toContain(undefined);
      expect(roughValues(arrived(first - 1, x, y), x)).toContain(undefined);
    }
  });

  test("each place shows the latest computed point whose block it lies in; what is computed stays", () => {
    fc.assert(
      fc.property(grid, fc.nat(), ({ x, y }, some) => {
        const order = gridOrder(x, y);
        const count = some % (order.length + 1);
        const values = arrived(count, x, y);
        const expected = new Array<number | undefined>(x * y).fill(undefined);
        for (const at of order.slice(0, count)) {
          for (let j = at.y; j < Math.min(y, at.y + at.block); j++) {
            for (let i = at.x; i < Math.min(x, at.x + at.block); i++) expected[j * x + i] = at.y * x + at.x;
          }
        }
        expect(roughValues(values, x)).toEqual(expected);
      }),
    );
  });

  test("what does not exist is shown as such, not as its neighbour", () => {
    const [first, rest] = [[1, undefined, null, undefined], new Array(4).fill(undefined)];
    expect(roughValues([...first, ...rest], 8)).toEqual([1, 1, null, null, ...rest]);
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
    // What reads as one value has one colour.
    expect(shareOf(2.00001, { least: 2, most: 2.00002 })).toBe(0.5);
    expect([isSingle({ least: 2, most: 2.00002 }), isSingle({ least: 2, most: 2.01 })]).toEqual([
      true,
      false,
    ]);
  });
});
