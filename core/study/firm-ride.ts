/**
 * Rides of doors with `RideBounds`: followed only until the outcome is sure, which for most is after a step or two.
 */
import type { RideSystem } from "../passage/relatch.ts";
import {
  advance,
  type Motion,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type Reached,
  startFromRest,
} from "../swing/motion.ts";
import { passCut } from "../swing/stops.ts";
import { TIME_LIMIT } from "../swing/swing.ts";
import type { SwingSystem } from "../swing/system.ts";
import { staticEnergy } from "../swing/torque.ts";
import type { FlapState } from "../swing/trace.ts";
import { type Foreseen, foresee } from "./foreseen.ts";
import { BEYOND, INSIDE, RIDING } from "./marks.ts";
import { RETURNS, type RideBounds, STICKS, stopAt, stopZone } from "./ride-bounds.ts";
import { CAUGHT, type OutcomeCode, SHUT_OUT, STUCK } from "./stretches.ts";

/** Events in a way, and the longest way told apart: a number in base `EVENTS`. */
const EVENTS = 64;
const LONGEST_WAY = EVENTS ** 6;

export class FirmRide {
  /** Shut out without turning once. */
  direct = false;
  /**
   * Energy at the end less what it takes to leave, J: above 0 where shut out, below 0 where the flap turned; it goes through 0
   * where the one gives way to the other. NaN where a fast flap was caught in passing.
   */
  excess = 0;
  /** Where it turned on its way; with the outcome, equal for rides between which no other outcome lies. */
  way = 0;
  protected readonly motion: Motion;
  private readonly found: Foreseen = { outcome: null, excess: Number.NaN };

  constructor(motion: Motion) {
    this.motion = motion;
  }

  /** Lets a bolt ride from `state`, where the flap is over the edge. */
  run(ride: RideSystem, bounds: RideBounds, state: FlapState): OutcomeCode {
    const { motion } = this;
    this.direct = false;
    place(motion, ride.system, state.time, state.angle, state.speed);
    this.way = 0;
    this.isSlow(ride, bounds);
    const energy = this.excess + bounds.toLeave;
    if (bounds.isCalm(ride, motion.angle, energy)) return this.calmEnd(ride, bounds);
    if (motion.speed !== 0) {
      const outcome = this.foreseen(ride, bounds, energy);
      if (outcome !== null) return outcome;
    } else {
      const end = this.stopped(ride, bounds);
      if (end !== null) return end;
    }
    return this.follow(ride, bounds);
  }

  /** Caught, by the way of a ride that was followed: one that moves out turns on its side first. */
  private calmEnd(ride: RideSystem, bounds: RideBounds): OutcomeCode {
    const { angle, speed } = this.motion;
    if ((angle - ride.latch.centre) * speed >= 0) this.note(1 + stopZone(ride, bounds, angle));
    return CAUGHT;
  }

  /** An end that is sure without following the ride; `null` where none is. */
  protected foreseen(ride: RideSystem, bounds: RideBounds, energy: number): OutcomeCode | null {
    const { found } = this;
    foresee(ride, bounds, this.motion, energy, found);
    if (found.outcome !== null) this.excess = found.excess;
    this.direct = found.outcome === SHUT_OUT;
    return found.outcome;
  }

  /** A flap that stopped on the edge: its end where that is sure, else it goes on. */
  private stopped(ride: RideSystem, bounds: RideBounds): OutcomeCode | null {
    const { motion } = this;
    const slow = this.isSlow(ride, bounds);
    this.note(1 + stopZone(ride, bounds, motion.angle));
    if (slow) {
      const stop = stopAt(ride, bounds, motion.angle);
      if (stop === RETURNS) return CAUGHT;
      if (stop === STICKS) return STUCK;
    }
    return startFromRest(motion, ride.system) ? null : STUCK;
  }

  private note(event: number): void {
    if (this.way < LONGEST_WAY) this.way = this.way * EVENTS + Math.min(event, EVENTS - 1);
  }

  /** Whether the flap has too little energy to leave any more. */
  private isSlow({ system }: RideSystem, { toLeave }: RideBounds): boolean {
    const { angle, speed } = this.motion;
    this.excess = staticEnergy(system, angle) + 0.5 * system.inertia * speed * speed - toLeave;
    return this.excess < 0;
  }

  private follow(ride: RideSystem, bounds: RideBounds): OutcomeCode {
    const { motion } = this;
    const { system, latch } = ride;
    let turns = 0;
    let engaged = Number.NaN;
    for (;;) {
      const zone = zoneOf(ride, motion.region);
      const slow = this.isSlow(ride, bounds);
      if (zone === BEYOND) {
        this.direct = turns === 0;
        return SHUT_OUT;
      }
      if (zone === INSIDE && slow) return CAUGHT;
      if (zone === RIDING) engaged = Number.NaN;
      else if (Number.isNaN(engaged)) engaged = motion.time + latch.again;
      const reached = this.carry(system, zone === INSIDE ? engaged : motion.time + TIME_LIMIT);
      if (reached === REACHED_CUT) passCut(motion, system);
      else if (reached === REACHED_TURN) {
        turns++;
        const end = zone === INSIDE ? this.stoppedInside(system) : this.stopped(ride, bounds);
        if (end !== null) return end;
      } else return this.unsure(reached === REACHED_TIME && zone === INSIDE ? CAUGHT : STUCK);
    }
  }

  /** To the next cut, turning point or moment: the one place where a ride is integrated. */
  protected carry(system: SwingSystem, end: number): Reached {
    return advance(this.motion, system, end, null);
  }

  private stoppedInside(system: SwingSystem): OutcomeCode | null {
    return startFromRest(this.motion, system) ? null : this.unsure(CAUGHT);
  }

  /** An end that says nothing about how near the other one was. */
  private unsure(outcome: OutcomeCode): OutcomeCode {
    this.excess = Number.NaN;
    return outcome;
  }
}

/** Where the bolt is while the flap is in a region of the ride's system. */
function zoneOf({ system, latch }: RideSystem, region: number): number {
  const away = Math.abs((system.cuts[region] + system.cuts[region + 1]) / 2 - latch.centre);
  return away <= latch.capture ? INSIDE : away <= latch.block ? RIDING : BEYOND;
}
