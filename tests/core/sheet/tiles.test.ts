/** A drawing on several pages: nothing lost, nothing scaled, register marks on both neighbours at one spot. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Circle, circle, type Drawing, dimension, line, text } from "../../../core/sheet/drawing.ts";
import { PAPERS } from "../../../core/sheet/paper.ts";
import { OVERLAP, type Tile } from "../../../core/sheet/tile.ts";
import { type Tiling, tiling } from "../../../core/sheet/tiles.ts";

const blank = (widthMm: number, heightMm: number): Drawing => ({ title: "x", widthMm, heightMm, layers: [] });
const papers = fc.constantFrom(PAPERS.a4, PAPERS.letter);
const size = fc.integer({ min: 20, max: 1400 });

/** Register marks in the drawing's millimetres. */
function marks({ furniture, atX, atY, left, top }: Tile): string[] {
  const circles = furniture.layers
    .filter(({ name }) => name === "REGISTER")
    .flatMap(({ items }) => items.filter((item): item is Circle => item.kind === "circle"));
  return circles.map(({ centre }) => {
    const spot = [centre[0] - atX + left, centre[1] - atY + top];
    return spot.map((value) => value.toFixed(4)).join(" ");
  });
}

const at = ({ tiles }: Tiling, row: number, column: number) =>
  tiles.find((tile) => tile.row === row && tile.column === column);

describe("tiles", () => {
  test("cover every point of the drawing and stay on their page", () => {
    fc.assert(
      fc.property(
        size,
        size,
        papers,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (w, h, paper, u, v) => {
          const cut = tiling(blank(w, h), paper);
          const [x, y] = [u * w, v * h];
          const held = cut.tiles.filter(
            ({ left, top, width, height }) => x >= left && x <= left + width && y >= top && y <= top + height,
          );
          expect(held.length).toBeGreaterThan(0);
          for (const { atX, atY, width, height } of cut.tiles) {
            expect(atX >= 6.35 && atY >= 6.35).toBe(true);
            expect(atX + width <= cut.widthMm - 6.35 && atY + height <= cut.heightMm - 6.35).toBe(true);
          }
          expect([cut.widthMm, cut.heightMm].sort()).toEqual([paper.widthMm, paper.heightMm].sort());
        },
      ),
    );
  });

  test("share a strip with each neighbour, and its marks", () => {
    fc.assert(
      fc.property(size, size, papers, (w, h, paper) => {
        const cut = tiling(blank(w, h), paper);
        for (const tile of cut.tiles) {
          const right = at(cut, tile.row, tile.column + 1);
          const below = at(cut, tile.row + 1, tile.column);
          for (const [other, shared] of [
            [right, right === undefined ? 0 : tile.left + tile.width - right.left],
            [below, below === undefined ? 0 : tile.top + tile.height - below.top],
          ] as const) {
            if (other === undefined) continue;
            expect(shared).toBeCloseTo(OVERLAP, 6);
            const both = marks(tile).filter((mark) => marks(other).includes(mark));
            expect(both.length).toBe(2);
          }
        }
      }),
    );
  });

  test("move their marks off what is cut and bored, on both neighbours alike", () => {
    const plain = tiling(blank(300, 200), PAPERS.a4);
    const [first] = plain.tiles;
    const [x, y] = marks(first)[0].split(" ").map(Number);
    const busy: Drawing = {
      ...blank(300, 200),
      layers: [
        { name: "CUT", items: [line([x - 20, y + 1], [x + 20, y + 1])] },
        { name: "DRILL", items: [circle([x, y + 0.6 * first.height], 3)] },
        {
          name: "TEXT",
          items: [text([x - 30, y - 0.05 * first.height + 2], "words that run over the strip")],
        },
      ],
    };
    const [left, right] = tiling(busy, PAPERS.a4).tiles;
    const both = marks(left).filter((mark) => marks(right).includes(mark));
    expect(both).toHaveLength(2);
    const heights = both.map((mark) => Number(mark.split(" ")[1])).sort((a, b) => a - b);
    expect(Math.abs(heights[0] - (y + 1))).toBeGreaterThan(5);
    expect(Math.abs(heights[0] - (y - 0.05 * first.height))).toBeGreaterThan(5);
    expect(Math.abs(heights[1] - (y + 0.6 * first.height))).toBeGreaterThan(8);
    for (const height of heights) expect(height).toBeLessThan(left.top + left.height);
  });

  test("move their marks off a dimension's figure, not off its line", () => {
    const plain = tiling(blank(300, 200), PAPERS.a4);
    const [x, y] = marks(plain.tiles[0])[0].split(" ").map(Number);
    const withFigure = (middle: number): Drawing => ({
      ...blank(300, 200),
      layers: [
        { name: "DIMENSIONS", items: [dimension([middle - 60, y], [middle + 60, y], "x", y + 1, "120")] },
      ],
    });
    const first = (drawing: Drawing) => marks(tiling(drawing, PAPERS.a4).tiles[0])[0];
    expect(first(withFigure(x))).not.toBe(marks(plain.tiles[0])[0]);
    expect(first(withFigure(x + 30))).toBe(marks(plain.tiles[0])[0]);
  });

  test("one page where it fits, the side that takes fewer where it does not", () => {
    expect(tiling(blank(150, 200), PAPERS.a4).tiles.length).toBe(1);
    expect(tiling(blank(150, 200), PAPERS.a4).tiles[0].furniture.layers.length).toBeGreaterThan(0);
    expect(tiling(blank(260, 120), PAPERS.a4)).toMatchObject({ landscape: true, rows: 1, columns: 1 });
  });
});
