/** What a page of a tiled drawing carries besides the drawing: frame, register marks, rulers and words. */
import { type Drawing, type Primitive, rectangle, Sketch, text } from "./drawing.ts";
import { registerMarks } from "./register-marks.ts";
import { rulers } from "./rulers.ts";
import { type Grid, type Tile, tileName } from "./tile.ts";

/** In page millimetres. */
export function furniture(drawing: Drawing, grid: Grid, tile: Omit<Tile, "furniture">): Drawing {
  const sketch = new Sketch();
  const right = tile.atX + tile.width;
  const bottom = tile.atY + tile.height;
  const many = grid.rows * grid.columns > 1;
  sketch.on("REGISTER", rectangle(tile.atX, tile.atY, right, bottom));
  if (many) sketch.on("REGISTER", ...registerMarks(drawing, grid, tile));
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
