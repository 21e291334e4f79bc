/**
 * Values of hinge, seal and air from a measured swing.
 *
 * Levels: `parameters`, `vector` (what is adjusted) · `model` (the door's own swing) · `swing-problem` and `trace-problem`,
 * `turns-problem`, `count-problem` (residuals) · `least-squares`, `errors` (the method) · `start`, `trace-fit`, `turns-fit` (from
 * the data to a fit) · `tell-apart` (what the data do not say) · `count-fit` (a count instead of readings) · `outcome` (figures
 * and sentences) · here (all together) · `measured` (files) · `write-back` (edits of the door file).
 *
 * Taken from the door as it stands: flap, magnets, damper, static ratio, stops, wind. All torques found are in proportion to
 * the flap's first moment.
 */
import type { Door } from "../../door/door.ts";
import { countFit } from "./count-fit.ts";
import { type Covariance, covariance } from "./errors.ts";
import type { Compared, Fit, FitOptions, Measured, Refusal, Turns } from "./fit-types.ts";
import type { Fitted } from "./least-squares.ts";
import { SwingModel } from "./model.ts";
import {
  correlationPairs,
  fittedValues,
  measurementSentences,
  measurementValues,
  refusal,
  valueSentence,
} from "./outcome.ts";
import { FIT_KEYS, isFitKey, type Nuisance, type ParameterName, type Values } from "./parameters.ts";
import { firstLook } from "./start.ts";
import { untold } from "./tell-apart.ts";
import { afterLetGo, FEWEST_SAMPLES, startValues, traceFit } from "./trace-fit.ts";
import type { Samples } from "./trace-problem.ts";
import { FEWEST_TURNS, freeTurns, turnsFit, turnsStart } from "./turns-fit.ts";
import type { TurnReadings } from "./turns-problem.ts";

/** Swings below this tell nothing that a camera sees, rad (assumption: 2°). */
const LEAST_AMPLITUDE = Math.PI / 90;

/** Fits a door to what was measured. Never throws; data that tell nothing are refused with what to measure instead. */
export function fitSwing(door: Door, measured: Measured, options: FitOptions = {}): Fit {
  const model = new SwingModel(door);
  const before = fileValues(door);
  switch (measured.kind) {
    case "count":
      return countFit(model, before, measured.count, options);
    case "trace":
      return fitTrace(model, before, measured.samples, options);
    case "turns":
      return fitTurns(model, before, measured.turns, options);
  }
}

/** What the file says, and a measurement as it should be. */
function fileValues(door: Door): Values {
  return {
    "hinge.frictionTorque": door.hinge.frictionTorque,
    "hinge.viscousDamping": door.hinge.viscousDamping,
    "air.swingFactor": door.air.swingFactor,
    "seal.frictionTorque": door.seal.frictionTorque,
    "opening.outOfPlumb": door.opening.outOfPlumb,
    release: 0,
    start: 0,
    zero: 0,
    pace: 1,
  };
}

interface Wanted {
  readonly wanted: readonly ParameterName[];
  readonly lost: readonly Refusal[];
}

/** What to fit, and what is refused whatever the data: a tilt, where only magnets could tell it from the readings' zero. */
function wantedParameters(
  model: SwingModel,
  before: Values,
  options: FitOptions,
  nuisances: readonly Nuisance[],
): Wanted {
  const { air, seal } = model.door;
  const zeroFree = !options.zeroIsTrue;
  const hidden = zeroFree && model.centring === null;
  const asked = FIT_KEYS.filter(
    (key) =>
      (options.keys ?? FIT_KEYS).includes(key) &&
      !(key === "air.swingFactor" && air.density * air.dragCoefficient === 0) &&
      !(key === "seal.frictionTorque" && seal.contactAngle === 0),
  );
  const keys = asked.filter((key) => !(hidden && key === "opening.outOfPlumb"));
  const own = nuisances.filter((name) => name !== "zero" || zeroFree);
  const lost = asked.filter((key) => !keys.includes(key));
  return {
    wanted: [...keys, ...own],
    lost: lost.map((key) => refusal({ key, from: ["zero"] }, before)),
  };
}

function refused(says: string): Fit {
  return { ok: false, says };
}

/** One round of a fit: its values, and the residuals they leave. */
interface Round {
  readonly values: Values;
  readonly fit: Fitted;
}

/** A fit with only such parameters as the data tell, and what was refused on the way. */
interface Told<R extends Round> {
  readonly round: R;
  readonly free: readonly ParameterName[];
  readonly spread: Covariance;
  readonly refused: readonly Refusal[];
}

/**
 * Fits, holds at the file's value what the data do not tell, and fits again, until every value is told. What was
 * refused where none is; `null` where there is nothing to fit.
 */
function tell<R extends Round>(
  model: SwingModel,
  before: Values,
  wanted: readonly ParameterName[],
  already: readonly Refusal[],
  attempt: (free: readonly ParameterName[], last: Values | null) => R | null,
): Told<R> | readonly Refusal[] | null {
  let free = wanted;
  let last: Values | null = null;
  const lost: Refusal[] = [...already];
  for (;;) {
    const round = attempt(free, last);
    if (round === null) return null;
    const spread = covariance(round.fit, free.length);
    const next = untold(free, round.values, spread, model.body);
    if (next === null) return { round, free, spread, refused: lost };
    lost.push(refusal(next, before));
    free = free.filter((name) => name !== next.key);
    if (!free.some(isFitKey)) return lost;
    last = round.values;
  }
}

/** Starts of a fit, and the last round's end: what is not free stands as in the file. */
function from(
  starts: readonly Values[],
  last: Values | null,
  free: readonly ParameterName[],
  before: Values,
): Values[] {
  const kept = FIT_KEYS.filter((key) => !free.includes(key)).map((key) => [key, before[key]]);
  return (last === null ? starts : [...starts, last]).map((start) => ({
    ...start,
    ...Object.fromEntries(kept),
  }));
}

function fitTrace(model: SwingModel, before: Values, samples: Samples, options: FitOptions): Fit {
  const look = samples.time.length < FEWEST_SAMPLES ? null : firstLook(samples);
  if (look === null) return refused(NO_SWING);
  if (Math.abs(look.amplitude) < LEAST_AMPLITUDE) return refused(TOO_SMALL);
  const starts = startValues(model, look, before, options.zeroIsTrue === true);
  if (starts.length === 0) return refused(NO_SWING);
  const data = afterLetGo(samples, starts[0].start, model.body.smallAnglePeriod);
  if (data.time.length < FEWEST_SAMPLES) return refused(NO_SWING);
  const { wanted, lost } = wantedParameters(model, before, options, ["release", "start", "zero", "pace"]);
  const told = tell(model, before, wanted, lost, (free, last) =>
    traceFit(model, data, free, from(starts, last, free, before)),
  );
  if (told === null) return refused(IN_THE_WELL);
  if (!("round" in told)) return refused(nothingTold(told));
  const { used, fit } = told.round;
  const compared = comparison([...used.time], used.angle, fit);
  return finished(told, before, { kind: "trace", noise: look.noise, given: samples.time.length, compared });
}

function fitTurns(model: SwingModel, before: Values, turns: Turns, options: FitOptions): Fit {
  if (turns.angle.length < FEWEST_TURNS) return refused(FEW_TURNS);
  const every = placed(turns);
  const size = (Math.max(...every.angle) - Math.min(...every.angle)) / 2;
  if (size < LEAST_AMPLITUDE) return refused(TOO_SMALL);
  const starts = turnsStart(model, every, before, options.zeroIsTrue === true);
  const readings = freeTurns(model, every, starts);
  if (readings.turn.length < FEWEST_TURNS) return refused(IN_THE_WELL);
  const { wanted, lost } = wantedParameters(model, before, options, ["release", "zero"]);
  const keys = wanted.filter(isFitKey);
  const most = Math.max(1, readings.turn.length - 1 - (wanted.length - keys.length));
  const few = keys.slice(most);
  const free = wanted.filter((name) => !(few as ParameterName[]).includes(name));
  const already = [...lost, ...few.map((key) => refusal({ key, from: [] }, before))];
  const told = tell(model, before, free, already, (names, last) =>
    turnsFit(model, readings, names, from(starts, last, names, before)),
  );
  if (told === null) return refused(FEW_TURNS);
  if (!("round" in told)) return refused(nothingTold(told));
  const compared = comparison(
    (turns.time ?? every.turn).slice(0, readings.turn.length),
    readings.angle,
    told.round.fit,
  );
  return finished(told, before, {
    kind: "turns",
    noise: null,
    given: turns.angle.length,
    compared,
  });
}

/** Turns counted from the first reading, signs by turns where only sizes were read. */
function placed({ turn, angle }: Turns): TurnReadings {
  const places = turn.map((place) => place - turn[0]);
  const oneSided = angle.every((a) => a >= 0) || angle.every((a) => a <= 0);
  const bothSides = places.some((place) => place % 2 === 1);
  const signed = oneSided && bothSides ? angle.map((a, i) => (places[i] % 2 === 1 ? -a : a)) : [...angle];
  return { turn: places, angle: signed };
}

function comparison(at: readonly number[], angle: ArrayLike<number>, { residuals }: Fitted): Compared {
  const measured = Array.from(angle);
  return { at, measured, computed: measured.map((read, i) => read + residuals[i]) };
}

interface Setting {
  readonly kind: "trace" | "turns";
  readonly noise: number | null;
  readonly given: number;
  readonly compared: Compared;
}

function finished<R extends Round>(told: Told<R>, before: Values, setting: Setting): Fit {
  const { round, free, spread, refused: lost } = told;
  const values = fittedValues(free, round.values, before, spread, lost);
  const measurement = measurementValues(free, round.values, spread);
  const used = setting.compared.at.length;
  const residual = spread.sigma;
  return {
    ok: true,
    ...setting,
    values,
    refused: lost,
    measurement,
    correlations: correlationPairs(free, spread),
    residual,
    used,
    freedom: spread.freedom,
    says: [
      ...values.map(valueSentence),
      ...lost.map(({ says, instead }) => `${says} ${instead}`),
      ...measurementSentences({ measurement, residual, noise: setting.noise, used, given: setting.given }),
    ],
  };
}

const NO_SWING =
  "The readings hold no swing of this flap: they must start at or before a let-go and follow the flap through the centre, with at least 12 readings. Check the column of angles, the unit of time and the flap's size.";
const TOO_SMALL =
  "The swing is smaller than 2°, too small to tell anything. Let go from 30° or more; if the angles are in radians, call the column angle_rad.";
const IN_THE_WELL =
  "The magnets catch the flap at once, and from then on it trembles with their strength, not with friction. Let go from a larger angle, or take the magnets off one side and measure without them.";
const FEW_TURNS =
  "At least 4 turning points are needed, the let-go the first. Read both sides, one after the other.";

function nothingTold(lost: readonly Refusal[]): string {
  const ways = [...new Set(lost.map(({ instead }) => instead))].join(" ");
  return `These readings tell no value of the door. ${ways}`;
}
