/**
 * A drawing cut into pages that are printed at full size and glued together. Neighbours share a strip of `OVERLAP`; the
 * same register marks are printed on both, so that one laid over the other shows whether they meet. Every page has a
 * ruler of 100 mm and one of 4 in.
 */
import type { Drawing } from "./drawing.ts";
import { MARGIN, type Paper } from "./paper.ts";
import { type Grid, OVERLAP, type Tile, tileName } from "./tile.ts";
import { furniture } from "./tile-furniture.ts";

/** Room for the rulers and the page's name below the drawing, mm. */
const FOOT = 18;
/** Room for the title and the warning above it, mm. */
const HEAD = 11;

export interface Tiling {
  readonly paper: Paper;
  readonly landscape: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
}

/** Cuts a drawing for a paper, upright or on its side, whichever takes fewer pages. */
export function tiling(drawing: Drawing, paper: Paper): Tiling {
  const upright = countFor(drawing, paper.widthMm, paper.heightMm);
  const turned = countFor(drawing, paper.heightMm, paper.widthMm);
  const landscape = turned.rows * turned.columns < upright.rows * upright.columns;
  const { rows, columns } = landscape ? turned : upright;
  const [widthMm, heightMm] = landscape ? [paper.heightMm, paper.widthMm] : [paper.widthMm, paper.heightMm];
  const grid = { rows, columns, widthMm, heightMm };
  const tiles = Array.from({ length: rows * columns }, (_, i) =>
    tileAt(drawing, grid, Math.floor(i / columns), i % columns),
  );
  return { paper, landscape, ...grid, tiles };
}

/** The page's window onto the drawing, mm. */
function windowOf(widthMm: number, heightMm: number): { width: number; height: number } {
  return { width: widthMm - 2 * MARGIN, height: heightMm - 2 * MARGIN - HEAD - FOOT };
}

function countFor(drawing: Drawing, widthMm: number, heightMm: number): { rows: number; columns: number } {
  const { width, height } = windowOf(widthMm, heightMm);
  const count = (length: number, window: number) =>
    Math.max(1, Math.ceil((length - OVERLAP - 1e-6) / (window - OVERLAP)));
  return { rows: count(drawing.heightMm, height), columns: count(drawing.widthMm, width) };
}

function tileAt(drawing: Drawing, grid: Grid, row: number, column: number): Tile {
  const window = windowOf(grid.widthMm, grid.heightMm);
  const step = { x: window.width - OVERLAP, y: window.height - OVERLAP };
  // What the grid has too much is shared between both ends.
  const spare = {
    x: grid.columns * step.x + OVERLAP - drawing.widthMm,
    y: grid.rows * step.y + OVERLAP - drawing.heightMm,
  };
  const part = {
    left: column * step.x - spare.x / 2,
    top: row * step.y - spare.y / 2,
    ...window,
  };
  const name = tileName(row, column);
  const at = { atX: MARGIN, atY: MARGIN + HEAD };
  const tile = { name, row, column, ...part, ...at };
  return { ...tile, furniture: furniture(drawing, grid, tile) };
}
