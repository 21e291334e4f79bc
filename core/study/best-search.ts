/**
 * The least of a figure that may jump and may not exist, over a few inputs: spread-out starts, then from the best of them a
 * mesh-adaptive direct search (Audet and Dennis, SIAM J. Optim. 17 (2006) 188) with barred places never entered. No chance in
 * it: the directions come out of a Halton sequence (Abramson, Audet, Dennis and Le Digabel, SIAM J. Optim. 20 (2009) 948).
 */

/** A place's worth: first the smaller `barred` (0: everything is kept), then the smaller `value`. */
export interface Worth {
  readonly barred: number;
  readonly value: number;
}

/** Coordinates from 0 to 1. */
export type Place = readonly number[];

export interface Found<W extends Worth> {
  readonly place: Place;
  readonly worth: W;
}

export function better(a: Worth, b: Worth): boolean {
  return a.barred < b.barred || (a.barred === b.barred && a.value < b.value);
}

const PRIMES = [2, 3, 5, 7, 11, 13];
/** Most inputs that are searched over together. */
export const MOST_INPUTS = PRIMES.length;

/** Place `index` of the Halton sequence (Halton, Numer. Math. 2 (1960) 84): the digits of the index mirrored at the point. */
export function haltonPlace(index: number, size: number): number[] {
  return PRIMES.slice(0, size).map((base) => {
    let share = 1 / base;
    let sum = 0;
    for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
      sum += (rest % base) * share;
      share /= base;
    }
    return sum;
  });
}

/** 2 × size directions, each with its opposite: a Householder mirror of the axes in a direction of the Halton sequence. */
function directions(index: number, size: number): number[][] {
  const raw = haltonPlace(index + 1, size).map((x) => 2 * x - 1);
  const length = Math.hypot(...raw) || 1;
  const axis = raw.map((x) => x / length);
  const mirrored = axis.map((a, i) => axis.map((b, j) => (i === j ? 1 : 0) - 2 * a * b));
  return mirrored.flatMap((row) => [row, row.map((x) => -x)]);
}

function axes(size: number): number[][] {
  return Array.from({ length: size }, (_, i) => i).flatMap((i) =>
    [1, -1].map((sign) => Array.from({ length: size }, (_, j) => (i === j ? sign : 0))),
  );
}

/** Sets of directions tried beside the axes before the step is halved: a slanting bar leaves a narrow way. */
const SETS = 3;
/** First step, and the last, as parts of the ranges. */
const FIRST_STEP = 0.125;
const LAST_STEP = 1 / 4096;

/** Searches on from a place; yields after every place tried, returns the best. */
export function* refined<W extends Worth>(
  start: Found<W>,
  judge: (place: Place, against: W) => W,
): Generator<Found<W>, Found<W>, void> {
  const size = start.place.length;
  let best = start;
  let step = FIRST_STEP;
  for (let round = 0; step >= LAST_STEP; round++) {
    const before = best;
    const turned = Array.from({ length: SETS }, (_, i) => directions(SETS * round + i, size)).flat();
    for (const direction of size === 1 ? axes(size) : [...axes(size), ...turned]) {
      const place = best.place.map((x, i) => Math.max(0, Math.min(1, x + step * direction[i])));
      if (place.every((x, i) => x === best.place[i])) continue;
      const tried = { place, worth: judge(place, best.worth) };
      if (better(tried.worth, best.worth)) {
        best = tried;
        yield best;
        break;
      }
      yield best;
    }
    step = best === before ? step / 2 : Math.min(FIRST_STEP, 2 * step);
  }
  return best;
}
