/** What a figure is drawn with: a canvas and a written SVG take the same strokes. Lengths in px, y downwards. */
import type { Colours, Dash, Fill, Ink } from "./figure.ts";

export interface Stroke {
  readonly ink: Ink;
  readonly width: number;
  readonly dash: Dash;
}

export interface Lettering {
  readonly ink: Ink;
  readonly size: number;
  readonly weight: number;
  readonly anchor: "start" | "middle" | "end";
  /** Read from below, for the upright axis. */
  readonly upright: boolean;
}

export interface Pen {
  rect(x: number, y: number, width: number, height: number, ink: Ink, opacity: number): void;
  /** A run of points x, y, x, y …; NaN lifts the pen. */
  line(points: ArrayLike<number>, stroke: Stroke): void;
  /** A closed outline, filled. */
  area(points: ArrayLike<number>, ink: Ink, fill: Fill): void;
  dot(x: number, y: number, radius: number, ink: Ink, shape: "round" | "square"): void;
  text(x: number, y: number, text: string, lettering: Lettering): void;
  /** What follows is drawn inside this box only, until `unclip`. */
  clip(x: number, y: number, width: number, height: number): void;
  unclip(): void;
}

export interface PenLook {
  readonly colours: Colours;
  readonly face: string;
}

/** Strokes of the fills in a square tile, and the tile's side, px. */
export const FILL_TILE = 7;
export const FILL_STROKES: Readonly<Record<Fill, readonly (readonly [number, number, number, number])[]>> = {
  even: [],
  rising: [
    [-1, 8, 8, -1],
    [-1, 1, 1, -1],
    [6, 8, 8, 6],
  ],
  falling: [
    [-1, -1, 8, 8],
    [-1, 6, 1, 8],
    [6, -1, 8, 1],
  ],
  crossed: [
    [-1, 8, 8, -1],
    [-1, -1, 8, 8],
  ],
  dots: [
    [1.5, 1.5, 2.3, 1.5],
    [5, 5, 5.8, 5],
  ],
  upright: [[3.5, -1, 3.5, 8]],
};
/** How strong a filled area's ground and its strokes are. */
export const GROUND_OPACITY = 0.4;
export const STROKE_OPACITY = 0.9;
