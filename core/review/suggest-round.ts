/** Figures a builder can make or buy, rounded to the safe side. */
import { fieldAt, isNumeric } from "../door/schema.ts";
import { formatQuantity, type UnitSystem } from "../quantity/format.ts";
import { parseQuantity } from "../quantity/quantity.ts";
import type { DoorEdit } from "./finding.ts";
import { entryText, INCH_64 } from "./words.ts";

export type Direction = "up" | "down" | "nearest";

/** Finest steps that are set out, SI, by unit system: rule and drill, stopwatch, protractor (common practice, no source). */
const STEPS: Readonly<Record<string, Readonly<Record<UnitSystem, number>>>> = {
  length: { metric: 1e-4, inch: INCH_64 },
  time: { metric: 0.5, inch: 0.5 },
  angle: { metric: Math.PI / 1800, inch: Math.PI / 1800 },
};

/** Openings and flaps are cut to half a centimetre or a quarter inch, m. */
export const CUT: Readonly<Record<UnitSystem, number>> = { metric: 0.005, inch: 0.00635 };
/** A detector's reach is set to a decimetre or a quarter foot, m. */
export const REACH: Readonly<Record<UnitSystem, number>> = { metric: 0.1, inch: 0.0762 };

/** An entry for a key at a value rounded to `step` (SI), or to the dimension's own, or to two digits; not for temperatures. */
export function entry(
  path: string,
  value: number,
  direction: Direction,
  system: UnitSystem,
  step?: number,
): DoorEdit {
  const field = fieldAt(path);
  const dimension = isNumeric(field) && field.kind === "quantity" ? field.dimension : null;
  const size = step ?? (dimension === null ? undefined : STEPS[dimension]?.[system]);
  const rounded =
    size === undefined ? twoDigits(value, direction, dimension, system) : stepped(value, size, direction);
  return { path, text: entryText(path, rounded, system) };
}

/** Slack for a value that is on a step already. */
const ON_STEP = 1e-9;

function stepped(value: number, size: number, direction: Direction): number {
  const count = value / size;
  if (direction === "nearest") return Math.round(count) * size;
  return (direction === "up" ? Math.ceil(count - ON_STEP) : Math.floor(count + ON_STEP)) * size;
}

type Measure = Parameters<typeof parseQuantity>[1];

/** To two digits in the unit it is written in. */
function twoDigits(
  value: number,
  direction: Direction,
  dimension: Measure | null,
  system: UnitSystem,
): number {
  const near = (x: number) => {
    if (dimension === null) return Number(x.toPrecision(2));
    const read = parseQuantity(formatQuantity(x, dimension, system, 2), dimension);
    return read.ok ? read.value : x;
  };
  const first = near(value);
  if (direction === "nearest" || value === 0) return first;
  const right = (x: number) => (direction === "up" ? x >= value * (1 - ON_STEP) : x <= value * (1 + ON_STEP));
  // One unit of the second digit is between 1 % and 10 % of the value.
  for (let part = 0.01; part <= 0.1; part += 0.01) {
    const next = near(value * (direction === "up" ? 1 + part : 1 - part));
    if (right(first)) return first;
    if (right(next)) return next;
  }
  return first;
}
