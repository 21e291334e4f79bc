/** The fit's sentences in the person's units: core writes their torques and dampings metric; here they are read and written anew. */
import type { Dimension } from "../../core/quantity/dimensions.ts";
import { formatQuantity } from "../../core/quantity/format.ts";
import { parseQuantity } from "../../core/quantity/quantity.ts";
import type { UnitSystem } from "../state/view.ts";

/** The units of `formatQuantity` that differ, the longer before those they begin with; times and angles are the same in both systems. */
const UNITS: Readonly<Record<string, Dimension>> = {
  "mN m s/rad": "angularDamping",
  "N m s/rad": "angularDamping",
  "mN m": "torque",
  "N m": "torque",
};

const QUANTITY = new RegExp(
  `(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?) (${Object.keys(UNITS).join("|")})(?![\\w/])`,
  "g",
);

/** Digits of a figure in a sentence, at least so many as it had. */
const LEAST = 2;

export function inUnits(sentence: string, units: UnitSystem): string {
  if (units === "metric") return sentence;
  return sentence.replace(QUANTITY, (whole, number: string, unit: string) => {
    const dimension = UNITS[unit];
    const read = parseQuantity(`${number} ${unit}`, dimension);
    return read.ok ? formatQuantity(read.value, dimension, units, digitsOf(number)) : whole;
  });
}

function digitsOf(number: string): number {
  const digits = number.replace(/e.*$/, "").replace(/[^\d]/g, "").replace(/^0+/, "");
  return Math.max(LEAST, digits.length);
}
