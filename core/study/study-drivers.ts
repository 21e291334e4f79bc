/**
 * The drivers of a study. Of the settle time: total indices, which miss no input that matters only together with others, and
 * first-order indices beside them, from the low-discrepancy points. Of the setting needed: first-order indices from the first plain
 * samples, drawn again from the seed. All of ranks, because never is a result too and greater than any time.
 */
import {
  FIRST_ORDER,
  firstOrders,
  midRanks,
  type Pairs,
  type Replicated,
  rankIn,
  type SensitivityIndex,
  TOTAL,
  totalOrder,
} from "./drivers.ts";
import type { StudyRequest } from "./request.ts";
import { sampleStream } from "./stream.ts";
import { type DrawnKey, drawnKeys, movedPlace, type PointPlan, StudyPoints } from "./study-points.ts";

export interface Driver {
  /** The door file's key path; "passage.animal" and "passage.direction" for what differs from pass to pass by itself. */
  readonly key: string;
  /** What the drivers are ranked by, of which result, from which points. */
  readonly measure: string;
  /** Share of the variance, about 0 for an input that does nothing (it may come out slightly negative). */
  readonly value: number;
  /** One standard error; `null` with too few samples to tell. */
  readonly error: number | null;
  /** Beside a total index: the first-order index, the input by itself; `null` where `value` is that already. */
  readonly alone: (SensitivityIndex & { readonly measure: string }) | null;
}

/** "2048 scrambled Sobol' points". */
export function pointWords({ replicates, size }: PointPlan): string {
  return `${replicates * size} scrambled Sobol' points`;
}

function strongestFirst(drivers: Driver[]): Driver[] {
  return drivers.sort((a, b) => b.value - a.value);
}

/** What drives the settle time, the strongest first; none where it does not vary. `settle`: of every point, s. */
export function settleDrivers(request: StudyRequest, settle: Float64Array): Driver[] {
  const points = new StudyPoints(request);
  const { plan } = points;
  const base = plan.replicates * plan.size;
  const sorted = settle.slice(0, base).sort();
  const ranks = settle.map((time) => rankIn(sorted, time));
  const results = { replicates: plan.replicates, values: ranks.subarray(0, base) };
  if (sorted[0] === sorted[base - 1]) return [];
  const columns = columnsOf(plan.draws, plan.count, (place, out) => points.draw(place, out));
  const of = `of the rank of the settle time, ${pointWords(plan)}`;
  const measure = `${TOTAL} ${of} and ${plan.replicates * plan.moved} pairs per input`;
  const alone = firstOrders(
    plan.keys.map(({ draw }) => columns[draw].subarray(0, base)),
    results,
  );
  const sure = alone.map(({ value, error }) =>
    Math.max(0, value - SURE * (error ?? Number.POSITIVE_INFINITY)),
  );
  const sum = sure.reduce((total, value) => total + value, 0);
  return strongestFirst(
    plan.keys.map(({ key, draw }, i) => {
      const total = totalOrder(pairsOf(plan, i, columns[draw], ranks), columns[draw], results);
      return {
        key,
        measure,
        ...within(total, sure[i], 1 - (sum - sure[i])),
        alone: { measure: `${FIRST_ORDER} ${of}`, ...alone[i] },
      };
    }),
  );
}

/**
 * A total index is no less than the first-order one, nor more than the first-order ones of the others leave: as far as these are
 * sure, so many errors below their values.
 */
const SURE = 2;

function within({ value, error }: SensitivityIndex, low: number, high: number): SensitivityIndex {
  const most = Math.max(low, high);
  const half = (most - low) / 2;
  return {
    value: Math.max(low, Math.min(most, value)),
    error: error === null ? null : Math.min(error, half),
  };
}

/** The points that were swung again with input `key` moved. */
function pairsOf(plan: PointPlan, key: number, column: Float64Array, ranks: Float64Array): Pairs {
  const { replicates, size, moved } = plan;
  const pairs = Array.from({ length: replicates * moved }, (_, i) => {
    const [replicate, index] = [Math.floor(i / moved), i % moved];
    return { point: replicate * size + index, again: movedPlace(plan, replicate, index, key) };
  });
  return {
    replicates,
    from: Float64Array.from(pairs, ({ point }) => column[point]),
    to: Float64Array.from(pairs, ({ again }) => column[again]),
    before: Float64Array.from(pairs, ({ point }) => ranks[point]),
    after: Float64Array.from(pairs, ({ again }) => ranks[again]),
  };
}

/** Batches of plain samples in the place of replicates, where each holds enough to tell an error from. */
const BATCHES = 16;
const LEAST_BATCH = 32;

/** What drives the setting needed. `needed`: of the first samples, s. */
export function neededDrivers(request: StudyRequest, needed: Float64Array): Driver[] {
  const batches = needed.length >= BATCHES * LEAST_BATCH ? BATCHES : 2;
  const count = needed.length - (needed.length % batches);
  const values = midRanks(needed.subarray(0, count));
  if (count === 0 || values.every((rank) => rank === values[0])) return [];
  const keys: readonly DrawnKey[] = drawnKeys(request);
  const draws = Math.max(...keys.map(({ draw }) => draw)) + 1;
  const columns = columnsOf(draws, count, (index, out) => {
    const uniform = sampleStream(request.seed, index);
    for (let i = 0; i < draws; i++) out[i] = uniform();
  });
  const results: Replicated = { replicates: batches, values };
  const measure = `${FIRST_ORDER} of the rank of the setting needed, ${count} plain samples`;
  const indices = firstOrders(
    keys.map(({ draw }) => columns[draw]),
    results,
  );
  return strongestFirst(keys.map(({ key }, i) => ({ key, measure, ...indices[i], alone: null })));
}

/** One column per draw, of `count` points. */
function columnsOf(
  draws: number,
  count: number,
  draw: (place: number, out: Float64Array) => void,
): Float64Array[] {
  const columns = Array.from({ length: draws }, () => new Float64Array(count));
  const numbers = new Float64Array(draws);
  for (let place = 0; place < count; place++) {
    draw(place, numbers);
    for (let i = 0; i < draws; i++) columns[i][place] = numbers[i];
  }
  return columns;
}
