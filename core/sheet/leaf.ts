/**
 * One sheet of paper as data: what is printed on it, and where. Millimetres from the upper left corner, y downwards; type sizes in
 * points, words from their start on the baseline.
 *
 * Levels: `page` (what is said) · `page-leaves`, `template-leaves`, `program-leaves` (where it stands on paper) · here · `leaf-pdf`,
 * `leaf-svg` (renderers): the PDF, the preview and the print are the same sheets.
 */
import type { Drawing } from "./drawing.ts";

export interface WordsMark {
  readonly kind: "words";
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Points. */
  readonly size: number;
  readonly colour: string;
  readonly strong: boolean;
  /** Letters of one width, spaces kept: a program. */
  readonly mono?: boolean;
}

/** A level line, its middle at y. */
export interface RuleMark {
  readonly kind: "rule";
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly colour: string;
  readonly width: number;
}

export interface BoxMark {
  readonly kind: "box";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fill: string | null;
  readonly edge: string;
  readonly edgeWidth: number;
}

/** The part of a sheet that may be drawn on. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A drawing at full size, its origin at x, y; what lies outside the window is cut off. */
export interface DrawingMark {
  readonly kind: "drawing";
  readonly drawing: Drawing;
  readonly x: number;
  readonly y: number;
  readonly window: Window | null;
}

export type Mark = WordsMark | RuleMark | BoxMark | DrawingMark;

export interface Leaf {
  /** Tells it from the others of its document: "2", "flap A1". */
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the back to the front. */
  readonly marks: readonly Mark[];
}

/** A drawing that is a sheet itself. */
export const drawingLeaf = (drawing: Drawing, name = "1"): Leaf => ({
  name,
  widthMm: drawing.widthMm,
  heightMm: drawing.heightMm,
  marks: [{ kind: "drawing", drawing, x: 0, y: 0, window: null }],
});
