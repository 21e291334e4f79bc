/**
 * A picture of numbers as plain data: what the page draws live, what is written as PNG or SVG and what is copied as a
 * table all come from this one object. Values are in the units of the axes.
 */

/** Names of the look's colours (renderer/theme/tokens.css), without the dashes. */
export type Ink =
  | "ink"
  | "ink-soft"
  | "line"
  | "line-strong"
  | "well"
  | "bench"
  | "open"
  | "caught"
  | "caught-soft"
  | "riding"
  | "riding-soft"
  | "shut-out"
  | "flap"
  | "magnet"
  | "metal"
  | "animal"
  | "ghost";

export type Colours = Readonly<Record<Ink, string>>;

/** Lengths of strokes and gaps, px; empty is an unbroken line. */
export type Dash = readonly number[];

export const DASHES = {
  solid: [],
  long: [10, 4],
  dash: [5, 4],
  dot: [1.5, 3.5],
  mixed: [9, 3, 1.5, 3],
} as const satisfies Record<string, Dash>;

/** What fills an area beside its colour, so that areas differ without any. */
export type Fill = "even" | "rising" | "falling" | "crossed" | "dots" | "upright";

export interface Axis {
  readonly label: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
}

export interface Line {
  readonly label: string;
  readonly ink: Ink;
  readonly dash: Dash;
  readonly width: number;
  /** NaN where there is nothing to draw. */
  readonly values: ArrayLike<number>;
  /** Own x values, for curves that turn back; else the figure's. */
  readonly x?: ArrayLike<number>;
}

/** One layer of a stack, between the layers before it and its own upper edge. */
export interface Layer {
  readonly label: string;
  readonly ink: Ink;
  readonly fill: Fill;
  readonly values: ArrayLike<number>;
}

/** A stretch of an axis, right across the picture. */
export interface Band {
  readonly axis: "x" | "y";
  readonly from: number;
  readonly to: number;
  readonly label: string;
  readonly ink: Ink;
}

/** What acts either way: an area from minus to plus its values. */
export interface EitherWay {
  readonly label: string;
  readonly ink: Ink;
  readonly fill: Fill;
  readonly values: ArrayLike<number>;
}

/** A moment on the x axis. */
export interface Mark {
  readonly x: number;
  readonly label: string;
}

export interface Point {
  readonly x: number;
  readonly y: number;
  readonly label: string;
  readonly shape: "round" | "square";
}

export interface Figure {
  /** For file names and keys: "angle". */
  readonly id: string;
  readonly title: string;
  /** Which way is up, and the like; stands beside the title. */
  readonly note: string;
  readonly x: Axis;
  readonly y: Axis;
  /** Rising; empty where every line has its own. */
  readonly values: ArrayLike<number>;
  readonly lines: readonly Line[];
  readonly layers: readonly Layer[];
  readonly bands: readonly Band[];
  readonly eitherWay: readonly EitherWay[];
  readonly marks: readonly Mark[];
  readonly points: readonly Point[];
}

/** Upper edges of the layers, each the sum of those up to it. */
export function stacked(layers: readonly Layer[]): Float64Array[] {
  let below: ArrayLike<number> | null = null;
  return layers.map(({ values }) => {
    const edge: Float64Array = Float64Array.from(
      values,
      (value, i) => value + (below === null ? 0 : below[i]),
    );
    below = edge;
    return edge;
  });
}

/** Least and greatest of all values; NaN counts for nothing. `null` where there are none. */
export function extent(...columns: readonly ArrayLike<number>[]): { least: number; most: number } | null {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const column of columns) {
    for (let i = 0; i < column.length; i++) {
      if (column[i] < least) least = column[i];
      if (column[i] > most) most = column[i];
    }
  }
  return least <= most ? { least, most } : null;
}

/** An axis' ends with a little room about the values; never empty. */
export function roomy(least: number, most: number, share = 0.06): { from: number; to: number } {
  const room = share * (most - least) || Math.abs(most) * share || 1;
  return { from: least - room, to: most + room };
}

/** A column read at other x values by straight lines; NaN outside its own. Both x rise. */
export function readAt(x: ArrayLike<number>, values: ArrayLike<number>, at: ArrayLike<number>): Float64Array {
  const read = new Float64Array(at.length).fill(Number.NaN);
  let j = 0;
  for (let i = 0; i < at.length && x.length > 0; i++) {
    while (j + 2 < x.length && x[j + 1] < at[i]) j++;
    if (at[i] < x[0] || at[i] > x[x.length - 1]) continue;
    const width = x.length > 1 ? x[j + 1] - x[j] : 0;
    const share = width > 0 ? (at[i] - x[j]) / width : 0;
    read[i] = share === 0 ? values[j] : values[j] + share * (values[j + 1] - values[j]);
  }
  return read;
}
