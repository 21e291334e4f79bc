/**
 * Drawings as data: primitives in millimetres on named layers, without any renderer. x to the right, y down, the origin at
 * the drawing's upper left corner; angles in radians, clockwise as seen, from the x axis.
 *
 * Levels: here (what a drawing is) · `plain` (dimensions and hatches taken apart into lines and text) · `svg`, `dxf`, `pdf-drawing` (renderers).
 */

export type Point = readonly [x: number, y: number];

export interface Line {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
}

/** An open or closed run of straight lines; `filled` only where closed. */
export interface Polyline {
  readonly kind: "polyline";
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly filled?: boolean;
}

export interface Circle {
  readonly kind: "circle";
  readonly centre: Point;
  readonly radius: number;
}

/** From `start` clockwise to `end`. */
export interface Arc {
  readonly kind: "arc";
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
}

export type Anchor = "start" | "middle" | "end";

/** One line of text. `at` lies on its baseline. */
export interface Text {
  readonly kind: "text";
  readonly at: Point;
  readonly text: string;
  /** Type size, mm. */
  readonly size: number;
  readonly anchor: Anchor;
  readonly strong?: boolean;
  /** Turned clockwise about `at`, rad. */
  readonly turn?: number;
  /** Clears the paper behind it, so that lines do not run through the words. */
  readonly clear?: boolean;
}

/** A length between two feet, level or upright. The text is given: a drawing to scale 1 : 10 still writes the true length. */
export interface DimensionLine {
  readonly kind: "dimension";
  readonly from: Point;
  readonly to: Point;
  readonly along: "x" | "y";
  /** Where the dimension line runs: its y for `along: "x"`, its x for `along: "y"`, mm. */
  readonly at: number;
  readonly text: string;
  readonly size: number;
  /** Where the text does not fit between the arrows: before the first one instead of beyond the last. */
  readonly before?: boolean;
}

/** Parallel lines over a polygon: material that is cut through. */
export interface Hatch {
  readonly kind: "hatch";
  readonly points: readonly Point[];
  readonly spacing: number;
  readonly turn: number;
}

export type Primitive = Line | Polyline | Circle | Arc | Text | DimensionLine | Hatch;

/** What renderers draw: no dimension and no hatch any more. */
export type PlainPrimitive = Line | Polyline | Circle | Arc | Text;

/** What a layer is for. Its look and, in DXF, its name and colour follow from it. */
export type LayerName =
  | "CUT"
  | "DRILL"
  | "MAGNETS"
  | "POLARITY"
  | "LATCH"
  | "HIDDEN"
  | "CENTRE"
  | "OUTLINE"
  | "SHADE"
  | "DIMENSIONS"
  | "TEXT"
  | "RULER"
  | "REGISTER";

export interface Layer {
  readonly name: LayerName;
  readonly items: readonly Primitive[];
}

export interface Drawing {
  /** Names the drawing in a file's title. */
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly layers: readonly Layer[];
  /** Thinner lines, for drawings much smaller than the thing. */
  readonly fine?: boolean;
}

export const line = (from: Point, to: Point): Line => ({ kind: "line", from, to });

export const polyline = (points: readonly Point[], closed = false): Polyline => ({
  kind: "polyline",
  points,
  closed,
});

export const filled = (points: readonly Point[]): Polyline => ({
  kind: "polyline",
  points,
  closed: true,
  filled: true,
});

export const rectangle = (left: number, top: number, right: number, bottom: number): Polyline =>
  polyline(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    true,
  );

export const circle = (centre: Point, radius: number): Circle => ({ kind: "circle", centre, radius });

export interface TextStyle {
  readonly size?: number;
  readonly anchor?: Anchor;
  readonly strong?: boolean;
  readonly turn?: number;
  readonly clear?: boolean;
}

/** Type size of a drawing's ordinary words, mm: about 8 point. */
export const TEXT_SIZE = 2.8;

export function text(at: Point, words: string, style: TextStyle = {}): Text {
  const { size = TEXT_SIZE, anchor = "start", ...rest } = style;
  return { kind: "text", at, text: words, size, anchor, ...rest };
}

export function dimension(
  from: Point,
  to: Point,
  along: "x" | "y",
  at: number,
  words: string,
  size = TEXT_SIZE,
): DimensionLine {
  return { kind: "dimension", from, to, along, at, text: words, size };
}

/** Layers by name with what was put on each, in the order of `LAYER_ORDER`; empty ones are left out. */
export class Sketch {
  private readonly items = new Map<LayerName, Primitive[]>();

  /** Puts primitives on a layer. */
  on(name: LayerName, ...primitives: readonly Primitive[]): this {
    const list = this.items.get(name) ?? [];
    list.push(...primitives);
    this.items.set(name, list);
    return this;
  }

  layers(): Layer[] {
    return LAYER_ORDER.flatMap((name) => {
      const items = this.items.get(name);
      return items === undefined ? [] : [{ name, items }];
    });
  }

  drawing(title: string, widthMm: number, heightMm: number, fine = false): Drawing {
    return { title, widthMm, heightMm, layers: this.layers(), fine };
  }
}

/** From the back to the front. */
export const LAYER_ORDER: readonly LayerName[] = [
  "SHADE",
  "CENTRE",
  "HIDDEN",
  "OUTLINE",
  "CUT",
  "LATCH",
  "DRILL",
  "MAGNETS",
  "DIMENSIONS",
  "POLARITY",
  "TEXT",
  "RULER",
  "REGISTER",
];
