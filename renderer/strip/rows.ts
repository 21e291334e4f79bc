/** Where the strip's rows lie, top to bottom, px. Pure: from the height there is, the text's size and what there is to show. */

export interface Row {
  readonly top: number;
  readonly height: number;
}

export interface Rows {
  readonly marks: Row;
  /** `null` without a study. */
  readonly probability: Row | null;
  readonly trace: Row;
  readonly hold: Row;
  readonly ribbon: Row;
  readonly axis: Row;
}

/** Heights in rem that rows have at least, and how they share what is left over. */
const MARKS = 1.375;
const PROBABILITY = 1.75;
const TRACE = 2.125;
const HOLD = 1.5;
const RIBBON = 0.75;
const AXIS = 1.125;
const GAP = 0.25;
/** Between the bar and the band below it, where the timer's spread is drawn. */
const UNDER_BAR = 0.4375;

/** Rows for a drawing `height` px high with text of `rem` px; where the height does not do, the rows run over. */
export function stripRows(height: number, rem: number, study: boolean): Rows {
  const least = MARKS + TRACE + HOLD + RIBBON + AXIS + 2 * GAP + UNDER_BAR + (study ? PROBABILITY + GAP : 0);
  const spare = Math.max(0, height / rem - least);
  const holdGrows = Math.min(0.5, 0.15 * spare);
  const probability = PROBABILITY + (study ? Math.min(3, 0.35 * spare) : 0);
  const trace = TRACE + spare - holdGrows - (study ? probability - PROBABILITY : 0);
  let top = 0;
  const next = (rows: number, gap: number): Row => {
    const row = { top: top * rem, height: rows * rem };
    top += rows + gap;
    return row;
  };
  return {
    marks: next(MARKS, 0),
    probability: study ? next(probability, GAP) : null,
    trace: next(trace, GAP),
    hold: next(HOLD + holdGrows, UNDER_BAR),
    ribbon: next(RIBBON, GAP),
    axis: next(AXIS, 0),
  };
}

/** The least height that holds all rows, px. */
export function leastHeight(rem: number, study: boolean): number {
  const rows = stripRows(0, rem, study);
  return rows.axis.top + rows.axis.height;
}
