/** Full-size drawings on sheets to print and glue. */
import type { Drawing } from "./drawing.ts";
import type { Leaf } from "./leaf.ts";
import type { Page } from "./page.ts";
import { pageLeaves } from "./page-leaves.ts";
import type { Paper } from "./paper.ts";
import type { TypeCase } from "./pdf-type.ts";
import { tiling } from "./tiles.ts";

/** Every drawing at 1 : 1, cut into sheets of a paper, after those that say how they go together. `drawings` by their names. */
export function templateLeaves(
  guide: Page,
  drawings: Readonly<Record<string, Drawing>>,
  paper: Paper,
  type: TypeCase,
): Leaf[] {
  const first = pageLeaves(guide, paper, type);
  const guides = first.map((leaf) => ({
    ...leaf,
    name: first.length === 1 ? "guide" : `guide ${leaf.name}`,
  }));
  return [...guides, ...Object.entries(drawings).flatMap(([name, drawing]) => tiles(name, drawing, paper))];
}

function tiles(name: string, drawing: Drawing, paper: Paper): Leaf[] {
  const { tiles: cut, widthMm, heightMm } = tiling(drawing, paper);
  return cut.map((tile) => ({
    name: cut.length === 1 ? name : `${name} ${tile.name}`,
    widthMm,
    heightMm,
    marks: [
      {
        kind: "drawing",
        drawing,
        x: tile.atX - tile.left,
        y: tile.atY - tile.top,
        window: { left: tile.atX, top: tile.atY, width: tile.width, height: tile.height },
      },
      { kind: "drawing", drawing: tile.furniture, x: 0, y: 0, window: null },
    ],
  }));
}
