/** One page of a tiled drawing, as data. */
import type { Drawing } from "./drawing.ts";

/** Shared by neighbours, mm. */
export const OVERLAP = 12;

export interface Tile {
  /** A1, A2, B1 …: row by letter, column by number. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** The part of the drawing on this page, in the drawing's millimetres. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Where that part's upper left corner is on the page, mm. */
  readonly atX: number;
  readonly atY: number;
  /** Frame, marks, rulers and words of the page itself, in page millimetres. */
  readonly furniture: Drawing;
}

export interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export const tileName = (row: number, column: number): string =>
  `${String.fromCharCode(65 + row)}${column + 1}`;
