/**
 * Figures of a door whose toleranced inputs spread, for maps: estimates from one scrambled net of Sobol' points, the study's first
 * replicate. The points are the same in every door, so that a map shows what the inputs do and no noise between its places.
 * Nothing here carries a bound: that is what `hold` is for.
 */
import type { Door } from "../door/door.ts";
import { TimeHistogram } from "./histogram.ts";
import type { Figure, KnownDoor, Review } from "./map-review.ts";
import { DEFAULT_SAMPLES, DEFAULT_SEED, requestFaults } from "./request.ts";
import { SampleRun } from "./sample-run.ts";
import { SAMPLED_FIGURES, type SampledKey } from "./sampled-names.ts";
import { StudyPoints } from "./study-points.ts";
import { emptyTally, type Tally } from "./tally.ts";

/** The points swung and counted like samples. */
interface Sampled {
  readonly door: Door;
  readonly count: number;
  readonly tally: Tally;
}

/** `null` where the door cannot be studied. */
function sampledDoor(door: Door): Sampled | null {
  const request = { door, samples: DEFAULT_SAMPLES, seed: DEFAULT_SEED };
  if (requestFaults(request).length > 0) return null;
  const points = new StudyPoints(request);
  const run = new SampleRun(request);
  const count = points.plan.size;
  const tally = emptyTally(0, count, door.animals.length);
  for (let place = 0; place < count; place++) {
    points.draw(place, run.sampled.draws);
    run.sampled.take();
    run.addDrawn(place, tally);
  }
  return { door, count, tally };
}

/** Quantile of times of which some may be never; `null` where that one is. */
function quantileOf(times: Iterable<number>, p: number): number | null {
  const all = new TimeHistogram();
  for (const time of times) all.add(time);
  return all.quantile(p);
}

function settleQuantile({ tally }: Sampled, p: number): number | null {
  const all = new TimeHistogram();
  for (const { settle } of tally.animals) all.merge(settle);
  return all.quantile(p);
}

function shareOf({ tally, count }: Sampled, of: (animal: Tally["animals"][number]) => number): number {
  return tally.animals.reduce((sum, animal) => sum + of(animal), 0) / count;
}

const VALUES: Readonly<Record<SampledKey, (sampled: Sampled) => number | null>> = {
  "sampled.settle50": (sampled) => settleQuantile(sampled, 0.5),
  "sampled.settle95": (sampled) => settleQuantile(sampled, 0.95),
  "sampled.hold95": ({ tally }) => quantileOf(tally.rows.needed, 0.95),
  "sampled.caught": (sampled) => {
    if (sampled.door.timer === null) return null;
    return shareOf(sampled, ({ atNominal }) => atNominal.caught);
  },
  "sampled.restsOutside": (sampled) =>
    shareOf(sampled, ({ restsOutside, cannotWork }) => restsOutside + cannotWork),
};

/** The figures; asked for several of one computed door, they swing it once. */
export function sampledFigures<C extends KnownDoor>(): Figure<C>[] {
  let last: { readonly door: Door; readonly sampled: Sampled | null } | null = null;
  const sampledOf = (door: Door) => {
    if (last?.door !== door) last = { door, sampled: sampledDoor(door) };
    return last.sampled;
  };
  return SAMPLED_FIGURES.map((figure) => ({
    ...figure,
    value: ({ door }) => {
      const sampled = sampledOf(door);
      return sampled === null ? null : VALUES[figure.name](sampled);
    },
  }));
}

/** A review with the sampled figures among its own. */
export function withSampled<C extends KnownDoor>(review: Review<C>): Review<C> {
  return { ...review, figures: [...review.figures, ...sampledFigures<C>()] };
}
