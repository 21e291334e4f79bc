/** The inputs of a door that a study spreads: the defaults, and what the file says in their place or on top. */
import type { Door, Tolerance } from "../door/door.ts";
import { type DoorFault, doorFault } from "../door/fault.ts";
import type { NumericField } from "../door/field.ts";
import { getValue } from "../door/path.ts";
import { fieldAt } from "../door/schema.ts";
import { DEFAULT_TOLERANCES, MAKERS_LIMIT, SWING_FACTOR } from "./default-tolerances.ts";
import { type Limits, type Spread, spreadOf } from "./spread.ts";

/**
 * Where a drawn value goes: "door", the number of that key; "let-go share", a factor on the let-go angle; "let-go offset",
 * rad added to its size; "timer", a factor on the nominal hold.
 */
export type InputTarget = "door" | "let-go share" | "let-go offset" | "timer";

export interface StudyInput {
  /** The door file's key path. */
  readonly key: string;
  readonly target: InputTarget;
  readonly spread: Spread;
  readonly source: "assumption" | "file" | "maker";
  readonly reason: string;
}

export interface StudyInputs {
  readonly inputs: readonly StudyInput[];
  /** Keys with a tolerance in the file that the study cannot use, and why. */
  readonly unused: readonly { readonly key: string; readonly why: string }[];
  readonly faults: readonly DoorFault[];
}

interface Wanted {
  readonly key: string;
  readonly tolerance: Tolerance;
  readonly source: StudyInput["source"];
  readonly reason: string;
}

const FACTOR_LIMITS: Limits = { low: 0, high: Number.POSITIVE_INFINITY };
const ANY: Limits = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
const FROM_FILE = "as the door file says";

/** All inputs that spread, defaults first in a fixed order; each sample draws them in this order. */
export function studyInputs(door: Door): StudyInputs {
  const given = door.study.tolerances;
  const inputs: StudyInput[] = [];
  const unused: { key: string; why: string }[] = [];
  const faults: DoorFault[] = [];
  for (const wanted of wantedInputs(door)) {
    const why = whyUnused(door, wanted.key);
    if (why !== null) {
      if (given.has(wanted.key)) unused.push({ key: wanted.key, why });
      continue;
    }
    const { target, nominal, limits, tolerance } = placed(door, wanted);
    const spread = spreadOf(tolerance, nominal, limits);
    if (spread === "unphysical") faults.push(unphysical(wanted.key));
    else if (spread !== null) {
      inputs.push({ key: wanted.key, target, spread, source: wanted.source, reason: wanted.reason });
    }
  }
  return { inputs, unused, faults };
}

function unphysical(key: string): DoorFault {
  return doorFault(
    `study.tolerances.${key}`,
    "offsets that leave no physical value",
    "a tolerance some of whose values are physical",
  );
}

/** Defaults, each replaced by the file's where it has one; then what else the file names. */
function wantedInputs(door: Door): Wanted[] {
  const given = door.study.tolerances;
  const wanted = defaults(door).map((one) => {
    const tolerance = given.get(one.key);
    return tolerance === undefined
      ? one
      : { key: one.key, tolerance, source: "file" as const, reason: FROM_FILE };
  });
  const known = new Set(wanted.map(({ key }) => key));
  for (const [key, tolerance] of given) {
    if (!known.has(key)) wanted.push({ key, tolerance, source: "file", reason: FROM_FILE });
  }
  return wanted;
}

function defaults(door: Door): Wanted[] {
  const listed = DEFAULT_TOLERANCES.flatMap(({ key, tolerance, reason }) =>
    entriesOf(door, key).map((path) => ({ key: path, tolerance, source: "assumption" as const, reason })),
  );
  return [...listed, swingFactor(door), ...makersLimits(door)];
}

function entriesOf(door: Door, key: string): string[] {
  const [list, rest] = key.split(".*.");
  if (rest === undefined) return [key];
  const count = list === "animals" ? door.animals.length : door.flap.extraMasses.length;
  return Array.from({ length: count }, (_, i) => `${list}.${i}.${rest}`);
}

/** κ from 1 to 3 whatever the door's own value; further where that lies outside. */
function swingFactor({ air }: Door): Wanted {
  const { key, low, high, reason } = SWING_FACTOR;
  const nominal = air.swingFactor;
  const tolerance: Tolerance = {
    shape: "uniform",
    low: Math.min(low, nominal) - nominal,
    high: Math.max(high, nominal) - nominal,
    relative: false,
  };
  return { key, tolerance, source: "assumption", reason };
}

function makersLimits({ timer }: Door): Wanted[] {
  if (timer === null) return [];
  const within = (key: string, limit: number): Wanted => ({
    key,
    tolerance: { shape: "uniform", low: -limit, high: limit, relative: true },
    source: "maker",
    reason: MAKERS_LIMIT,
  });
  return [
    within("timer.resistor", timer.resistorTolerance),
    within("timer.capacitor", timer.capacitorTolerance),
  ];
}

/** Why a key cannot spread in this door's study; `null` where it can. */
function whyUnused(door: Door, key: string): string | null {
  if (key === "timer.resistor" || key === "timer.capacitor") return partUnused(door, key);
  if (key.startsWith("timer.")) return timerUnused(door, key);
  if (key === "release.angle") return null;
  return getValue(door, key) === null ? "the door has no value there" : null;
}

function partUnused({ timer, study }: Door, key: "timer.resistor" | "timer.capacitor"): string | null {
  if (timer === null) return "the door has no timer";
  const tolerance = study.tolerances.get(key);
  const nominal = key === "timer.resistor" ? timer.resistor : timer.capacitor;
  const needsNominal = tolerance !== undefined && !tolerance.relative;
  return needsNominal && nominal === null ? "an absolute tolerance needs the part's value" : null;
}

function timerUnused({ timer }: Door, key: string): string | null {
  if (timer === null) return "the door has no timer";
  if (key !== "timer.holdTime") return "the maker's tolerance is itself a limit and does not spread";
  return timer.resistor === null ? null : "the hold follows from the resistor and the capacitor";
}

interface Placed {
  readonly target: InputTarget;
  readonly nominal: number;
  readonly limits: Limits;
  readonly tolerance: Tolerance;
}

/** Where a tolerance acts, and about what. */
function placed(door: Door, { key, tolerance }: Wanted): Placed {
  if (key.startsWith("timer.")) {
    const nominal = getValue(door, key) ?? 1;
    return { target: "timer", nominal: 1, limits: FACTOR_LIMITS, tolerance: asShares(tolerance, nominal) };
  }
  if (key === "release.angle") {
    return tolerance.relative
      ? { target: "let-go share", nominal: 1, limits: FACTOR_LIMITS, tolerance }
      : { target: "let-go offset", nominal: 0, limits: ANY, tolerance };
  }
  const { range } = fieldAt(key) as NumericField;
  const high = range.maxOpen === true ? range.max * (1 - Number.EPSILON) : range.max;
  return {
    target: "door",
    nominal: getValue(door, key) as number,
    limits: { low: range.min, high },
    tolerance,
  };
}

/** An absolute tolerance as shares of the nominal value. */
function asShares(tolerance: Tolerance, nominal: number): Tolerance {
  if (tolerance.relative) return tolerance;
  if ("twoSigma" in tolerance) {
    return { ...tolerance, twoSigma: tolerance.twoSigma / nominal, relative: true };
  }
  return { ...tolerance, low: tolerance.low / nominal, high: tolerance.high / nominal, relative: true };
}
