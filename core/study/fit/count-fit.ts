/**
 * The fit of a count: "let go at 60°, 14 passes, still after 11.2 s". Passes and time come in whole swings, so each tells where
 * the shrinking amplitude reaches the bolt's play or nothing, within half a swing; that place moves evenly with the values.
 */

import { latchMechanics } from "../../parts/latch.ts";
import { type Covariance, covariance } from "./errors.ts";
import type { Count, Fit, FitOptions } from "./fit-types.ts";
import { type Fitted, fitted, type Problem } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import { amount, correlationPairs, fittedValues, refusal, valueSentence } from "./outcome.ts";
import { FIT_KEYS, type FitKey, type Values } from "./parameters.ts";
import { ParameterVector } from "./vector.ts";
import { lastFreeTurn } from "./well.ts";

/** Standard error of a stopwatch in a hand, s (assumption). */
export const STOPWATCH = 0.2;
/** Standard deviation of a uniform error of ± half: of a whole number, in its units. */
const HALF_UNIT = 1 / Math.sqrt(12);
/** Swings that a count can go on for. */
const LONGEST = 400;
/** A count that the file's other values miss by more than this many standard errors contradicts them (assumption). */
const CONTRADICTION = 4;

/** One thing counted: what the model says there in the same terms, and the standard error of the count. */
interface Observation {
  readonly name: keyof Predicted;
  readonly value: number;
  readonly error: number;
}

/** What the model says, in the terms of a count. */
interface Predicted {
  /** Half swings until the amplitude would be nothing. */
  readonly passesUntilStill: number;
  /** When that is, s. */
  readonly restTime: number;
  /** Half swings until the amplitude is that of the bolt's play, or nothing where there is none to stay in. */
  readonly passes: number;
  /** When that is, s. */
  readonly settleTime: number;
}

/**
 * Place in a falling row of amplitudes at which they come to `goal`, counted from 0: on the straight line through the two
 * places about it, or through the last two where the flap rests before.
 */
function placeOf(amplitudes: readonly number[], goal: number): number {
  const below = amplitudes.findIndex((a) => a <= goal);
  if (below === 0 || amplitudes.length < 2) return 0;
  const after = below < 0 ? amplitudes.length - 1 : below;
  const [from, to] = [amplitudes[after - 1], amplitudes[after]];
  return after - 1 + (from - goal) / (from - to);
}

function timeOf(times: readonly number[], place: number): number {
  const before = Math.max(0, Math.min(Math.floor(place), times.length - 2));
  return times[before] + (place - before) * (times[before + 1] - times[before]);
}

/** The bolt's play about the slot's centre, rad; the flap settles on the side that leaves it last. */
interface Play {
  readonly centre: number;
  readonly half: number;
}

function predicted(model: SwingModel, values: Values, play: Play): Predicted {
  model.run(values, LONGEST * model.body.smallAnglePeriod);
  const { turnTimes, turnAngles } = model;
  const centre = values["opening.outOfPlumb"];
  const sign = Math.sign(values.release - centre);
  const amplitudes = turnAngles.map((angle, i) => sign * (i % 2 === 1 ? -1 : 1) * (angle - centre));
  if (turnTimes.length < 2) return { passesUntilStill: 0, restTime: 0, passes: 0, settleTime: 0 };
  const still = placeOf(amplitudes, 0);
  const settled = placeOf(amplitudes, Math.max(0, play.half - Math.abs(play.centre - centre)));
  return {
    passesUntilStill: still,
    restTime: timeOf(turnTimes, still),
    passes: settled,
    settleTime: timeOf(turnTimes, settled),
  };
}

class CountProblem implements Problem {
  readonly parameters: ParameterVector;
  private readonly model: SwingModel;
  private readonly seen: readonly Observation[];
  private readonly play: Play;

  constructor(
    model: SwingModel,
    seen: readonly Observation[],
    play: Play,
    free: readonly FitKey[],
    base: Values,
  ) {
    this.parameters = new ParameterVector(model, free, base, []);
    this.model = model;
    this.seen = seen;
    this.play = play;
  }

  get count(): number {
    return this.seen.length;
  }
  get size(): number {
    return this.parameters.size;
  }
  get lower(): Float64Array {
    return this.parameters.lower;
  }
  get upper(): Float64Array {
    return this.parameters.upper;
  }
  get scale(): Float64Array {
    return this.parameters.scale;
  }

  residuals(p: Float64Array, out: Float64Array): void {
    const said = predicted(this.model, this.parameters.values(p), this.play);
    this.seen.forEach(({ name, value, error }, i) => {
      out[i] = (said[name] - value) / error;
    });
  }

  jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void {
    const moved = new Float64Array(this.count);
    for (let column = 0; column < this.size; column++) {
      const step = 1e-2 * this.scale[column];
      this.residuals(
        p.map((x, i) => (i === column ? x + step : x)),
        moved,
      );
      for (let row = 0; row < this.count; row++) out[row * this.size + column] = (moved[row] - r[row]) / step;
    }
  }
}

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

function playOf({ door: { latch } }: SwingModel): Play {
  if (latch === null) return { centre: 0, half: 0 };
  const { centre, capture } = latchMechanics(latch);
  return { centre, half: capture };
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
  return `No value fits: with ${best} and the file's other values the flap makes ${swings.join(" and ")}, where ${counted.join(" and ")} was counted. Check the count, the flap's size and masses, and the file's damping and air.`;
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
