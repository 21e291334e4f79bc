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
  /** No higher than 0 without a timer, the ribbon as well. */
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

export interface RowWishes {
  readonly timer: boolean;
  readonly study: boolean;
}

/** Rows for a drawing `height` px high with text of `rem` px; where the height does not do, the rows run over. */
export function stripRows(height: number, rem: number, { timer, study }: RowWishes): Rows {
  const bars = timer ? HOLD + UNDER_BAR + RIBBON + GAP : 0;
  const least = MARKS + TRACE + bars + AXIS + GAP + (study ? PROBABILITY + GAP : 0);
  const spare = Math.max(0, height / rem - least);
  const holdGrows = timer ? Math.min(0.5, 0.15 * spare) : 0;
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
    hold: timer ? next(HOLD + holdGrows, UNDER_BAR) : next(0, 0),
    ribbon: timer ? next(RIBBON, GAP) : next(0, 0),
    axis: next(AXIS, 0),
  };
}

/** The least height that holds all rows, px. */
export function leastHeight(rem: number, wishes: RowWishes): number {
  const rows = stripRows(0, rem, wishes);
  return rows.axis.top + rows.axis.height;
}
