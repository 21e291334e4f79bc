/** Sheets of paper, mm. */

export type PaperName = "a4" | "letter";

export interface Paper {
  readonly name: PaperName;
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** ISO 216 and ANSI/ASME Y14.1 size A. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  a4: { name: "a4", title: "A4", widthMm: 210, heightMm: 297 },
  letter: { name: "letter", title: "Letter", widthMm: 215.9, heightMm: 279.4 },
};

/** What home printers leave white at the edges, and a little (common practice, no source), mm. */
export const MARGIN = 10;

/** PDF's unit: 1/72 in. */
export const POINTS_PER_MM = 72 / 25.4;
