/** Results as text in a builder's units. */
import type { Dimension } from "../quantity/dimensions.ts";
import type { Words } from "../review/words.ts";

const DIMENSION_OF_UNIT: Readonly<Record<string, Dimension>> = {
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

/** A result's value as a person reads it; "–" where it does not exist for the door. */
export function figure(value: number | null, unit: string, words: Words): string {
  if (value === null) return "–";
  const dimension = DIMENSION_OF_UNIT[unit];
  if (dimension !== undefined) return words.of(value, dimension, 4);
  if (unit === "J") return words.energy(value);
  if (unit === "W") return words.power(value);
  return unit === "1" ? words.number(value) : `${words.number(value)} ${unit}`;
}
