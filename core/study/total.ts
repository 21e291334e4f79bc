/** Tallies of parts put together, in any order, to that of the whole study. */
import type { StudyRequest } from "./request.ts";
import { type PointPlan, pointPlan, pointsBefore } from "./study-points.ts";
import { AnimalTally, DRIVER_SAMPLES, type Tally } from "./tally.ts";

export interface SampleRange {
  readonly from: number;
  readonly to: number;
}

/** The whole study as far as it has been counted. */
export class StudyTotal {
  readonly animals: readonly AnimalTally[];
  readonly needed: Float64Array;
  readonly plan: PointPlan;
  /** Settle times of the low-discrepancy points, s. */
  readonly points: Float64Array;
  /** Ranges counted, rising; touching ones joined. */
  ranges: readonly SampleRange[] = [];
  readonly samples: number;

  constructor(request: StudyRequest) {
    this.samples = request.samples;
    this.animals = request.door.animals.map(() => new AnimalTally());
    const rows = Math.min(request.samples, DRIVER_SAMPLES);
    this.needed = new Float64Array(rows);
    this.plan = pointPlan(request);
    this.points = new Float64Array(this.plan.count);
  }

  /** Adds a tally; refused (false) where one of its samples has been counted before. */
  add(tally: Tally): boolean {
    const { from, to, rows, points } = tally;
    if (this.ranges.some((range) => from < range.to && range.from < to)) return false;
    this.ranges = joined([...this.ranges, { from, to }]);
    this.animals.forEach((animal, i) => {
      animal.merge(tally.animals[i]);
    });
    this.needed.set(rows.needed, rows.needed.length > 0 ? rows.from : 0);
    this.points.set(points.settle, points.from);
    return true;
  }

  /** All that was counted, as the tally of one range; the caller has made sure that it is one. */
  asTally({ from, to }: SampleRange): Tally {
    const end = Math.min(to, this.needed.length);
    const rows = {
      from,
      needed: this.needed.slice(from, Math.max(from, end)),
    };
    const first = pointsBefore(this.plan, this.samples, from);
    const settle = this.points.slice(first, pointsBefore(this.plan, this.samples, to));
    return { from, to, animals: this.animals, rows, points: { from: first, settle } };
  }

  /** Ranges not counted yet. */
  get missing(): readonly SampleRange[] {
    const missing: SampleRange[] = [];
    let at = 0;
    for (const range of this.ranges) {
      if (range.from > at) missing.push({ from: at, to: range.from });
      at = range.to;
    }
    return at < this.samples ? [...missing, { from: at, to: this.samples }] : missing;
  }
}

function joined(ranges: readonly SampleRange[]): SampleRange[] {
  const rising = ranges.filter(({ from, to }) => to > from).sort((a, b) => a.from - b.from);
  const result: SampleRange[] = [];
  for (const range of rising) {
    const last = result[result.length - 1];
    if (last !== undefined && last.to === range.from) {
      result[result.length - 1] = { from: last.from, to: range.to };
    } else result.push(range);
  }
  return result;
}
