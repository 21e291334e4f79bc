/**
 * The study's low-discrepancy points: scrambled Sobol' points in the uniform numbers of a sample, for what needs no bound (settle
 * quantiles, drivers). The plain samples do not depend on them.
 *
 * Replicates are scrambled independently of each other, so that their spread tells the error. For the total indices some points
 * are swung again with one input moved, to the value that further dimensions of the same point give it.
 */
import { studyInputs } from "./inputs.ts";
import type { StudyRequest } from "./request.ts";
import { ANIMAL_DRAW, DIRECTION_DRAW, FIRST_INPUT } from "./sampled-door.ts";
import { SOBOL_DIMENSIONS, SobolPoints } from "./sobol.ts";
import { sampleStream, type Uniform } from "./stream.ts";

/** Replicates: seven tell an error to about a third of itself. */
const REPLICATES = 7;
/** Points of a replicate: as a share of the samples, in powers of two between these. */
const SHARE = 1 / 11;
const LEAST_SIZE = 64;
const MOST_SIZE = 1024;
/** Points of a replicate that are swung again with each input moved. */
const LEAST_MOVED = 4;
const MOVED_SHARE = 1 / 64;

/** Streams of random numbers beyond those of any sample: scramblings, and numbers beyond the dimensions of the sequence. */
const SCRAMBLINGS = 2 ** 32;
const PADDING = 2 ** 33;

/** One number drawn per sample: the input it stands for, and its place among the draws. */
export interface DrawnKey {
  /** The door file's key path; "passage.animal" and "passage.direction" for what differs from pass to pass by itself. */
  readonly key: string;
  readonly draw: number;
}

/** Which points there are: `replicates` × `size`, then every moved point, input by input. */
export interface PointPlan {
  readonly replicates: number;
  readonly size: number;
  readonly moved: number;
  readonly keys: readonly DrawnKey[];
  /** Uniform numbers of a point. */
  readonly draws: number;
  /** Swings in all. */
  readonly count: number;
}

/** What may drive a study's results, in the order of the draws. The animal is one only where there are several. */
export function drawnKeys({ door }: StudyRequest): DrawnKey[] {
  const inputs = studyInputs(door).inputs.map(({ key }, i) => ({ key, draw: FIRST_INPUT + i }));
  const direction = { key: "passage.direction", draw: DIRECTION_DRAW };
  const animal = { key: "passage.animal", draw: ANIMAL_DRAW };
  return door.animals.length > 1 ? [animal, direction, ...inputs] : [direction, ...inputs];
}

export function pointPlan(request: StudyRequest): PointPlan {
  const wanted = 2 ** Math.floor(Math.log2((request.samples * SHARE) / REPLICATES));
  const size = Math.max(LEAST_SIZE, Math.min(MOST_SIZE, wanted));
  const moved = Math.max(LEAST_MOVED, size * MOVED_SHARE);
  const keys = drawnKeys(request);
  const draws = Math.max(...keys.map(({ draw }) => draw)) + 1;
  const count = REPLICATES * (size + moved * keys.length);
  return { replicates: REPLICATES, size, moved, keys, draws, count };
}

/** Points that are due before a sample: they go with the samples, so that any share of these brings its share of those. */
export function pointsBefore({ count }: PointPlan, samples: number, sample: number): number {
  return Math.ceil((sample * count) / samples);
}

/** Which point a place among all swings is: replicate, index in it, and the place among the keys of the input moved, or −1. */
function pointAt({ replicates, size, moved, keys }: PointPlan, place: number): [number, number, number] {
  const extra = place - replicates * size;
  if (extra < 0) return [Math.floor(place / size), place % size, -1];
  const point = Math.floor(extra / keys.length);
  return [Math.floor(point / moved), point % moved, extra % keys.length];
}

/** The place of a point with an input moved. */
export function movedPlace(plan: PointPlan, replicate: number, index: number, key: number): number {
  const { replicates, size, moved, keys } = plan;
  return replicates * size + (replicate * moved + index) * keys.length + key;
}

/** The points' uniform numbers. */
export class StudyPoints {
  readonly plan: PointPlan;
  private readonly seed: number;
  private readonly nets: SobolPoints[] = [];
  /** A point's numbers, then those that its inputs are moved to. */
  private readonly numbers: Float64Array;

  constructor(request: StudyRequest) {
    this.plan = pointPlan(request);
    this.seed = request.seed;
    this.numbers = new Float64Array(2 * this.plan.draws);
  }

  /** A replicate's scrambling, made when it is first needed. */
  private net(replicate: number): SobolPoints {
    const made = this.nets[replicate];
    if (made !== undefined) return made;
    const dimensions = Math.min(SOBOL_DIMENSIONS, this.numbers.length);
    const net = new SobolPoints(dimensions, sampleStream(this.seed, SCRAMBLINGS + replicate));
    this.nets[replicate] = net;
    return net;
  }

  /** The numbers of the swing at a place, from 0 to `plan.count` − 1. */
  draw(place: number, out: Float64Array): void {
    const { plan, numbers } = this;
    const [replicate, index, key] = pointAt(plan, place);
    this.net(replicate).point(index, numbers);
    this.pad(replicate * plan.size + index);
    for (let i = 0; i < plan.draws; i++) out[i] = numbers[i];
    if (key < 0) return;
    const { draw } = plan.keys[key];
    out[draw] = numbers[plan.draws + draw];
  }

  /** Plain random numbers where the sequence has no dimension (Owen's "padding"; J. Complexity 14 (1998) 466). */
  private pad(point: number): void {
    if (this.numbers.length <= SOBOL_DIMENSIONS) return;
    const uniform: Uniform = sampleStream(this.seed, PADDING + point);
    for (let i = SOBOL_DIMENSIONS; i < this.numbers.length; i++) this.numbers[i] = uniform();
  }
}
