/** What a person wrote on the bench, as SI numbers: a plain number is in the unit a stopwatch or a protractor shows. */

import { STANDARD_GRAVITY } from "../../core/quantity/constants.ts";
import type { Dimension } from "../../core/quantity/dimensions.ts";
import { parseQuantity } from "../../core/quantity/quantity.ts";
import type { Count } from "../../core/study/fit/fit-types.ts";

export const TRIAL_FIELDS = [
  "letGo",
  "passes",
  "settle",
  "still",
  "rest",
  "push",
  "lowEnd",
  "pullIn",
  "room",
  "coil",
  "hold",
] as const;
export type TrialField = (typeof TRIAL_FIELDS)[number];
export type TrialTexts = Readonly<Record<TrialField, string>>;

export const NO_TEXTS: TrialTexts = {
  letGo: "",
  passes: "",
  settle: "",
  still: "",
  rest: "",
  push: "",
  lowEnd: "",
  pullIn: "",
  room: "",
  coil: "",
  hold: "",
};

/** How often the coil is switched on at the supply's low end. */
export const LOW_END_TRIES = 10;

export interface TrialReadings {
  /** rad, s, N, V, °C, and a plain number; without an entry: not measured, or not to be read. */
  readonly values: Readonly<Partial<Record<TrialField, number>>>;
  /** What is wrong with an entry, a sentence. */
  readonly faults: Readonly<Partial<Record<TrialField, string>>>;
}

/** What the readings are taken on. */
export interface Bench {
  /** Hinge to the flap's lower edge, m. */
  readonly reach: number;
  /** Passes are then counted until the flap stays within the bolt's play. */
  readonly latch: boolean;
}

type Read = number | string;

const READERS: Readonly<Record<TrialField, (text: string, bench: Bench) => Read>> = {
  letGo: (text) => positive(quantity(text, "angle", "deg")),
  passes: (text) => passes(text),
  settle: (text) => positive(quantity(text, "time", "s")),
  still: (text) => positive(quantity(text, "time", "s")),
  rest: (text, { reach }) => rest(text, reach),
  push: (text) => positive(force(text)),
  lowEnd: (text) => tries(text),
  pullIn: (text) => positive(quantity(text, "voltage", "V")),
  room: (text) => temperature(text),
  coil: (text) => temperature(text),
  hold: (text) => positive(quantity(text, "time", "s")),
};

export function readTrial(texts: TrialTexts, bench: Bench): TrialReadings {
  const values: Partial<Record<TrialField, number>> = {};
  const faults: Partial<Record<TrialField, string>> = {};
  for (const field of TRIAL_FIELDS) {
    const text = texts[field].trim();
    if (text === "") continue;
    const read = READERS[field](text, bench);
    if (typeof read === "number") values[field] = read;
    else faults[field] = `${read.charAt(0).toUpperCase()}${read.slice(1)}.`;
  }
  return { values, faults };
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)$/;

function quantity(text: string, dimension: Dimension, unit: string): Read {
  const read = parseQuantity(PLAIN.test(text) ? `${text} ${unit}` : text, dimension);
  return read.ok ? read.value : `${read.problem}; given "${text}", expected ${read.expected}`;
}

function positive(read: Read): Read {
  return typeof read === "string" || read > 0 ? read : "given nothing or less, expected more than 0";
}

function passes(text: string): Read {
  return /^\d{1,4}$/.test(text) && Number(text) > 0
    ? Number(text)
    : `given "${text}", expected a whole number from 1: every pass through the middle, both ways`;
}

function tries(text: string): Read {
  return /^\d{1,2}$/.test(text) && Number(text) <= LOW_END_TRIES
    ? Number(text)
    : `given "${text}", expected how many of ${LOW_END_TRIES} times, 0 to ${LOW_END_TRIES}`;
}

/** A plain number could be either scale's: the unit must stand there. */
function temperature(text: string): Read {
  const read = parseQuantity(text, "temperature");
  return read.ok
    ? read.value
    : `${read.problem}; given "${text}", expected what the thermometer shows, such as "48 °C" or "118 °F"`;
}

/** A kitchen scale shows a mass: the weight of that mass presses. */
function force(text: string): Read {
  const asForce = parseQuantity(text, "force");
  if (asForce.ok) return asForce.value;
  const asMass = parseQuantity(text, "mass");
  if (asMass.ok) return asMass.value * STANDARD_GRAVITY;
  return `${asForce.problem.replace(/ \(a force.*$/, "")}; given "${text}", expected what the scale shows, such as "620 g", "22 oz" or "6.1 N"`;
}

/** An angle, or how far the lower edge stands off the middle. */
function rest(text: string, reach: number): Read {
  const length = parseQuantity(text, "length");
  if (length.ok) {
    return Math.abs(length.value) < reach
      ? Math.asin(length.value / reach)
      : "that is more than the flap is high";
  }
  const angle = quantity(text, "angle", "deg");
  return typeof angle === "number"
    ? angle
    : `${length.problem}; given "${text}", expected a distance at the lower edge or an angle, such as "3 mm" or "1.5 deg"`;
}

/** What of the readings a fit takes; `null` where there is nothing for it. Passes count for it as the card has them counted. */
export function countOf({ values }: TrialReadings, letGo: number, { latch }: Bench): Count | null {
  const { passes: counted, still, settle, rest: restAngle } = values;
  const count: Count = {
    releaseAngle: values.letGo ?? letGo,
    ...(counted === undefined ? {} : { passes: counted }),
    ...(still === undefined ? {} : { restTime: still }),
    ...(settle === undefined || !latch ? {} : { settleTime: settle }),
    ...(restAngle === undefined ? {} : { restAngle }),
  };
  const tells = count.passes ?? count.restTime ?? count.settleTime;
  return tells === undefined ? null : count;
}
