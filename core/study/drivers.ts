/**
 * Which inputs drive a result, from the study's own samples: the first-order Sobol index of the result's rank, the share
 * of its variance that one input by itself accounts for. By the rank statistic of Gamboa, Gremaud, Klein and Lagnoux
 * (Bernoulli 28 (2022) 2345), after Chatterjee (J. Am. Stat. Assoc. 116 (2021) 2009): with the samples in the order
 * of the input, S = (mean of y_j y_(j+1) − mean²)/variance, the last sample followed by the first.
 *
 * Ranks, because never is a result too, and greater than any time. The error is one standard error, from the spread of the
 * index over disjoint batches of the samples (batch means).
 */

export const MEASURE = "first-order Sobol index of the rank";

/** Batches for the error. */
const BATCHES = 16;
/** Batches smaller than this say nothing. */
const LEAST_BATCH = 32;
/** Samples are numbered in the low bits of a sorting key; more of them than this do not fit. */
const MOST_SAMPLES = 2 ** 13;

/** Index of one input: its value and standard error; the error is `null` with too few samples for batches. */
export interface SensitivityIndex {
  readonly value: number;
  readonly error: number | null;
}

/** Ranks from 1, equal values sharing the mean of theirs. */
export function midRanks(values: Float64Array): Float64Array {
  const order = Array.from(values.keys()).sort((a, b) => compare(values[a], values[b]));
  const ranks = new Float64Array(values.length);
  for (let start = 0; start < order.length; ) {
    let end = start + 1;
    while (end < order.length && values[order[end]] === values[order[start]]) end++;
    for (let i = start; i < end; i++) ranks[order[i]] = (start + end + 1) / 2;
    start = end;
  }
  return ranks;
}

/** Infinities included: ∞ − ∞ would be no order. */
function compare(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Places of the samples in the order of an input, in (0, 1). */
function orderOf(input: Float64Array): Int32Array {
  const keys = new Float64Array(input.length);
  for (let i = 0; i < keys.length; i++) keys[i] = Math.floor(input[i] * 2 ** 40) * MOST_SAMPLES + i;
  keys.sort();
  return Int32Array.from(keys, (key) => key % MOST_SAMPLES);
}

/** The index of one input on results `y`; 0 where the results do not vary. */
export function firstOrderIndex(input: Float64Array, y: Float64Array): number {
  const order = orderOf(input);
  const n = order.length;
  let mean = 0;
  for (const value of y) mean += value / n;
  let variance = 0;
  let product = 0;
  for (let i = 0; i < n; i++) {
    const here = y[order[i]] - mean;
    variance += here * here;
    product += here * (y[order[(i + 1) % n]] - mean);
  }
  return variance === 0 ? 0 : product / variance;
}

/** Value and error of one input's index on results `y` (ranks, where never is among them). */
export function sensitivity(input: Float64Array, y: Float64Array): SensitivityIndex {
  const value = firstOrderIndex(input, y);
  const size = Math.floor(y.length / BATCHES);
  if (size < LEAST_BATCH) return { value, error: null };
  const parts = Array.from({ length: BATCHES }, (_, batch) => {
    const [from, to] = [batch * size, (batch + 1) * size];
    return firstOrderIndex(input.subarray(from, to), y.subarray(from, to));
  });
  const mean = parts.reduce((sum, part) => sum + part, 0) / BATCHES;
  const square = parts.reduce((sum, part) => sum + (part - mean) ** 2, 0) / (BATCHES - 1);
  return { value, error: Math.sqrt(square / BATCHES) };
}
