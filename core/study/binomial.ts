/**
 * What a count of caught samples says about the probability of being caught: the exact one-sided bound of Clopper and
 * Pearson (Biometrika 26 (1934) 404), and the numbers of samples that follow from it.
 */
import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";

/** Confidence of every bound in the study. */
export const CONFIDENCE = 0.95;

/** Lower bound on the probability at `CONFIDENCE`, from `successes` of `samples`: the beta quantile of 1 − confidence at (k, n − k + 1). */
export function lowerBound(successes: number, samples: number): number {
  if (successes <= 0 || samples <= 0) return 0;
  return betaQuantile(1 - CONFIDENCE, successes, samples - successes + 1);
}

/** Fewest samples that can show `reliability` at all, with not one failure: ⌈ln(1 − confidence)/ln p⌉. */
export function samplesNeeded(reliability: number): number {
  return Math.ceil(Math.log(1 - CONFIDENCE) / Math.log(reliability));
}

/** Fewest successes whose lower bound reaches `reliability`; `null` where not even all do. */
export function successesNeeded(reliability: number, samples: number): number | null {
  if (samples < samplesNeeded(reliability)) return null;
  let low = 0;
  let high = samples;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lowerBound(middle, samples) >= reliability) high = middle;
    else low = middle;
  }
  return high;
}

/** Fewest samples that can show `reliability` with a number of failures allowed (Wilks, Ann. Math. Stat. 12 (1941) 91). */
export function samplesAllowing(failures: number, reliability: number): number {
  let low = failures;
  let high = samplesNeeded(reliability) * (failures + 1) + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (lowerBound(middle - failures, middle) >= reliability) high = middle;
    else low = middle;
  }
  return high;
}
