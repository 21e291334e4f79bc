/** Register marks: on both neighbours of a shared strip at the same spot of the drawing, clear of what is cut, drilled and said there. */
import {
  circle,
  type Drawing,
  filled,
  type LayerName,
  line,
  type PlainPrimitive,
  type Point,
  type Primitive,
  type Text,
} from "./drawing.ts";
import { plainPrimitives } from "./plain.ts";
import { textWidth } from "./text-width.ts";
import { type Grid, OVERLAP, type Tile } from "./tile.ts";

/** Radius of a register mark, and how far its cross stands out, mm. */
const MARK = 2.4;
const CROSS = 4.2;
/** Where along a strip the two marks go, as parts of it: the first of each that is clear. */
const PLACES = [
  [0.2, 0.15, 0.25, 0.3, 0.1, 0.35, 0.4],
  [0.8, 0.85, 0.75, 0.7, 0.9, 0.65, 0.6],
] as const;
/** Layers a mark must not hide a line of. */
const KEPT: readonly LayerName[] = ["CUT", "LATCH", "DRILL", "MAGNETS", "POLARITY", "TEXT", "RULER"];

/** In page millimetres. */
export function registerMarks(drawing: Drawing, grid: Grid, tile: Omit<Tile, "furniture">): Primitive[] {
  const { row, column, left, top, atX, atY, width, height } = tile;
  const kept = drawing.layers.flatMap(({ name, items }) => {
    const plain = plainPrimitives(items);
    // Of a dimension only its figure counts: its lines run right across the page.
    if (name === "DIMENSIONS") return plain.filter(({ kind }) => kind === "text");
    return KEPT.includes(name) ? plain : [];
  });
  const clear = ([x, y]: Point) => {
    const spot: Point = [x - atX + left, y - atY + top];
    return kept.every((item) => distanceTo(item, spot) > CROSS + 1);
  };
  const half = OVERLAP / 2;
  const along = (spot: (share: number) => Point) =>
    PLACES.map((shares) => spot(shares.find((share) => clear(spot(share))) ?? shares[0]));
  const marks: Point[] = [];
  if (column > 0) marks.push(...along((share) => [atX + half, atY + share * height]));
  if (column + 1 < grid.columns) marks.push(...along((share) => [atX + width - half, atY + share * height]));
  if (row > 0) marks.push(...along((share) => [atX + share * width, atY + half]));
  if (row + 1 < grid.rows) marks.push(...along((share) => [atX + share * width, atY + height - half]));
  return marks.flatMap(registerMark);
}

/** From a spot to a line that is drawn, or to the box of level words, mm; turned ones count for nothing. */
function distanceTo(item: PlainPrimitive, spot: Point): number {
  switch (item.kind) {
    case "line":
      return toSegment(spot, item.from, item.to);
    case "polyline": {
      const { points, closed } = item;
      const ends = closed ? [...points, points[0]] : points;
      return Math.min(...ends.slice(1).map((to, i) => toSegment(spot, ends[i], to)));
    }
    case "circle":
    case "arc":
      return Math.abs(Math.hypot(spot[0] - item.centre[0], spot[1] - item.centre[1]) - item.radius);
    case "text":
      return item.turn === undefined ? toBox(spot, item) : Number.POSITIVE_INFINITY;
  }
}

function toBox([x, y]: Point, { at, text, size, anchor, strong }: Text): number {
  const width = textWidth(text, size, strong);
  const left = at[0] - (anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width);
  const aside = Math.max(left - x, x - left - width, 0);
  const over = Math.max(at[1] - size - y, y - at[1], 0);
  return Math.hypot(aside, over);
}

function toSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
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
