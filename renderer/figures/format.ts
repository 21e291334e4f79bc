/** Figures for the eye: a result's SI value in the person's units, to the digits that mean something. */
import type { Dimension } from "../../core/quantity/dimensions.ts";
import { formatQuantity } from "../../core/quantity/format.ts";
import type { UnitSystem } from "../state/view.ts";

/** Results' units that are dimensions of the door file. */
const DIMENSION_OF: Readonly<Record<string, Dimension>> = {
  kg: "mass",
  s: "time",
  "N m": "torque",
  rad: "angle",
  N: "force",
  "m/s": "speed",
  ohm: "resistance",
  A: "current",
  V: "voltage",
  degC: "temperature",
  m: "length",
};

const POUND = 0.45359237;
const INCH = 0.0254;
const POUND_FORCE_INCH = 4.4482216152605 * INCH;

interface Written {
  readonly unit: string;
  /** SI units in one of it. */
  readonly si: number;
}

/** Units only results have. */
const OTHERS: Readonly<Record<string, Readonly<Record<UnitSystem, Written>>>> = {
  "kg m^2": both({ unit: "kg m²", si: 1 }, { unit: "lb in²", si: POUND * INCH ** 2 }),
  "kg m": both({ unit: "kg m", si: 1 }, { unit: "lb in", si: POUND * INCH }),
  "N m/rad": both({ unit: "N m/rad", si: 1 }, { unit: "lbf in/rad", si: POUND_FORCE_INCH }),
  J: both({ unit: "mJ", si: 1e-3 }),
  W: both({ unit: "W", si: 1 }),
  "kG^2 mm^2": both({ unit: "kG² mm²", si: 1 }),
  "1": both({ unit: "", si: 1 }),
};

function both(metric: Written, inch: Written = metric): Record<UnitSystem, Written> {
  return { metric, inch };
}

const DIGITS = 3;
/** Of the person's own numbers. */
const KEY_DIGITS = 4;

/** "6.1 N", "3.4°"; a dash where the figure does not exist. */
export function figureText(value: number | null, unit: string, system: UnitSystem, digits = DIGITS): string {
  if (value === null) return "—";
  const dimension = DIMENSION_OF[unit];
  if (dimension !== undefined) return formatQuantity(value, dimension, system, digits);
  const written = OTHERS[unit]?.[system] ?? { unit, si: 1 };
  const number = Number((value / written.si).toPrecision(digits));
  return `${number} ${written.unit}`.trim();
}

/** How much a figure changed, with its sign; temperatures as differences. */
export function changeText(change: number, unit: string, system: UnitSystem): string {
  const text =
    unit === "degC"
      ? formatQuantity(Math.abs(change), "temperatureDifference", system, DIGITS)
      : figureText(Math.abs(change), unit, system);
  if (Math.abs(change) === 0) return "no change";
  return `${change > 0 ? "+" : "−"}${text}`;
}

/** A number of the door itself, by what kind of quantity its key is. */
export function keyText(
  value: number,
  dimension: Dimension | null,
  system: UnitSystem,
  digits = KEY_DIGITS,
): string {
  if (dimension === null) return String(Number(value.toPrecision(digits)));
  return formatQuantity(value, dimension, system, digits);
}
