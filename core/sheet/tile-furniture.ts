/** What a page of a tiled drawing carries besides the drawing: frame, register marks, rulers and words. */
import {
  circle,
  type Drawing,
  filled,
  line,
  type Point,
  type Primitive,
  rectangle,
  Sketch,
  text,
} from "./drawing.ts";
import { rulers } from "./rulers.ts";
import { type Grid, OVERLAP, type Tile, tileName } from "./tile.ts";

/** Radius of a register mark, and how far its cross stands out, mm. */
const MARK = 2.4;
const CROSS = 4.2;

/** In page millimetres. */
export function furniture(drawing: Drawing, grid: Grid, tile: Omit<Tile, "furniture">): Drawing {
  const sketch = new Sketch();
  const right = tile.atX + tile.width;
  const bottom = tile.atY + tile.height;
  const many = grid.rows * grid.columns > 1;
  sketch.on("REGISTER", rectangle(tile.atX, tile.atY, right, bottom));
  if (many) sketch.on("REGISTER", ...registerMarks(grid, tile));
  sketch.on(
    "TEXT",
    text([tile.atX, tile.atY - 6.2], drawing.title, { size: 4.2, strong: true }),
    text([right, tile.atY - 6.2], many ? `page ${tile.name}` : "1 : 1", {
      size: 4.2,
      strong: true,
      anchor: "end",
    }),
    text(
      [tile.atX, tile.atY - 2],
      "Print at 100 %, never fitted to the page. Lay a rule on both scales below before anything is drilled.",
      { size: 2.7 },
    ),
    ...placeWords(grid, tile, right, bottom),
  );
  sketch.on("RULER", ...rulers([tile.atX, bottom + 3]));
  return sketch.drawing(drawing.title, grid.widthMm, grid.heightMm);
}

function placeWords(
  grid: Grid,
  { row, column, name }: Pick<Tile, "row" | "column" | "name">,
  right: number,
  bottom: number,
): Primitive[] {
  if (grid.rows * grid.columns === 1) return [];
  const lines = [
    `${name} of ${tileName(0, 0)} to ${tileName(grid.rows - 1, grid.columns - 1)}`,
    column + 1 < grid.columns ? `${tileName(row, column + 1)} joins at the right` : "",
    row + 1 < grid.rows ? `${tileName(row + 1, column)} joins below` : "",
  ].filter((words) => words !== "");
  return lines.map((words, i) => text([right, bottom + 5 + 4 * i], words, { size: 2.7, anchor: "end" }));
}

/** A cross in a circle on the middle of every shared strip, twice along it: on both pages at the same spot of the drawing. */
function registerMarks(
  grid: Grid,
  { row, column, atX, atY, width, height }: Omit<Tile, "furniture">,
): Primitive[] {
  const marks: Point[] = [];
  const ends = [0.2, 0.8];
  const half = OVERLAP / 2;
  if (column > 0) marks.push(...ends.map((share): Point => [atX + half, atY + share * height]));
  if (column + 1 < grid.columns) {
    marks.push(...ends.map((share): Point => [atX + width - half, atY + share * height]));
  }
  if (row > 0) marks.push(...ends.map((share): Point => [atX + share * width, atY + half]));
  if (row + 1 < grid.rows) {
    marks.push(...ends.map((share): Point => [atX + share * width, atY + height - half]));
  }
  return marks.flatMap(registerMark);
}

function registerMark([x, y]: Point): Primitive[] {
  return [
    circle([x, y], MARK),
    line([x - CROSS, y], [x + CROSS, y]),
    line([x, y - CROSS], [x, y + CROSS]),
    filled([
      [x, y],
      [x + MARK * 0.7, y - MARK * 0.7],
      [x + MARK, y],
    ]),
  ];
}
