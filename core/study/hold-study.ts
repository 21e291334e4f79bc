/** The answer of a tolerance study: plain data, exactly what is printed, drawn and saved. */
import { counted } from "../quantity/format.ts";
import { CONFIDENCE, lowerBound, samplesNeeded } from "./binomial.ts";
import { type Counts, type CurvePoint, countsOf, curvePoints, recommendedPlace, settingAt } from "./curve.ts";
import { gridSpacing } from "./grid.ts";
import { BIN_WIDTH, TimeHistogram } from "./histogram.ts";
import { studyInputs } from "./inputs.ts";
import type { StudyRequest } from "./request.ts";
import { longestCurve, type StudyTimer, studyTimer } from "./sample-run.ts";
import { mergedTimes, pointTimes, type SettleFigures, settleFigures } from "./settle-quantiles.ts";
import { type Driver, neededDrivers, pointWords, settleDrivers } from "./study-drivers.ts";
import { studyNotes, whyNone } from "./study-words.ts";
import { type AnimalTally, type Cause, type Ends, noEnds } from "./tally.ts";
import type { StudyTotal } from "./total.ts";

/** What the study says of one animal, or of the mixture of all. */
export interface HoldAnswer extends SettleFigures {
  readonly samples: number;
  /** Least nominal setting from which on the bound stays at the target, s; `null`: none will do. */
  readonly recommended: number | null;
  /** Share caught at it, and its lower bound; `null` without it. */
  readonly probability: number | null;
  readonly lowerBound: number | null;
  readonly curve: readonly CurvePoint[];
  /** Shares of all samples that are not caught at `causesAt`, each sample once. */
  readonly causes: Readonly<Record<Cause, number>>;
  /** The recommended setting, else the timer's nominal, else (no timer) the curve's end, s. */
  readonly causesAt: number;
  /** Why there is no recommendation; `null` where there is one. */
  readonly whyNone: string | null;
}

export interface AnimalAnswer extends HoldAnswer {
  readonly name: string;
}

/** How one input was spread, for the reader of the answer. */
export interface InputNote {
  readonly key: string;
  readonly source: "assumption" | "file" | "maker";
  readonly reason: string;
}

export interface HoldStudy extends HoldAnswer {
  readonly door: string;
  readonly seed: number;
  /** Target probability, and the confidence of every bound. */
  readonly reliability: number;
  readonly confidence: number;
  /** Fewest samples that can show the target at all. */
  readonly samplesNeeded: number;
  /** Steps in which settings are counted, s: a recommendation may be this late, never early. */
  readonly settingStep: number;
  /** Resolution of the settle times, s. */
  readonly settleStep: number;
  /** What the settle times were worked out from. */
  readonly settleFrom: string;
  /** What drives the settle time, and what drives the setting that a sample needs; the strongest first. */
  readonly drivers: readonly Driver[];
  readonly holdDrivers: readonly Driver[];
  /** Per animal where there are several, each on its share of the samples; empty for one. */
  readonly animals: readonly AnimalAnswer[];
  /** Place of the animal that needs the longest hold (none will do is longest, ties: the first); `null` for one animal. */
  readonly worst: number | null;
  readonly inputs: readonly InputNote[];
  /** Sentences to stand beside the figures. */
  readonly notes: readonly string[];
}

/** The answer from all of a study's samples. */
export function holdStudy(request: StudyRequest, total: StudyTotal): HoldStudy {
  const { door, seed } = request;
  const { reliability } = door.study;
  const spacing = gridSpacing(longestCurve(request));
  const timer = studyTimer(request);
  const answer = (animals: readonly AnimalTally[], points: readonly TimeHistogram[]) =>
    answerOf(animals, points, spacing, timer, reliability);
  const times = pointTimes(request, total.points);
  const mixture = answer(total.animals, mergedTimes(times));
  const several = door.animals.length > 1;
  const animals = several
    ? total.animals.map((tally, i) => ({ name: door.animals[i].name, ...answer([tally], times[i]) }))
    : [];
  const { inputs, unused } = studyInputs(door);
  const worst = several ? longestNeeded(animals) : null;
  return {
    door: door.name,
    seed,
    reliability,
    confidence: CONFIDENCE,
    samplesNeeded: samplesNeeded(reliability),
    settingStep: spacing,
    settleStep: BIN_WIDTH,
    settleFrom: `${counted(request.samples, "plain sample")} and ${pointWords(total.plan)}, weighed by their precision`,
    ...mixture,
    drivers: settleDrivers(request, total.points),
    holdDrivers: neededDrivers(request, total.needed),
    animals,
    worst,
    inputs: inputs.map(({ key, source, reason }) => ({ key, source, reason })),
    notes: studyNotes({ door, mixture, worst: worst === null ? null : animals[worst], unused }),
  };
}

function longestNeeded(animals: readonly AnimalAnswer[]): number {
  const needs = animals.map(({ recommended }) => recommended ?? Number.POSITIVE_INFINITY);
  return needs.indexOf(Math.max(...needs));
}

function answerOf(
  animals: readonly AnimalTally[],
  points: readonly TimeHistogram[],
  spacing: number,
  timer: StudyTimer,
  reliability: number,
): HoldAnswer {
  const counts = countsOf(animals, spacing, timer.leastFactor);
  const { samples } = counts;
  const place = recommendedPlace(counts, reliability);
  const atNominal = place === null && timer.nominal !== null;
  const ends = atNominal ? nominalEnds(animals) : endsAt(counts, place ?? counts.size - 1);
  const causesAt = atNominal ? (timer.nominal as number) : settingAt(place ?? counts.size - 1, spacing);
  const final = counts.caughtThroughout[counts.size - 1];
  const figures = {
    samples,
    recommended: place === null ? null : settingAt(place, spacing),
    probability: place === null ? null : counts.caught[place] / samples,
    lowerBound: place === null ? null : lowerBound(counts.caught[place], samples),
    ...settleFigures(settleTimes(animals), points),
    curve: curvePoints(counts, place),
    causes: shares(ends, samples),
    causesAt,
  };
  const none = { reliability, samples, caughtAtEnd: final, causes: figures.causes, causesAt };
  return { ...figures, whyNone: place === null ? whyNone(none) : null };
}

/** Ends of all samples at a setting of the grid; what is not counted there rests outside. */
function endsAt(counts: Counts, place: number): Ends {
  const caught = counts.caught[place];
  const underAnimal = counts.underAnimal[place];
  const stuck = counts.stuck[place];
  const shutOut = counts.shutOut[place];
  const { cannotWork, samples } = counts;
  const restsOutside = samples - cannotWork - caught - underAnimal - stuck - shutOut;
  return { caught, cannotWork, restsOutside, underAnimal, stuck, shutOut };
}

function nominalEnds(animals: readonly AnimalTally[]): Ends {
  const sum = noEnds();
  for (const { atNominal } of animals) {
    for (const key of Object.keys(sum) as (keyof Ends)[]) sum[key] += atNominal[key];
  }
  return sum;
}

function shares(ends: Ends, samples: number): Record<Cause, number> {
  const share = (count: number) => (samples === 0 ? 0 : count / samples);
  return {
    "cannot work": share(ends.cannotWork),
    "rests outside": share(ends.restsOutside),
    "under the animal": share(ends.underAnimal),
    stuck: share(ends.stuck),
    "shut out": share(ends.shutOut),
  };
}

function settleTimes(animals: readonly AnimalTally[]): TimeHistogram {
  const all = new TimeHistogram();
  for (const { settle } of animals) all.merge(settle);
  return all;
}
