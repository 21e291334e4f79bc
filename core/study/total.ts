/** Tallies of parts put together, in any order, to that of the whole study. */
import type { StudyRequest } from "./request.ts";
import { AnimalTally, DRIVER_SAMPLES, type Tally } from "./tally.ts";

export interface SampleRange {
  readonly from: number;
  readonly to: number;
}

/** The whole study as far as it has been counted. */
export class StudyTotal {
  readonly animals: readonly AnimalTally[];
  readonly settle: Float64Array;
  readonly needed: Float64Array;
  /** Ranges counted, rising; touching ones joined. */
  ranges: readonly SampleRange[] = [];
  readonly samples: number;

  constructor(request: StudyRequest) {
    this.samples = request.samples;
    this.animals = request.door.animals.map(() => new AnimalTally());
    const rows = Math.min(request.samples, DRIVER_SAMPLES);
    this.settle = new Float64Array(rows);
    this.needed = new Float64Array(rows);
  }

  /** Adds a tally; refused (false) where one of its samples has been counted before. */
  add(tally: Tally): boolean {
    const { from, to, rows } = tally;
    if (this.ranges.some((range) => from < range.to && range.from < to)) return false;
    this.ranges = joined([...this.ranges, { from, to }]);
    this.animals.forEach((animal, i) => {
      animal.merge(tally.animals[i]);
    });
    this.settle.set(rows.settle, rows.settle.length > 0 ? rows.from : 0);
    this.needed.set(rows.needed, rows.needed.length > 0 ? rows.from : 0);
    return true;
  }

  /** All that was counted, as the tally of one range; the caller has made sure that it is one. */
  asTally({ from, to }: SampleRange): Tally {
    const end = Math.min(to, this.settle.length);
    const rows = {
      from,
      settle: this.settle.slice(from, Math.max(from, end)),
      needed: this.needed.slice(from, Math.max(from, end)),
    };
    return { from, to, animals: this.animals, rows };
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
