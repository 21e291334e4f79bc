/**
 * What becomes of the bolt when the hold ends: the relatch rule of the model, section 4, carried out on the swing itself.
 * A bolt that rides on the flap's edge slows the flap, so from there on the flap leaves its free swing and is integrated
 * anew with the bolt's drag.
 */
import type { LatchMechanics } from "../parts/latch.ts";
import {
  advance,
  type Motion,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type StepObserver,
  startFromRest,
} from "../swing/motion.ts";
import { passCut } from "../swing/stops.ts";
import { TIME_LIMIT } from "../swing/swing.ts";
import { recut, risingCuts, type SwingSystem } from "../swing/system.ts";
import type { FlapState, Trace } from "../swing/trace.ts";

export type Outcome = "caught" | "stuck" | "shut out" | "under the animal";

export interface Relatch {
  readonly outcome: Outcome;
  /** s after let-go at which the outcome is decided. */
  readonly time: number;
  /** Kinetic energy of the flap then, J: what an impact on the bolt would have to take. */
  readonly energy: number;
}

const INSIDE = 0;
const RIDING = 1;
const BEYOND = 2;

/** The swing's equation with the bolt's drag outside the capture band, and where the bolt is in each region. */
export interface RideSystem {
  readonly system: SwingSystem;
  /** Per region: INSIDE, RIDING or BEYOND. */
  readonly place: Uint8Array;
  readonly latch: LatchMechanics;
}

/** Cuts the regions of a swing once more at the latch's angles and adds the riding bolt's friction where it rides. */
export function rideSystem(free: SwingSystem, latch: LatchMechanics): RideSystem {
  const { centre, capture, block } = latch;
  const all: number[] = [];
  for (let i = 0; i < free.cuts.length; i++) all.push(free.cuts[i]);
  for (const edge of [centre - block, centre - capture, centre + capture, centre + block]) {
    if (Math.abs(edge) < free.stopAngle) all.push(edge);
  }
  const cuts = risingCuts(all);
  const regions = cuts.length - 1;
  const where = new Uint8Array(regions);
  const damping = new Float64Array(regions);
  const friction = new Float64Array(regions);
  const sealFriction = new Float64Array(regions);
  const longestGlide = new Float64Array(regions);
  for (let i = 0, old = 0; i < regions; i++) {
    const middle = (cuts[i] + cuts[i + 1]) / 2;
    while (free.cuts[old + 1] < middle) old++;
    const away = Math.abs(middle - centre);
    where[i] = away <= capture ? INSIDE : away <= block ? RIDING : BEYOND;
    damping[i] = free.damping[old];
    friction[i] = free.friction[old] + (where[i] === INSIDE ? 0 : latch.rideTorque);
    sealFriction[i] = free.sealFriction[old];
    longestGlide[i] = free.longestGlide[old];
  }
  const system = recut(free, { cuts, damping, friction, sealFriction, longestGlide });
  return { system, place: where, latch };
}

/**
 * The outcome of a hold that ends `holdEnds` seconds after let-go (negative: before), with the coil's release time on top.
 * `motion` and `state` are scratch that the call may overwrite; the trace is only read.
 */
export function relatch(
  ride: RideSystem,
  free: SwingSystem,
  trace: Trace,
  holdEnds: number,
  releaseTime: number,
  motion: Motion,
  state: FlapState,
): Relatch {
  if (holdEnds < 0) return { outcome: "under the animal", time: holdEnds + releaseTime, energy: 0 };
  const mouth = holdEnds + releaseTime + ride.latch.toMouth;
  trace.at(free, mouth, state);
  return boltAtMouth(ride, state, motion);
}

/**
 * The rule from the moment the tip is at the slot's mouth, with the flap in `state`. An observer sees every step of the
 * flap until the outcome is decided.
 */
export function boltAtMouth(
  ride: RideSystem,
  state: FlapState,
  motion: Motion,
  observer: StepObserver | null = null,
): Relatch {
  const { latch, system } = ride;
  const away = Math.abs(state.angle - latch.centre);
  if (away > latch.block) return ended("shut out", system, state.time, state.speed);
  place(motion, system, state.time, state.angle, state.speed);
  const deadline = away <= latch.capture ? state.time + latch.toEngagement - latch.toMouth : Number.NaN;
  return follow(ride, motion, deadline, observer);
}

/** Follows flap and bolt until one of the ends; `deadline` is when the bolt is engaged if the flap stays inside. */
function follow(
  ride: RideSystem,
  motion: Motion,
  deadlineAtStart: number,
  observer: StepObserver | null,
): Relatch {
  const { system, latch } = ride;
  let deadline = deadlineAtStart;
  if (motion.speed === 0 && !startFromRest(motion, system)) return atRest(system, motion, deadline);
  for (;;) {
    const where = ride.place[motion.region];
    if (where === BEYOND) return ended("shut out", system, motion.time, motion.speed);
    if (where === RIDING) deadline = Number.NaN;
    else if (Number.isNaN(deadline)) deadline = motion.time + latch.again;
    const reached = advance(motion, system, where === INSIDE ? deadline : TIME_LIMIT + motion.time, observer);
    if (reached === REACHED_TIME && where === INSIDE) return ended("caught", system, deadline, motion.speed);
    if (reached === REACHED_CUT) {
      if (passCut(motion, system)) return atRest(system, motion, deadline);
    } else if (reached === REACHED_TURN) {
      if (!startFromRest(motion, system)) return atRest(system, motion, deadline);
    } else return ended("stuck", system, motion.time, motion.speed);
  }
}

/** A flap that stopped: inside, the bolt comes up in its time; outside, it stands on the edge for good. */
function atRest(system: SwingSystem, motion: Motion, deadline: number): Relatch {
  if (Number.isNaN(deadline)) return ended("stuck", system, motion.time, 0);
  return ended("caught", system, deadline, 0);
}

function ended(outcome: Outcome, system: SwingSystem, time: number, speed: number): Relatch {
  return { outcome, time, energy: 0.5 * system.inertia * speed * speed };
}
