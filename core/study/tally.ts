/** What a study keeps of its samples: counts, and nothing per sample but what the drivers are worked out from. */
import { GridCount } from "./grid.ts";
import { TimeHistogram } from "./histogram.ts";
import type { PointRow } from "./point-run.ts";

/** Why a sample is not caught, in the order in which one of several is named (model, section 7). */
export const CAUSES = ["cannot work", "rests outside", "under the animal", "stuck", "shut out"] as const;
export type Cause = (typeof CAUSES)[number];

/** Counts at one setting, by what became of the samples. */
export interface Ends {
  caught: number;
  cannotWork: number;
  restsOutside: number;
  underAnimal: number;
  stuck: number;
  shutOut: number;
}

export function noEnds(): Ends {
  return { caught: 0, cannotWork: 0, restsOutside: 0, underAnimal: 0, stuck: 0, shutOut: 0 };
}

/** The samples of one animal. */
export class AnimalTally {
  samples = 0;
  cannotWork = 0;
  restsOutside = 0;
  /** At each setting. */
  readonly caught: GridCount;
  readonly underAnimal: GridCount;
  readonly stuck: GridCount;
  readonly shutOut: GridCount;
  /** Caught at every setting within a cell, its two ends included. */
  readonly caughtThroughout: GridCount;
  readonly settle = new TimeHistogram();
  /** At the timer's nominal setting, exactly. */
  readonly atNominal: Ends = noEnds();
  /** Latest end of anything, as a hold before the timer's factor: lag, rest, release and rise together, s. */
  latest = 0;

  constructor(grids: readonly GridCount[] = Array.from({ length: GRIDS }, () => new GridCount())) {
    [this.caught, this.underAnimal, this.stuck, this.shutOut, this.caughtThroughout] = grids;
  }

  get grids(): readonly GridCount[] {
    return [this.caught, this.underAnimal, this.stuck, this.shutOut, this.caughtThroughout];
  }

  merge(other: AnimalTally): void {
    this.samples += other.samples;
    this.cannotWork += other.cannotWork;
    this.restsOutside += other.restsOutside;
    this.grids.forEach((grid, i) => {
      grid.merge(other.grids[i]);
    });
    this.settle.merge(other.settle);
    for (const key of Object.keys(this.atNominal) as (keyof Ends)[]) {
      this.atNominal[key] += other.atNominal[key];
    }
    this.latest = Math.max(this.latest, other.latest);
  }
}

export const GRIDS = 5;
/** Samples whose outcome is kept one by one, for the drivers: the first ones of the study. */
export const DRIVER_SAMPLES = 8192;

/** What the drivers of the setting needed are worked out from, for samples `from` … `from + needed.length − 1`. Infinite is never. */
export interface DriverRows {
  readonly from: number;
  /** Least setting from which on this sample is caught, s. */
  readonly needed: Float64Array;
}

/** The tally of a range of samples. */
export interface Tally {
  readonly from: number;
  readonly to: number;
  readonly animals: readonly AnimalTally[];
  readonly rows: DriverRows;
  /** The low-discrepancy points that go with these samples; none in `emptyTally`. */
  readonly points: PointRow;
}

export function emptyTally(from: number, to: number, animals: number): Tally {
  const kept = Math.max(0, Math.min(to, DRIVER_SAMPLES) - from);
  return {
    from,
    to,
    animals: Array.from({ length: animals }, () => new AnimalTally()),
    rows: { from, needed: new Float64Array(kept) },
    points: { from: 0, settle: new Float64Array(0) },
  };
}
