/** A fitted problem as figures and sentences. */

import { fieldAt, isNumeric } from "../../door/schema.ts";
import { DIMENSIONS } from "../../quantity/dimensions.ts";
import { formatQuantity } from "../../quantity/format.ts";
import { type Covariance, studentQuantile } from "./errors.ts";
import type { Correlation, FittedValue, MeasurementValue, Refusal } from "./fit-types.ts";
import {
  FIT_KEYS,
  type FitKey,
  isFitKey,
  lowerLimit,
  type Nuisance,
  type ParameterName,
  type Values,
} from "./parameters.ts";
import { adviceFor, NAMES, type Untold } from "./tell-apart.ts";

/** Two tails of the interval that is told: 95 % lie between. */
const TAILS = 0.05;

/** Fitted keys with their intervals, in the file's order. `known`: the noise was given, so the normal distribution holds. */
export function fittedValues(
  free: readonly ParameterName[],
  values: Values,
  before: Values,
  { errors, freedom }: Covariance,
  refused: readonly Refusal[],
  known = false,
): FittedValue[] {
  const reach = studentQuantile(TAILS, known ? NORMAL : freedom);
  return FIT_KEYS.filter((key) => free.includes(key)).map((key) => {
    const value = values[key];
    const error = errors[free.indexOf(key)];
    const limit = lowerLimit(key);
    return {
      key,
      unit: unitOf(key),
      value,
      error,
      low: Math.max(limit, value - reach * error),
      high: value + reach * error,
      atLimit: value <= limit,
      before: before[key],
      given: refused.filter(({ from }) => from.includes(key)).map((lost) => lost.key),
    };
  });
}

/** So many degrees of freedom that Student's distribution is the normal one. */
const NORMAL = 1e6;

function unitOf(key: FitKey): string {
  const field = fieldAt(key);
  return isNumeric(field) && field.kind === "quantity" ? DIMENSIONS[field.dimension].siUnit : "1";
}

/** What belongs to the measurement, as far as it was fitted. */
export function measurementValues(
  free: readonly ParameterName[],
  values: Values,
  { errors }: Covariance,
): MeasurementValue[] {
  return free
    .filter((name): name is Nuisance => !isFitKey(name))
    .map((name) => ({ name, value: values[name], error: errors[free.indexOf(name)] }));
}

/** Correlations of all pairs that a fit adjusted. */
export function correlationPairs(
  free: readonly ParameterName[],
  { correlations }: Covariance,
): Correlation[] {
  return free.flatMap((a, i) =>
    free.slice(i + 1).map((b, k) => ({ a, b, value: correlations[i * free.length + i + 1 + k] })),
  );
}

/** The refusal of a value that was held. */
export function refusal(lost: Untold, before: Values): Refusal {
  const { key, from } = lost;
  const kept = `It stays at ${amount(key, before[key])}, as in the file`;
  const others = from.map((name) => NAMES[name]);
  const says =
    others.length === 0
      ? `This swing hardly depends on ${NAMES[key]}. ${kept}.`
      : `This swing cannot tell ${NAMES[key]} from ${listed(others)}. ${kept}.`;
  const instead = adviceFor(lost);
  return { key, from, keptAt: before[key], says, instead: `${instead[0].toUpperCase()}${instead.slice(1)}.` };
}

function listed(items: readonly string[]): string {
  return items.length < 2
    ? items.join("")
    : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;
}

/** A value of a key for people, metric. */
export function amount(key: FitKey, value: number, digits = 3): string {
  const field = fieldAt(key);
  if (isNumeric(field) && field.kind === "quantity")
    return formatQuantity(value, field.dimension, "metric", digits);
  return String(Number(value.toPrecision(digits)));
}

/** "The hinge's dry friction: 2.43 mN m, standard error 0.09 mN m (95 %: 2.26 mN m to 2.6 mN m)." */
export function valueSentence({ key, value, error, low, high, atLimit, given }: FittedValue): string {
  const kept =
    given.length === 0 ? "" : `, with ${listed(given.map((other) => NAMES[other]))} as in the file`;
  const name = `${NAMES[key][0].toUpperCase()}${NAMES[key].slice(1)}${kept}`;
  if (atLimit) return `${name}: none seen; at most ${amount(key, high)} (95 %).`;
  const interval = `95 %: ${amount(key, low)} to ${amount(key, high)}`;
  return `${name}: ${amount(key, value)}, standard error ${amount(key, error, 2)} (${interval}).`;
}

interface Quality {
  readonly measurement: readonly MeasurementValue[];
  /** rad. */
  readonly residual: number;
  readonly noise: number | null;
  readonly used: number;
  readonly given: number;
}

/** Residuals above this many times the readings' own noise are the model's (assumption). */
const MISFIT = 2;
/** A pace this far from 1, and this many standard errors, is told (assumptions). */
const PACE_OFF = 0.01;
const CLEARLY = 3;

/** How well the computed swing follows the measured one, and what of the measurement was off. */
export function measurementSentences({ measurement, residual, noise, used, given }: Quality): string[] {
  const says = [
    `The computed swing follows ${used === given ? `all ${given}` : `${used} of ${given}`} readings within ${degrees(residual)} (standard deviation).`,
  ];
  if (noise !== null && residual > MISFIT * noise) {
    says.push(
      `That is more than the readings' own noise of ${degrees(noise)}: something in the file, such as a mass, a size or a magnet, is off; the errors given allow for it as far as they can.`,
    );
  }
  for (const { name, value, error } of measurement) {
    if (name === "zero" && Math.abs(value) > CLEARLY * error) {
      says.push(`The zero of the readings was off by ${degrees(value)}; that is allowed for.`);
    }
    if (name === "pace" && Math.abs(value - 1) > Math.max(PACE_OFF, CLEARLY * error)) {
      const share = `${Math.abs(100 * (value - 1)).toFixed(1)} %`;
      const way = value > 1 ? "slower" : "faster";
      says.push(
        `The measured flap swings ${share} ${way} than the file's: check its masses and sizes, or the camera's clock.`,
      );
    }
  }
  return says;
}

function degrees(angle: number): string {
  return formatQuantity(angle, "angle", "metric", 2);
}
