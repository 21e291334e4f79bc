/** From counts to the curve P(caught | setting) with its bound, and the setting it recommends. */
import { lowerBound, successesNeeded } from "./binomial.ts";
import type { AnimalTally } from "./tally.ts";

/** Points of a printed curve lie at most this far apart where it changes, s (contract). */
const PRINTED_SPACING = 0.05;

/** [nominal setting in s, share caught, lower bound at 95 %]. */
export type CurvePoint = readonly [number, number, number];

/** Counts of one mixture of animals along the grid. */
export interface Counts {
  readonly samples: number;
  readonly spacing: number;
  /** Settings 0 … size − 1; at the last one nothing changes any more. */
  readonly size: number;
  readonly cannotWork: number;
  readonly restsOutside: number;
  readonly caught: Int32Array;
  readonly underAnimal: Int32Array;
  readonly stuck: Int32Array;
  readonly shutOut: Int32Array;
  /** Caught throughout the cell that starts at a setting. */
  readonly caughtThroughout: Int32Array;
}

/** Setting at which the curve ends, s: (lag + rest + release + rise) of the latest sample over the least timer factor. */
function curveEnd(animals: readonly AnimalTally[], leastFactor: number): number {
  return Math.max(...animals.map(({ latest }) => latest)) / leastFactor;
}

/** Sums the animals' counts. */
export function countsOf(animals: readonly AnimalTally[], spacing: number, leastFactor: number): Counts {
  const reach = Math.max(...animals.flatMap(({ grids }) => grids.map((grid) => grid.length)));
  const size = Math.max(reach, Math.ceil(curveEnd(animals, leastFactor) / spacing)) + 1;
  const sum = (of: (animal: AnimalTally) => Int32Array) => {
    const total = new Int32Array(size);
    for (const animal of animals) {
      const counts = of(animal);
      for (let i = 0; i < size; i++) total[i] += counts[i];
    }
    return total;
  };
  const add = (of: (animal: AnimalTally) => number) => animals.reduce((total, one) => total + of(one), 0);
  return {
    samples: add((one) => one.samples),
    spacing,
    size,
    cannotWork: add((one) => one.cannotWork),
    restsOutside: add((one) => one.restsOutside),
    caught: sum((one) => one.caught.counts(size)),
    underAnimal: sum((one) => one.underAnimal.counts(size)),
    stuck: sum((one) => one.stuck.counts(size)),
    shutOut: sum((one) => one.shutOut.counts(size)),
    caughtThroughout: sum((one) => one.caughtThroughout.counts(size)),
  };
}

/**
 * Place on the grid of the least setting from which on the bound stays at the target to the curve's end; `null` where none does.
 * Between two settings a sample counts only if it is caught throughout, so the bound holds there too: the setting may be
 * one spacing late, never early.
 *
 * Settings are judged from the longest down and the first that falls short ends it, so looking at many of them does not
 * weaken the confidence: a too short one is recommended only if the first too short one passes its own test, which happens
 * in at most 5 % of studies (tests in a fixed order; Maurer, Hothorn and Lehmacher 1995, from memory).
 */
export function recommendedPlace(counts: Counts, reliability: number): number | null {
  const needed = successesNeeded(reliability, counts.samples);
  if (needed === null) return null;
  let place: number | null = null;
  for (let i = counts.size - 1; i >= 0 && counts.caughtThroughout[i] >= needed; i--) place = i;
  return place;
}

/** Setting at a place of the grid, s, without the dust of binary fractions. */
export function settingAt(place: number, spacing: number): number {
  return Number((place * spacing).toFixed(9));
}

/** The curve for people and plots: points at most 0.05 s apart, without those in the middle of flat stretches. */
export function curvePoints(counts: Counts, alsoAt: number | null): CurvePoint[] {
  const { caught, size, spacing, samples } = counts;
  const stride = Math.max(1, Math.floor(PRINTED_SPACING / spacing + 1e-9));
  const places: number[] = [];
  for (let i = 0; i < size; i++) {
    if (i % stride === 0 || i === alsoAt || i === size - 1) places.push(i);
  }
  const kept = places.filter((place, k) => {
    const [before, after] = [places[k - 1], places[k + 1]];
    if (before === undefined || after === undefined || place === alsoAt) return true;
    return caught[before] !== caught[place] || caught[after] !== caught[place];
  });
  const bounds = new Map<number, number>();
  return kept.map((place) => {
    const count = caught[place];
    const bound = bounds.get(count) ?? lowerBound(count, samples);
    bounds.set(count, bound);
    return [settingAt(place, spacing), count / samples, bound];
  });
}
