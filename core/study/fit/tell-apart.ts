/** Which values the data tell, and which they cannot tell from each other. */
import type { FlapBody } from "../../parts/flap.ts";
import type { Covariance } from "./errors.ts";
import {
  FIT_KEYS,
  type FitKey,
  isFitKey,
  type ParameterName,
  typicalSize,
  type Values,
} from "./parameters.ts";

/** A standard error above this part of the value, or of its typical size where that is more, tells nothing (assumption). */
const USEFUL = 0.5;
/** A correlation from this on means that two values are one to the data (assumption). */
const ALIKE = 0.7;
/** Where none is that alike, the closest counts from this on (assumption). */
const SOMEWHAT = 0.3;
/** Above this the directions of the parameters are one to rounding. */
const WORST_CONDITION = 1e5;
/** A part of the weakest direction that counts. */
const SHARE = 0.2;

/** A parameter that the data do not tell, and those it is mixed up with. */
export interface Untold {
  readonly key: FitKey;
  readonly from: readonly ParameterName[];
}

/** The parameter to hold next, or `null` where every value is told. */
export function untold(
  free: readonly ParameterName[],
  values: Values,
  { errors, correlations, condition, weakest }: Covariance,
  body: FlapBody,
): Untold | null {
  const size = free.length;
  if (!(condition < WORST_CONDITION)) {
    const group = free.filter((_, i) => Math.abs(weakest[i]) > SHARE);
    const key = lastKey(group);
    if (key !== null) return { key, from: partners(key, group) };
  }
  const doubt = (i: number) => errors[i] / Math.max(Math.abs(values[free[i]]), typicalSize(free[i], body));
  const doubtful = free
    .map((name, i) => ({ name, i, doubt: doubt(i) }))
    .filter(({ name, doubt: d }) => isFitKey(name) && !(d <= USEFUL))
    .sort((a, b) => b.doubt - a.doubt);
  if (doubtful.length === 0) return null;
  const { name, i } = doubtful[0];
  const link = (j: number) => (j === i ? 0 : Math.abs(correlations[i * size + j]));
  const closest = Math.max(...free.map((other, j) => (isFitKey(other) ? link(j) : 0)));
  const alike = free.filter((_, j) => link(j) >= Math.min(ALIKE, Math.max(closest, SOMEWHAT)));
  const keys = alike.filter(isFitKey);
  const key = lastKey([name, ...keys]) as FitKey;
  return { key, from: partners(key, [name, ...alike]) };
}

/** Those of a group that a person can do something about: other keys of the door, and the zero for a frame out of plumb. */
function partners(key: FitKey, group: readonly ParameterName[]): ParameterName[] {
  return group.filter(
    (name) => name !== key && (isFitKey(name) || (name === "zero" && key === "opening.outOfPlumb")),
  );
}

/** Of several, the one that a fit does without first. */
function lastKey(names: readonly ParameterName[]): FitKey | null {
  const places = names.filter(isFitKey).map((name) => FIT_KEYS.indexOf(name));
  return places.length === 0 ? null : FIT_KEYS[Math.max(...places)];
}

export const NAMES: Readonly<Record<ParameterName, string>> = {
  "hinge.frictionTorque": "the hinge's dry friction",
  "hinge.viscousDamping": "the hinge's viscous damping",
  "air.swingFactor": "the air's swing factor",
  "seal.frictionTorque": "the seal's friction",
  "opening.outOfPlumb": "a frame out of plumb",
  release: "the let-go angle",
  start: "the moment of let-go",
  zero: "the zero of the readings",
  pace: "the pace of the clock",
};

/** What to measure to tell a value from another; the first pair that fits counts. */
const ADVICE: readonly (readonly [ParameterName, ParameterName, string])[] = [
  [
    "air.swingFactor",
    "hinge.viscousDamping",
    "let go from a larger angle to tell air from viscous damping: at twice the angle air takes four times as much, viscous damping twice",
  ],
  [
    "seal.frictionTorque",
    "hinge.frictionTorque",
    "measure a second swing with the seal taken off: it tells the hinge alone, and the difference is the seal",
  ],
  [
    "opening.outOfPlumb",
    "zero",
    "set the zero of the readings with the flap held in the plane of its frame, or put a level to the frame",
  ],
  [
    "air.swingFactor",
    "hinge.frictionTorque",
    "let go from a larger angle and follow the swing until the flap stands still: air shows in the first swings, dry friction in the last",
  ],
  [
    "hinge.viscousDamping",
    "hinge.frictionTorque",
    "follow the swing until the flap stands still: dry friction ends it, viscous damping never does",
  ],
];

/** What to measure instead. */
export function adviceFor({ key, from }: Untold): string {
  const pair = ADVICE.find(([a, b]) => (a === key && from.includes(b)) || (b === key && from.includes(a)));
  if (pair !== undefined) return pair[2];
  return from.length > 0
    ? "measure a longer swing from a larger angle, with more readings per swing"
    : SINGLE[key];
}

const SINGLE: Readonly<Record<FitKey, string>> = {
  "hinge.frictionTorque": "follow the swing until the flap stands still",
  "hinge.viscousDamping": "measure a longer swing with steadier readings",
  "air.swingFactor": "let go from a larger angle",
  "seal.frictionTorque": "follow the last swings, in which the flap stays near the seal, with more readings",
  "opening.outOfPlumb": "put a level to the frame",
};
