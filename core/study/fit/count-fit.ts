/**
 * The fit of a count: "let go at 60°, 14 passes, still after 11.2 s". Passes and time come in whole swings, so each tells where
 * the shrinking amplitude reaches the bolt's play or nothing, within half a swing; that place moves evenly with the values.
 */

import {
  CountProblem,
  type Observation,
  type Play,
  type Predicted,
  playOf,
  predicted,
} from "./count-problem.ts";
import { type Covariance, covariance } from "./errors.ts";
import type { Count, Fit, FitOptions } from "./fit-types.ts";
import { type Fitted, fitted } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import { amount, correlationPairs, fittedValues, refusal, valueSentence } from "./outcome.ts";
import { FIT_KEYS, type FitKey, type Values } from "./parameters.ts";
import { lastFreeTurn } from "./well.ts";

/** Standard error of a stopwatch in a hand, s (assumption). */
export const STOPWATCH = 0.2;
/** Standard deviation of a uniform error of ± half: of a whole number, in its units. */
const HALF_UNIT = 1 / Math.sqrt(12);
/** A count that the file's other values miss by more than this many standard errors contradicts them (assumption). */
const CONTRADICTION = 4;

/**
 * Fits the values that a count can tell: dry friction, and viscous damping where both was counted or timed, until the flap stays
 * within the bolt's play and until it is still.
 */
export function countFit(model: SwingModel, before: Values, count: Count, options: FitOptions): Fit {
  const problem = countProblem(model, count);
  if (problem !== null) return { ok: false, says: problem };
  const base = { ...before, release: count.releaseAngle };
  const seen = observations(model, count);
  const play = playOf(model);
  const keys = (options.keys ?? FIT_KEYS).slice(0, placesTold(model, count));
  const task = new CountProblem(model, seen, play, keys, base);
  const start = task.parameters.vector({ ...base, [keys[0]]: 0.5 * task.scale[0] });
  const fit = fitted(task, start, { spread: Number.POSITIVE_INFINITY });
  const spread = covariance(fit, keys.length, 1);
  const values = task.parameters.values(fit.p);
  const worst = Math.max(...fit.residuals.map(Math.abs));
  if (worst > CONTRADICTION) return { ok: false, says: contradiction(model, values, keys, count, play) };
  return report({ model, before, count, keys, values, fit, spread });
}

/** At how many amplitudes the swing was looked at: the bolt's play, and nothing. */
function placesTold(
  { door: { latch } }: SwingModel,
  { passes, settleTime, passesUntilStill, restTime }: Count,
): number {
  const atPlay = (latch !== null && passes !== undefined) || settleTime !== undefined;
  const atRest = (latch === null && passes !== undefined) || (passesUntilStill ?? restTime) !== undefined;
  return atPlay && atRest ? 2 : 1;
}

function observations(model: SwingModel, count: Count): Observation[] {
  const { timeError = STOPWATCH } = count;
  const quarter = (model.body.smallAnglePeriod / 2) * HALF_UNIT;
  const error = Math.hypot(timeError, quarter);
  const seen: Observation[] = [];
  // Passes are the turns before the last outside, or all: the amplitude gets there between the count and one more.
  for (const name of ["passes", "passesUntilStill"] as const) {
    const passes = count[name];
    if (passes !== undefined) seen.push({ name, value: passes + 0.5, error: HALF_UNIT });
  }
  if (count.restTime !== undefined) seen.push({ name: "restTime", value: count.restTime, error });
  if (count.settleTime !== undefined) seen.push({ name: "settleTime", value: count.settleTime, error });
  return seen;
}

/** What is wrong with a count, or `null`. */
function countProblem(model: SwingModel, count: Count): string | null {
  const { releaseAngle, passes, passesUntilStill, restTime, settleTime } = count;
  const size = Math.abs(releaseAngle);
  if (!(size > 0 && size <= model.door.hinge.stopAngle)) {
    return "The let-go angle must be above 0 and within the stops.";
  }
  for (const counted of [passes, passesUntilStill]) {
    if (counted !== undefined && !(Number.isInteger(counted) && counted >= 1)) {
      return "Passes must be a whole number from 1; count every pass through the centre, both ways.";
    }
  }
  if ((passes ?? 0) > (passesUntilStill ?? Number.POSITIVE_INFINITY)) {
    return "The flap must stay within the bolt's play before it is still: no more passes until then than until still.";
  }
  for (const time of [restTime, settleTime]) {
    if (time !== undefined && !(time > 0 && Number.isFinite(time))) return "Times must be above 0 s.";
  }
  if (settleTime !== undefined && restTime !== undefined && settleTime > restTime) {
    return "The flap must settle before it rests.";
  }
  if (settleTime !== undefined && model.door.latch === null) {
    return "A settle time needs a latch: without one there is no play for the flap to settle in.";
  }
  if ((passes ?? passesUntilStill ?? restTime ?? settleTime) === undefined) {
    return "A let-go angle alone tells nothing: count the passes through the centre, or take the time until the flap is still.";
  }
  return null;
}

function contradiction(
  model: SwingModel,
  values: Values,
  keys: readonly FitKey[],
  count: Count,
  play: Play,
): string {
  const said = predicted(model, values, play);
  const best = keys.map((key) => `${key} ${amount(key, values[key])}`).join(", ");
  const named = NAMED.filter(([name]) => count[name] !== undefined);
  const swings = named.map(([name, words]) =>
    words(name.startsWith("passes") ? Math.floor(said[name]) : said[name]),
  );
  const counted = named.map(([name, words]) => words(count[name] as number));
  return `No value fits: with ${best} and the file's other values it would be ${swings.join(" and ")}; counted: ${counted.join(" and ")}. Check the count, the flap's size and masses, and the file's damping and air.`;
}

/** What may be counted, in words. */
const NAMED: readonly [keyof Predicted, (value: number) => string][] = [
  ["passes", (value) => `${value} passes until it stays within the bolt's play`],
  ["settleTime", (value) => `${Number(value.toFixed(1))} s until then`],
  ["passesUntilStill", (value) => `${value} passes until still`],
  ["restTime", (value) => `rest after ${Number(value.toFixed(1))} s`],
];

interface Found {
  readonly model: SwingModel;
  readonly before: Values;
  readonly count: Count;
  readonly keys: readonly FitKey[];
  readonly values: Values;
  readonly fit: Fitted;
  readonly spread: Covariance;
}

function report({ model, before, count, keys, values, fit, spread }: Found): Fit {
  const refused = FIT_KEYS.filter((key) => !keys.includes(key)).map((key) =>
    refusal({ key, from: [keys[0]] }, before),
  );
  const fittedKeys = fittedValues(keys, values, before, spread, refused, true);
  return {
    ok: true,
    kind: "count",
    values: fittedKeys,
    refused,
    measurement: [],
    correlations: correlationPairs(keys, spread),
    residual: 1,
    noise: null,
    used: fit.residuals.length,
    given: fit.residuals.length,
    freedom: spread.freedom,
    compared: null,
    says: [
      ...fittedKeys.map(valueSentence),
      `A count tells ${keys.length === 1 ? "one value" : "two values"}; the others are taken from the file. A trace or the turning points tell more.`,
      ...restCheck(model, values, count),
      ...wellCheck(model, values),
    ],
  };
}

/** Where the flap stood still is within what friction can hold, or more friction is needed. */
function restCheck(model: SwingModel, values: Values, { restAngle }: Count): string[] {
  if (restAngle === undefined) return [];
  const { body, door } = model;
  const weightMoment = body.firstMoment * 9.80665;
  const needed = weightMoment * Math.abs(Math.sin(restAngle - values["opening.outOfPlumb"]));
  const friction = values["hinge.frictionTorque"] + values["seal.frictionTorque"];
  if (needed <= 1.2 * door.hinge.staticRatio * friction || door.magnets !== null) return [];
  return [
    `Still at ${((restAngle * 180) / Math.PI).toFixed(1)}° it takes ${amount("hinge.frictionTorque", needed)} of friction at rest, more than the swing shows: the frame is out of plumb, or the friction at rest is higher (hinge.staticRatio).`,
  ];
}

/** Among magnets the last passes are their trembling, which nobody counts and a gap a little off changes. */
function wellCheck(model: SwingModel, values: Values): string[] {
  if (!Number.isFinite(lastFreeTurn(model, values))) return [];
  return [
    "The magnets catch this flap before it rests, so that the end of the count is theirs: take the value as rough, or count without the magnets.",
  ];
}
