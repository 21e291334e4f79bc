/** Figures as a person reads them, metric or inch: the one place where a review turns numbers into text. */
import { fieldAt, isNumeric } from "../door/schema.ts";
import type { Dimension } from "../quantity/dimensions.ts";
import { formatInches, formatQuantity, type UnitSystem } from "../quantity/format.ts";

/** Significant digits of a figure in a sentence: a builder measures no finer. */
const DIGITS = 3;
/** Digits at which two different figures must show their difference. */
const MOST_DIGITS = 9;

type Writer = (value: number) => string;

/** Writers of SI numbers; temperatures in °C. */
export interface Words {
  readonly system: UnitSystem;
  readonly of: (value: number, dimension: Dimension, digits?: number) => string;
  readonly length: Writer;
  readonly mass: Writer;
  readonly time: Writer;
  readonly angle: Writer;
  readonly speed: Writer;
  readonly torque: Writer;
  readonly damping: Writer;
  readonly force: Writer;
  readonly pressure: Writer;
  readonly temperature: Writer;
  readonly voltage: Writer;
  readonly current: Writer;
  readonly resistance: Writer;
  readonly capacitance: Writer;
  readonly ratio: Writer;
  /** J, the same in both systems. */
  readonly energy: Writer;
  /** W, the same in both systems. */
  readonly power: Writer;
  /** A plain number. */
  readonly number: Writer;
  /** Two figures that are compared, with as many digits as it takes to tell them apart. */
  readonly pair: (a: number, b: number, dimension: Dimension) => readonly [string, string];
}

/** Words in a unit system. */
export function words(system: UnitSystem): Words {
  const of = (value: number, dimension: Dimension, digits = DIGITS) => {
    const text = formatQuantity(value, dimension, system, digits);
    // Below a millionth of the smallest unit a figure is rounding and no person's business.
    return text.includes("e-") ? formatQuantity(0, dimension, system, digits) : text;
  };
  const writer = (dimension: Dimension) => (value: number) => of(value, dimension);
  return {
    system,
    of,
    length: writer("length"),
    mass: writer("mass"),
    time: writer("time"),
    angle: writer("angle"),
    speed: writer("speed"),
    torque: writer("torque"),
    damping: writer("angularDamping"),
    force: writer("force"),
    pressure: writer("pressure"),
    temperature: writer("temperature"),
    voltage: writer("voltage"),
    current: writer("current"),
    resistance: writer("resistance"),
    capacitance: writer("capacitance"),
    ratio: writer("ratio"),
    energy: (value) => thousandths(value, "J"),
    power: (value) => thousandths(value, "W"),
    number: (value) => plain(value, DIGITS),
    pair: (a, b, dimension) => apart(a, b, (value, digits) => of(value, dimension, digits)),
  };
}

/** A number at `digits` significant ones, without zeros at the end and without an exponent where none is needed. */
function plain(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  return String(rounded === 0 ? 0 : rounded);
}

function thousandths(value: number, unit: string): string {
  if (Math.abs(value) >= 0.1) return `${plain(value, DIGITS)} ${unit}`;
  if (Math.abs(value) < 5e-7) return `0 ${unit}`;
  return `${plain(value * 1e3, DIGITS)} m${unit}`;
}

function apart(
  a: number,
  b: number,
  write: (value: number, digits: number) => string,
): readonly [string, string] {
  let digits = DIGITS;
  while (a !== b && digits < MOST_DIGITS && write(a, digits) === write(b, digits)) digits++;
  return [write(a, digits), write(b, digits)];
}

/** Results' units that the door file has too. */
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

/** Digits of a result told by itself. */
const FIGURE_DIGITS = 4;

/** A result's value, SI, as text; units that only results have stay SI. "none" where it does not exist for the door. */
export function figureText(value: number | null, unit: string, w: Words): string {
  if (value === null) return "none";
  const dimension = DIMENSION_OF_UNIT[unit];
  if (dimension !== undefined) return w.of(value, dimension, FIGURE_DIGITS);
  if (unit === "J") return w.energy(value);
  if (unit === "W") return w.power(value);
  if (unit === "N m/rad") return `${w.torque(value)}/rad`;
  const spelled = unit.replace(/\^2/g, "²");
  return unit === "1" ? plain(value, FIGURE_DIGITS) : `${plain(value, FIGURE_DIGITS)} ${spelled}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[], last = "and"): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} ${last} ${items[items.length - 1]}`;
}

/** The side an angle points to: the flap's positive angles are outdoors. */
export function side(angle: number): string {
  return angle < 0 ? "indoors" : "outdoors";
}

/** Lengths up to this are cut by a rule with fractions, m. */
const LONGEST_FRACTION = 3;
/** Digits a file's entry keeps. */
const ENTRY_DIGITS = 6;

/** A number of the door (SI) as an entry of its file; lengths in inches as fractions where they are. */
export function entryText(path: string, value: number, system: UnitSystem): string {
  const field = fieldAt(path);
  if (!isNumeric(field)) throw new RangeError(`Path of an entry must be a number's; received "${path}"`);
  if (field.kind === "number") return plain(value, ENTRY_DIGITS);
  const inches = system === "inch" && field.dimension === "length" && Math.abs(value) < LONGEST_FRACTION;
  const fraction = inches ? formatInches(value) : null;
  const exact = fraction !== null && Math.abs(value / INCH_64 - Math.round(value / INCH_64)) < 1e-6;
  return exact && fraction !== null ? fraction : formatQuantity(value, field.dimension, system, ENTRY_DIGITS);
}

/** 1/64 in, m. */
export const INCH_64 = 0.0254 / 64;
