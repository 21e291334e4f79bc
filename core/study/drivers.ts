/**
 * Which inputs drive a result: Sobol' indices (Math. Comput. Simul. 55 (2001) 271), shares of the result's variance. First order:
 * what goes away, in the mean, once that input is known. Total: what is left once all others are known; what the total has over
 * the first order is the input's part in effects of several inputs together.
 *
 * The points come in replicates that are independent of each other. The error is one standard error, from their spread.
 */

export const FIRST_ORDER = "first-order Sobol' index";
export const TOTAL = "total Sobol' index";

/** An index with its standard error; `null` where nothing tells it. */
export interface SensitivityIndex {
  readonly value: number;
  readonly error: number | null;
}

/** Results at points, replicate after replicate, all of one length. */
export interface Replicated {
  readonly replicates: number;
  readonly values: Float64Array;
}

/** Ranks from 1, equal values sharing the mean of theirs. Never is a result too, infinite, and greater than any other. */
export function midRanks(values: Float64Array): Float64Array {
  const sorted = Float64Array.from(values).sort();
  return values.map((value) => rankIn(sorted, value) + 0.5);
}

/** Mean of how many of `sorted` lie below a value and how many do not lie above it. */
export function rankIn(sorted: Float64Array, value: number): number {
  return (firstPlace(sorted, (other) => other >= value) + firstPlace(sorted, (other) => other > value)) / 2;
}

/** First place of a rising array from which on something holds. */
function firstPlace(sorted: Float64Array, holds: (value: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(sorted[middle])) high = middle;
    else low = middle + 1;
  }
  return low;
}

export function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return sum / values.length;
}

export function varianceOf(values: Float64Array): number {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
}

/** Most bins of an input's range, and the fewest points that one of them should hold in a replicate. */
const MOST_BINS = 32;
const LEAST_FILL = 8;

/** Bins for replicates of a size: a power of two, so that Sobol' points fill them evenly. */
export function binsFor(size: number): number {
  return Math.max(2, Math.min(MOST_BINS, 2 ** Math.floor(Math.log2(size / LEAST_FILL))));
}

/** Share of the points in each bin of an input. */
function binShares(input: Float64Array, count: number, bins: number): Float64Array {
  const shares = new Float64Array(bins);
  for (let i = 0; i < count; i++) shares[Math.floor(input[i] * bins)] += 1 / count;
  return shares;
}

/** Means of the results over bins of an input, less the replicate's mean, replicate by replicate; 0 where a bin is empty. */
function binMeans(input: Float64Array, { replicates, values }: Replicated, bins: number): Float64Array {
  const size = Math.floor(values.length / replicates);
  const means = new Float64Array(replicates * bins);
  const counts = new Int32Array(bins);
  for (let r = 0; r < replicates; r++) {
    const own = means.subarray(r * bins, (r + 1) * bins);
    const mean = meanOf(values.subarray(r * size, (r + 1) * size));
    counts.fill(0);
    for (let i = r * size; i < (r + 1) * size; i++) {
      const bin = Math.floor(input[i] * bins);
      own[bin] += values[i] - mean;
      counts[bin]++;
    }
    for (let bin = 0; bin < bins; bin++) if (counts[bin] > 0) own[bin] /= counts[bin];
  }
  return means;
}

/**
 * First-order index from given points: the mean square over bins of an input of the result's mean there (the correlation
 * ratio; Plischke, Borgonovo and Smith, Eur. J. Oper. Res. 226 (2013) 536), each square taken as the product of two different
 * replicates' means, which makes it free of the bias of squared noise. What a result varies within a bin is left out: about
 * 1/bins² of the index where the result is smooth. The error by the jackknife over replicates.
 *
 * `input` holds uniform numbers, in (0, 1). `variance` is the whole result's, where `results` are what is left of it. 0 ± 0 where
 * it does not vary.
 */
export function firstOrder(
  input: Float64Array,
  results: Replicated,
  variance = varianceOf(results.values),
): SensitivityIndex {
  const { replicates, values } = results;
  const bins = binsFor(values.length / replicates);
  if (variance === 0) return { value: 0, error: 0 };
  const means = binMeans(input, results, bins);
  const shares = binShares(input, values.length, bins);
  const sums = new Float64Array(bins);
  means.forEach((mean, i) => {
    sums[i % bins] += mean;
  });
  /** Mean over bins of products of different replicates, without replicate `left`. */
  const products = (left: number): number => {
    let total = 0;
    for (let bin = 0; bin < bins; bin++) {
      let sum = sums[bin];
      let squares = 0;
      for (let r = 0; r < replicates; r++) {
        const mean = means[r * bins + bin];
        if (r === left) sum -= mean;
        else squares += mean * mean;
      }
      total += shares[bin] * (sum * sum - squares);
    }
    return total;
  };
  const index = (total: number, count: number) => total / (variance * count * (count - 1));
  const value = index(products(-1), replicates);
  if (replicates < 3) return { value, error: null };
  const without = Float64Array.from({ length: replicates }, (_, r) => index(products(r), replicates - 1));
  return { value, error: Math.sqrt((replicates - 1) * varianceOf(without)) };
}

/** An index that is so many times its error stands out. */
const STANDS_OUT = 4;

/**
 * First-order indices of all inputs. The effects of those that stand out are taken from the result before weaker ones are looked
 * at: being independent of these they only add noise there, the more so where few points do not mix two inputs well. (Not the
 * other way round: an effect is fitted to noise too, a little, and that would be missing from the stronger one.)
 */
export function firstOrders(inputs: readonly Float64Array[], results: Replicated): SensitivityIndex[] {
  const variance = varianceOf(results.values);
  const raw = inputs.map((input) => firstOrder(input, results, variance));
  const strong = raw.flatMap(({ value, error }, i) =>
    error !== null && value > STANDS_OUT * error ? [{ i, effect: effectOf(inputs[i], results) }] : [],
  );
  return inputs.map((input, i) => {
    const others = strong.filter((one) => raw[one.i].value > raw[i].value);
    if (others.length === 0) return raw[i];
    const values = results.values.map((value, place) =>
      others.reduce((left, { i: other, effect }) => left - effect(inputs[other][place]), value),
    );
    return firstOrder(input, { ...results, values }, variance);
  });
}

/**
 * An input's own effect on the result, from bin means over all replicates, shrunk to the part of their variance that is the
 * input's and not noise (James and Stein's reason).
 */
function effectOf(input: Float64Array, results: Replicated): Effect {
  const { replicates, values } = results;
  const bins = binsFor(values.length / replicates);
  const raw = binMeans(input, { replicates: 1, values }, bins);
  const share = firstOrder(input, results).value * varianceOf(values);
  const kept = Math.max(0, Math.min(1, share / (varianceOf(raw) || 1)));
  const means = raw.map((mean) => kept * mean);
  return Object.assign((u: number) => means[Math.floor(u * bins)], { variance: varianceOf(means) });
}

/** A step function of a uniform number, and its variance. */
type Effect = ((u: number) => number) & { readonly variance: number };

/** Pairs of points that differ in one input only: its two values, in (0, 1), and the results at both. */
export interface Pairs {
  readonly replicates: number;
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly before: Float64Array;
  readonly after: Float64Array;
}

/**
 * Total index from pairs of points that differ in one input, half their mean square difference (Jansen, Comput. Phys. Commun. 117
 * (1999) 35), with the input's own effect as a control variate: its variance is known, and of the pairs only what they differ
 * beyond that is estimated.
 */
export function totalOrder(pairs: Pairs, input: Float64Array, results: Replicated): SensitivityIndex {
  const variance = varianceOf(results.values);
  if (variance === 0) return { value: 0, error: 0 };
  const { replicates, from, to, before, after } = pairs;
  const effect = effectOf(input, results);
  const size = from.length / replicates;
  const means = Float64Array.from({ length: replicates }, (_, r) => {
    let sum = 0;
    for (let i = r * size; i < (r + 1) * size; i++) {
      sum += (after[i] - before[i]) ** 2 - (effect(to[i]) - effect(from[i])) ** 2;
    }
    return sum / (2 * size * variance);
  });
  const value = effect.variance / variance + meanOf(means);
  return { value, error: Math.sqrt(varianceOf(means) / (replicates - 1)) };
}
