/**
 * One passage, from detection to relatch, and the hold it needs (model, section 6). Times in s from detection
 * unless said otherwise; angles in rad. The swing itself is computed elsewhere and comes in as its settle time.
 */
import type { Animal, Detection, Release } from "../door/door.ts";
import { type Carry, carry } from "../parts/animal.ts";

export interface Passage extends Carry {
  /** Detection to the nose at the frame. */
  readonly arrivalTime: number;
  /** Detection to the let-go of the flap. */
  readonly letGoTime: number;
  /** Last pulse that is sure to be counted. */
  readonly lastPulse: number;
}

/** Detection to the nose at the frame, s: range/speed. */
export function arrivalTime(range: number, speed: number): number {
  return range / speed;
}

/** t_p = max(0, min(let-go, arrival + far-side range/speed − pulse interval)), s. */
export function lastPulse(
  letGo: number,
  arrival: number,
  farSideRange: number,
  speed: number,
  pulseInterval: number,
): number {
  return Math.max(0, Math.min(letGo, arrival + farSideRange / speed - pulseInterval));
}

/** The passage of one animal: hinge at `hingeHeight` above the floor, flap `reach` long, m, stop at `stopAngle`, rad. */
export function passage(
  animal: Animal,
  detection: Detection,
  hingeHeight: number,
  reach: number,
  stopAngle: number,
): Passage {
  const carried = carry(animal, hingeHeight, reach, stopAngle);
  const arrival = arrivalTime(detection.range, animal.speed);
  const letGo = arrival + carried.passTime;
  const { farSideRange, pulseInterval } = detection;
  return {
    letGoAngle: carried.letGoAngle,
    passTime: carried.passTime,
    failures: carried.failures,
    arrivalTime: arrival,
    letGoTime: letGo,
    lastPulse: lastPulse(letGo, arrival, farSideRange, animal.speed, pulseInterval),
  };
}

/** How the swing starts; it is run in both directions where they differ. */
export interface ReleaseState {
  /** rad, within the stops. */
  readonly angle: number;
  /** rad/s. */
  readonly speed: number;
}

/** The swing's initial state: the passage's let-go at rest, or what the door's `release` section puts in its place. */
export function releaseState(letGoAngle: number, release: Release, stopAngle: number): ReleaseState {
  const angle = release.angle ?? letGoAngle;
  return { angle: Math.max(-stopAngle, Math.min(angle, stopAngle)), speed: release.speed };
}

/** Time zero of the hold, s from detection: the last counted pulse, or the detection itself for a one-trigger timer. */
export function holdStart(passed: Passage, retriggers: boolean): number {
  return retriggers ? passed.lastPulse : 0;
}

/** When a hold ends, s after let-go; negative is under the animal. */
export function holdEnd(passed: Passage, retriggers: boolean, hold: number): number {
  return holdStart(passed, retriggers) + hold - passed.letGoTime;
}

/**
 * The hold that lets the flap settle first, s: max(settle + let-go − t_p, 2 pulse intervals) retriggered,
 * let-go + settle with one trigger. `null` where no hold is sure: the flap never settles, or can rest outside.
 */
export function holdNeeded(
  passed: Passage,
  settleTime: number | null,
  retriggers: boolean,
  pulseInterval: number,
): number | null {
  if (settleTime === null) return null;
  const need = settleTime + passed.letGoTime - holdStart(passed, retriggers);
  return retriggers ? Math.max(need, 2 * pulseInterval) : need;
}

/**
 * Which animal needs the longest hold, as its place in the list: `null` (no hold does) counts as longest, the
 * first of equals wins. −1 for an empty list.
 */
export function governing(needs: readonly (number | null)[]): number {
  const lengths = needs.map((need) => need ?? Number.POSITIVE_INFINITY);
  return lengths.indexOf(Math.max(...lengths));
}

export interface HoldResult {
  /** s, without the margin. */
  readonly need: number | null;
  /** (1 + margin) need, s. */
  readonly required: number | null;
  /** What to set so that the shortest timer still holds for `required`, s: required × nominal/shortest. */
  readonly setting: number | null;
  /** The shortest the timer may hold is below the need: it can relatch too soon. */
  readonly tooShort: boolean;
  /** Long enough, but the margin is eaten into. */
  readonly withinMargin: boolean;
  /** The shortest hold ends before let-go: the bolt rises under the animal. */
  readonly underAnimal: boolean;
}

/** The timer as the hold sees it. */
export interface HoldTimer {
  readonly nominal: number;
  readonly shortest: number;
  readonly retriggers: boolean;
}

/**
 * The hold of one passage against one timer. Without a timer the need is that of a retriggered one (the door
 * file's default), nothing is judged and there is no setting; nor is there one where the timer's shortest is 0.
 */
export function holdResult(
  passed: Passage,
  settleTime: number | null,
  timer: HoldTimer | null,
  pulseInterval: number,
  margin: number,
): HoldResult {
  const retriggers = timer?.retriggers ?? true;
  const need = holdNeeded(passed, settleTime, retriggers, pulseInterval);
  const required = need === null ? null : (1 + margin) * need;
  if (timer === null) {
    return { need, required, setting: null, tooShort: false, withinMargin: false, underAnimal: false };
  }
  const { nominal, shortest } = timer;
  const tooShort = need === null || shortest < need;
  return {
    need,
    required,
    setting: required === null || !(shortest > 0) ? null : (required * nominal) / shortest,
    tooShort,
    withinMargin: !tooShort && required !== null && shortest < required,
    underAnimal: holdEnd(passed, retriggers, shortest) < 0,
  };
}
