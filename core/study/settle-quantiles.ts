/**
 * Quantiles of the settle time from the plain samples and the low-discrepancy points together, each set by its precision, with
 * a standard error.
 *
 * Both give the share of passages settled by a time; the two shares are weighed by their variances, binomial for the plain
 * samples, from the spread of the replicates for the points. The quantile is where the weighed share reaches p, and its error
 * half of what lies between the times at p ± the share's standard error (Woodruff, J. Am. Stat. Assoc. 47 (1952) 635).
 */
import { TimeHistogram, weighedQuantile } from "./histogram.ts";
import type { StudyRequest } from "./request.ts";
import { drawnAnimal } from "./sampled-door.ts";
import { StudyPoints } from "./study-points.ts";

/** Settle times at these shares of the passages, s; `null` is never. */
export type SettleQuantiles = Readonly<Record<SettleShare, number | null>>;
export type SettleShare = "5" | "50" | "95" | "99";

export interface SettleFigures {
  readonly settle: SettleQuantiles;
  /** One standard error of each, s; `null` where the quantile is never, or never lies within its error. */
  readonly settleError: SettleQuantiles;
}

/** A point is never taken to be worth more plain samples than this: replicates may agree by chance. */
const MOST_WORTH = 8;

/** Quantiles of all plain settle times and of the points', replicate by replicate. */
export function settleFigures(plain: TimeHistogram, replicates: readonly TimeHistogram[]): SettleFigures {
  const at = (p: number) => quantileWithError(plain, replicates, p);
  const figures = { "5": at(0.05), "50": at(0.5), "95": at(0.95), "99": at(0.99) };
  const pick = (of: (figure: TimeWithError) => number | null): SettleQuantiles => ({
    "5": of(figures["5"]),
    "50": of(figures["50"]),
    "95": of(figures["95"]),
    "99": of(figures["99"]),
  });
  return { settle: pick(({ time }) => time), settleError: pick(({ error }) => error) };
}

/** Settle times of a study's points, s, counted by animal (first) and by replicate; `settle` holds the points first. */
export function pointTimes(request: StudyRequest, settle: Float64Array): TimeHistogram[][] {
  const points = new StudyPoints(request);
  const { replicates, size, draws } = points.plan;
  const numbers = new Float64Array(draws);
  const { length } = request.door.animals;
  const times = Array.from({ length }, () => Array.from({ length: replicates }, () => new TimeHistogram()));
  for (let place = 0; place < replicates * size; place++) {
    points.draw(place, numbers);
    times[drawnAnimal(numbers, length)][Math.floor(place / size)].add(settle[place]);
  }
  return times;
}

/** The same of several animals together. */
export function mergedTimes(animals: readonly (readonly TimeHistogram[])[]): TimeHistogram[] {
  const merged = animals[0].map(() => new TimeHistogram());
  for (const replicates of animals) {
    replicates.forEach((times, i) => {
      merged[i].merge(times);
    });
  }
  return merged;
}

interface TimeWithError {
  readonly time: number | null;
  readonly error: number | null;
}

function quantileWithError(
  plain: TimeHistogram,
  replicates: readonly TimeHistogram[],
  p: number,
): TimeWithError {
  const points = new TimeHistogram();
  for (const replicate of replicates) points.merge(replicate);
  const pointVariance = shareVariance(replicates, points.total, plain.quantile(p), p);
  const plainVariance = (p * (1 - p)) / plain.total;
  const sets = [
    { times: plain, weight: 1 / plainVariance },
    { times: points, weight: points.total === 0 ? 0 : 1 / pointVariance },
  ].filter(({ weight }) => weight > 0);
  const error = Math.sqrt(1 / sets.reduce((sum, { weight }) => sum + weight, 0));
  const [low, time, high] = [p - error, p, p + error].map((share) => weighedQuantile(sets, share));
  return { time, error: low === null || high === null ? null : Number(((high - low) / 2).toFixed(6)) };
}

/** Variance of the points' share settled by a time, between that of as many plain samples and of `MOST_WORTH` times as many. */
function shareVariance(
  replicates: readonly TimeHistogram[],
  points: number,
  time: number | null,
  p: number,
): number {
  const plain = (p * (1 - p)) / points;
  const drawn = replicates.filter(({ total }) => total > 0);
  if (drawn.length < 2) return plain;
  const shares = drawn.map((times) => times.shareUntil(time));
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const squares = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0);
  const variance = squares / (shares.length * (shares.length - 1));
  return Math.max(plain / MOST_WORTH, Math.min(plain, variance));
}
