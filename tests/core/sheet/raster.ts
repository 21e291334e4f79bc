/** Pages as poppler prints them, and what is measured on them. */
import { outputOf } from "./sample.ts";

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Row by row, 0 black to 255 white. */
  readonly grey: Uint8Array;
  /** Dots to the millimetre. */
  readonly perMm: number;
}

/** A page of a PDF, counted from 1, as grey values. */
export function raster(path: string, page: number, perMm: number): Raster {
  const [dpi, at] = [String(25.4 * perMm), String(page)];
  const bytes = outputOf("pdftoppm", ["-r", dpi, "-gray", "-f", at, "-l", at, path]);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString("latin1"));
  if (head === null) throw new Error("pdftoppm gave no grey picture");
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, grey: bytes.subarray(head[0].length), perMm };
}

/** Of the level dark runs near the page's foot the one whose length is nearest to a wanted one, all in mm: its start, length and row. */
export function footRun({ width, height, grey, perMm }: Raster, wanted: number) {
  let best = { start: 0, length: 0, row: 0 };
  for (let row = height - 30 * perMm; row < height - 8 * perMm; row++) {
    for (let x = 0; x < width; x++) {
      const start = x;
      while (x < width && grey[row * width + x] < 160) x++;
      const length = x - start;
      if (Math.abs(length / perMm - wanted) < Math.abs(best.length / perMm - wanted))
        best = { start, length, row };
    }
  }
  return { start: best.start / perMm, length: best.length / perMm, row: best.row / perMm };
}
