/** Lengths as a workshop reads them: millimetres, or inches in fractions with millimetres beside them where there is room. */
import { formatInches, type UnitSystem } from "../quantity/format.ts";

const INCH = 25.4;
/** A fraction this near is the length, mm: no rule shows less. */
const SAME = 0.05;

export interface Sizes {
  readonly system: UnitSystem;
  /** On a dimension line: "370", `14 1/2"`. */
  readonly short: (mm: number) => string;
  /** In a sentence or a list: "370 mm", "14 1/2 in (368.3 mm)". */
  readonly long: (mm: number) => string;
  /** What a dimension line without a unit means. */
  readonly note: string;
}

export function sizes(system: UnitSystem): Sizes {
  if (system === "metric") {
    return { system, short: tenths, long: (mm) => `${tenths(mm)} mm`, note: "all lengths in mm" };
  }
  return {
    system,
    short: (mm) => inches(mm).replace(/ in$/, '"'),
    long: (mm) => `${inches(mm)} (${tenths(mm)} mm)`,
    note: "all lengths in inches, fractions to the nearest 1/64",
  };
}

/** Millimetres: tenths from 10 mm on, hundredths below. */
function tenths(mm: number): string {
  return String(Number(mm.toFixed(Math.abs(mm) < 10 ? 2 : 1)) || 0);
}

/** Fractions to 1/64; below an inch thousandths where no fraction is near enough for a fit. */
function inches(mm: number): string {
  const nearest = (Math.round((mm / INCH) * 64) * INCH) / 64;
  if (Math.abs(mm) >= INCH || Math.abs(nearest - mm) <= SAME) return formatInches(mm / 1000);
  return `${Number((mm / INCH).toFixed(3))} in`;
}
