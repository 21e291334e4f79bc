/** Results as a builder reads them on paper: the same values as in the review, in words. */
import type { Dimension } from "../quantity/dimensions.ts";
import type { Computed } from "../review/compute.ts";
import { resultNamed } from "../review/results.ts";
import type { Words } from "../review/words.ts";

const DIMENSION_OF: Readonly<Record<string, Dimension>> = {
  kg: "mass",
  m: "length",
  s: "time",
  rad: "angle",
  N: "force",
  "N m": "torque",
  "m/s": "speed",
  degC: "temperature",
  V: "voltage",
  A: "current",
  ohm: "resistance",
};

/** What stands for a figure that a door does not have. */
export const NONE = "does not exist for this door";

/** A value in the contract's unit, in words. */
export function figureText(value: number | null, unit: string, w: Words): string {
  if (value === null) return NONE;
  const dimension = DIMENSION_OF[unit];
  if (dimension !== undefined) return w.of(value, dimension, 3);
  if (unit === "J") return w.energy(value);
  if (unit === "W") return w.power(value);
  return unit === "1"
    ? w.number(value)
    : `${w.number(value)} ${unit.replaceAll("^2", "²").replaceAll("^3", "³")}`;
}

/** A result by its name: what it is and its value in words. Throws a RangeError for a name there is not. */
export function resultRow(
  computed: Computed,
  name: string,
  w: Words,
): readonly [title: string, text: string] {
  const result = resultNamed(name);
  if (result === undefined)
    throw new RangeError(`Name of a result must be one of the review's; received "${name}"`);
  const title = result.title[0].toUpperCase() + result.title.slice(1);
  return [title, figureText(result.value(computed), result.unit, w)];
}
