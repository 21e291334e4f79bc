/** What the stages of a wiring diagram are drawn with: wires, joints, boxes and labels on a sketch, and where the rails run. */
import {
  type Anchor,
  line,
  type Point,
  type Primitive,
  polyline,
  rectangle,
  Sketch,
  text,
} from "./drawing.ts";
import { joint, type SymbolSet } from "./wiring-symbols.ts";

/** Heights of the rails, mm: the supply's, the logic voltage's, and 0 V. */
export const RAIL = { supply: 24, logic: 38, zero: 132 } as const;
/** Where coil and transistor stand, and both long rails end, mm. */
export const COLUMN = 205;
/** The drawing's own room, mm: fits A4 and Letter lying down. */
export const ROOM = { width: 255, height: 184 } as const;
/** Type sizes, mm: the least that reads well in print. */
export const SIZE = { label: 2.7, title: 5, head: 3.1 } as const;
/** From line to line, in type sizes. */
export const LEADING = 1.4;

export class Board {
  readonly sketch = new Sketch();
  readonly set: SymbolSet;
  private readonly x: number;
  private readonly y: number;

  /** Everything is shifted so that the room stands in the middle of its paper. */
  constructor(set: SymbolSet, [x, y]: Point) {
    this.set = set;
    this.x = x;
    this.y = y;
  }

  private at([x, y]: Point): Point {
    return [x + this.x, y + this.y];
  }

  symbol(...items: readonly Primitive[]): this {
    this.sketch.on("OUTLINE", ...items.map((item) => moved(item, this.x, this.y)));
    return this;
  }

  dashed(...items: readonly Primitive[]): this {
    this.sketch.on("HIDDEN", ...items.map((item) => moved(item, this.x, this.y)));
    return this;
  }

  /** Thin and soft: what is not there. */
  faint(...items: readonly Primitive[]): this {
    this.sketch.on("DIMENSIONS", ...items.map((item) => moved(item, this.x, this.y)));
    return this;
  }

  /** Straight wires through the points, which must be level or upright from one another. */
  wire(...points: readonly Point[]): this {
    return this.symbol(points.length === 2 ? line(points[0], points[1]) : polyline(points));
  }

  joint(...points: readonly Point[]): this {
    return this.symbol(...points.map(joint));
  }

  box(left: number, top: number, right: number, bottom: number, present = true): this {
    const frame = rectangle(left, top, right, bottom);
    return present ? this.symbol(frame) : this.dashed(frame);
  }

  /** Lines of words one below the other, the first line's baseline at `at`; `strong` sets the first one strong. */
  label(
    at: Point,
    words: readonly string[],
    anchor: Anchor = "start",
    strong = false,
    size: number = SIZE.label,
  ): this {
    const [x, y] = this.at(at);
    words.forEach((one, i) => {
      const style = { size, anchor, strong: strong && i === 0 };
      this.sketch.on("TEXT", text([x, y + i * size * LEADING], one, style));
    });
    return this;
  }

  /** A frame that must not be overlooked. */
  warning(left: number, top: number, right: number, bottom: number): this {
    this.sketch.on("CUT", moved(rectangle(left, top, right, bottom), this.x, this.y));
    return this;
  }
}

function moved(item: Primitive, dx: number, dy: number): Primitive {
  const by = ([x, y]: Point): Point => [x + dx, y + dy];
  switch (item.kind) {
    case "line":
      return { ...item, from: by(item.from), to: by(item.to) };
    case "polyline":
    case "hatch":
      return { ...item, points: item.points.map(by) };
    case "circle":
    case "arc":
      return { ...item, centre: by(item.centre) };
    case "text":
      return { ...item, at: by(item.at) };
    case "dimension":
      return { ...item, from: by(item.from), to: by(item.to), at: item.at + (item.along === "x" ? dy : dx) };
  }
}
