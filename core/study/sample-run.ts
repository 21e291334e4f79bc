/** Samples one by one into a tally: draw, swing, read the outcome at every setting, count. One per worker. */
import { timerResult } from "../parts/timer.ts";
import { Motion } from "../swing/motion.ts";
import { type Swing, SwingRun, TIME_LIMIT } from "../swing/swing.ts";
import { Trace } from "../swing/trace.ts";
import { cellsUntil, gridSpacing, settingFrom } from "./grid.ts";
import { type StudyInput, studyInputs } from "./inputs.ts";
import { MouthOutcomes } from "./mouth-outcomes.ts";
import { PointRun } from "./point-run.ts";
import type { StudyRequest } from "./request.ts";
import { RestBound } from "./rest-bound.ts";
import { SampledDoor } from "./sampled-door.ts";
import { spreadValue } from "./spread.ts";
import { sampleStream } from "./stream.ts";
import { CAUGHT, STUCK, type Stretches } from "./stretches.ts";
import { type AnimalTally, type Ends, emptyTally, type Tally } from "./tally.ts";

/** Where the outcome changes along a riding passage is found to this, s, a tenth of a grid step; the doubt counts as the worse outcome. */
const SHARP = 1e-3;

/** Settings of a timer, s. */
export interface StudyTimer {
  /** `null` without a timer section: the setting is then the hold itself. */
  readonly nominal: number | null;
  /** Least that the maker's tolerances leave of a setting, over it. */
  readonly leastFactor: number;
}

export function studyTimer({ door }: StudyRequest): StudyTimer {
  if (door.timer === null) return { nominal: null, leastFactor: 1 };
  const { nominal, shortest } = timerResult(door.timer, null);
  return { nominal, leastFactor: shortest / nominal };
}

/** What a curve could at most end at, s of setting: the slowest walk, a swing to its bound, the shortest timer. */
export function longestCurve(request: StudyRequest): number {
  const { door } = request;
  const { inputs } = studyInputs(door);
  const walks = door.animals.map((animal, i) => {
    const spread = inputs.find(({ key }) => key === `animals.${i}.speed`)?.spread;
    const slowest = spread === undefined ? animal.speed : spreadValue(spread, 1e-6);
    return (door.detection.range + animal.bodyLength + door.flap.height + door.flap.hingeOffset) / slowest;
  });
  return (Math.max(...walks) + TIME_LIMIT) / studyTimer(request).leastFactor;
}

export class SampleRun {
  readonly inputs: readonly StudyInput[];
  readonly spacing: number;
  readonly sampled: SampledDoor;
  readonly points: PointRun;
  private readonly seed: number;
  private readonly nominal: number;
  private readonly swingRun = new SwingRun(new Motion(), new Trace());
  private readonly outcomes: MouthOutcomes;
  private readonly restBound = new RestBound();

  constructor(request: StudyRequest) {
    this.inputs = studyInputs(request.door).inputs;
    this.sampled = new SampledDoor(request.door, this.inputs);
    this.seed = request.seed;
    this.nominal = studyTimer(request).nominal ?? Number.NaN;
    this.spacing = gridSpacing(longestCurve(request));
    this.outcomes = new MouthOutcomes(this.swingRun.trace, new Motion());
    this.points = new PointRun(request, this.sampled, this.swingRun);
  }

  /** Swings sample `index` and counts it in; what the drivers need is left in the tally's rows. */
  add(index: number, tally: Tally): void {
    this.sampled.draw(sampleStream(this.seed, index));
    this.addDrawn(index, tally);
  }

  /** The same of what `sampled` has taken, whoever drew it. */
  addDrawn(index: number, tally: Tally): void {
    const { sampled, swingRun } = this;
    const animal = tally.animals[sampled.animal];
    animal.samples++;
    let settle = Number.POSITIVE_INFINITY;
    let needed = Number.POSITIVE_INFINITY;
    if (sampled.works) {
      const swing = swingRun.runUntilSettled(sampled.system, sampled.angle, sampled.speed);
      settle = swing.settleTime ?? settle;
      needed = this.count(swing, animal);
    } else {
      animal.cannotWork++;
      animal.atNominal.cannotWork++;
    }
    animal.settle.add(settle);
    const row = index - tally.rows.from;
    if (row < tally.rows.needed.length) tally.rows.needed[row] = needed;
  }

  /** Counts the outcomes of a swing at all settings; returns the least setting from which on it is caught, s. */
  private count(swing: Swing, animal: AnimalTally): number {
    const { sampled } = this;
    const stretches = this.outcomes.find(sampled.system, sampled.ride, SHARP);
    const restsOutside = swing.settleTime === null;
    if (restsOutside) animal.restsOutside++;
    this.countEnd(swing, animal);
    const open = Math.max(0, sampled.lag / sampled.timerFactor);
    if (!restsOutside) animal.underAnimal.add(0, settingFrom(open, this.spacing));
    this.countStretches(stretches, open, restsOutside, animal);
    this.countNominal(stretches, restsOutside, animal.atNominal);
    return this.neededSetting(stretches, open);
  }

  /** The end of this sample, where it may be the latest: a settled flap is followed to rest only then. */
  private countEnd({ status, endTime }: Swing, animal: AnimalTally): void {
    const { lag, delay, system } = this.sampled;
    let end = endTime;
    if (status === "settled") {
      const { motion } = this.swingRun;
      const longest = lag + end + this.restBound.find(system, motion.angle) + delay;
      if (longest <= animal.latest) return;
      end = this.swingRun.goOn(system);
    }
    animal.latest = Math.max(animal.latest, lag + end + delay);
  }

  /** Setting at which the tip is at the mouth at a moment after let-go, s. */
  private settingOf(mouth: number): number {
    const { delay, lag, timerFactor } = this.sampled;
    return (mouth - delay + lag) / timerFactor;
  }

  private countStretches(
    stretches: Stretches,
    open: number,
    restsOutside: boolean,
    animal: AnimalTally,
  ): void {
    const { spacing } = this;
    let shutFrom = settingFrom(open, spacing);
    for (let i = stretches.count - 1; i >= 0; i--) {
      const low = Math.max(open, this.settingOf(stretches.from[i]));
      const high = this.settingOf(stretches.to[i]);
      if (!(high > low)) continue;
      const from = settingFrom(low, spacing);
      const to = settingFrom(high, spacing);
      const caught = stretches.code[i] === CAUGHT;
      if (caught) {
        animal.caught.add(from, to);
        animal.caughtThroughout.add(from, cellsUntil(high, spacing));
      } else if (!restsOutside) animal.stuck.add(from, to);
      if (!restsOutside) animal.shutOut.add(shutFrom, from);
      shutFrom = to;
    }
    if (!restsOutside) animal.shutOut.add(shutFrom, Number.POSITIVE_INFINITY);
  }

  private countNominal(stretches: Stretches, restsOutside: boolean, ends: Ends): void {
    const { sampled, nominal } = this;
    if (Number.isNaN(nominal)) return;
    const holdEnds = nominal * sampled.timerFactor - sampled.lag;
    const outcome = stretches.at(holdEnds + sampled.delay);
    if (holdEnds >= 0 && outcome === CAUGHT) ends.caught++;
    else if (restsOutside) ends.restsOutside++;
    else if (holdEnds < 0) ends.underAnimal++;
    else if (outcome === STUCK) ends.stuck++;
    else ends.shutOut++;
  }

  private neededSetting(stretches: Stretches, open: number): number {
    const endless =
      stretches.count > 0 && stretches.to[0] === Number.POSITIVE_INFINITY && stretches.code[0] === CAUGHT;
    return endless ? Math.max(open, this.settingOf(stretches.from[0])) : Number.POSITIVE_INFINITY;
  }
}

/** Counts samples `from` … `to` − 1 and swings the points that go with them; `run` may be kept for further ranges of the same request. */
export function countRange(run: SampleRun, request: StudyRequest, from: number, to: number): Tally {
  const tally = emptyTally(from, to, request.door.animals.length);
  for (let index = from; index < to; index++) run.add(index, tally);
  return { ...tally, points: run.points.row(from, to) };
}
