/**
 * Flaps that cannot stop with the bolt riding on their edge: everywhere there they are pulled back by more than friction can
 * hold. Such a ride ends in the slot, or the flap leaves with the energy to get past the edge; which of the two is known as soon as
 * the energy is too little, with no need to follow the flap until the bolt is engaged.
 */
import type { RideSystem } from "../passage/relatch.ts";
import {
  advance,
  type Motion,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  startFromRest,
} from "../swing/motion.ts";
import { passCut } from "../swing/stops.ts";
import { TIME_LIMIT } from "../swing/swing.ts";
import { frictionAt, type SwingSystem } from "../swing/system.ts";
import { staticEnergy, staticTorque } from "../swing/torque.ts";
import type { FlapState } from "../swing/trace.ts";
import { BEYOND, INSIDE, RIDING } from "./marks.ts";
import { CAUGHT, type OutcomeCode, SHUT_OUT, STUCK } from "./stretches.ts";

/** Places looked at on each side of the slot; the torque is smooth on the scale of the edge's width. */
const LOOKS = 24;

/** True where a riding flap never stops for good but in the slot. */
export function neverSticks({ system, latch }: RideSystem): boolean {
  const { centre, capture, block } = latch;
  if (Math.abs(centre) + block >= system.stopAngle) return false;
  for (let i = 0; i <= LOOKS; i++) {
    const away = capture + ((block - capture) * i) / LOOKS;
    if (!returns(system, centre + away, -1) || !returns(system, centre - away, 1)) return false;
  }
  return true;
}

/** Whether a flap at rest is pulled in a direction by more than its friction, and has friction to lose its energy to. */
function returns(system: SwingSystem, angle: number, direction: number): boolean {
  const friction = frictionAt(system, angle);
  return friction > 0 && direction * staticTorque(system, angle) > system.staticRatio * friction;
}

/** Least energy with which the flap can get past its edge's end on either side, J: its static energy there. */
export function energyToLeave({ system, latch }: RideSystem): number {
  const { centre, block } = latch;
  return Math.min(staticEnergy(system, centre - block), staticEnergy(system, centre + block));
}

/** Rides of flaps that never stick, with `toLeave` from `energyToLeave`. */
export class FirmRide {
  outcome: OutcomeCode = SHUT_OUT;
  /** Shut out without turning once. */
  direct = false;
  private readonly motion: Motion;

  constructor(motion: Motion) {
    this.motion = motion;
  }

  /** Lets a bolt ride from `state`, where the flap is over the edge. */
  run(ride: RideSystem, state: FlapState, toLeave: number): OutcomeCode {
    const { motion } = this;
    const { system } = ride;
    this.direct = false;
    place(motion, system, state.time, state.angle, state.speed);
    if (this.isLow(system, toLeave)) this.outcome = CAUGHT;
    else if (motion.speed === 0 && !startFromRest(motion, system)) this.outcome = STUCK;
    else this.outcome = this.follow(ride, toLeave);
    return this.outcome;
  }

  private isLow(system: SwingSystem, toLeave: number): boolean {
    const { angle, speed } = this.motion;
    return staticEnergy(system, angle) + 0.5 * system.inertia * speed * speed < toLeave;
  }

  private follow(ride: RideSystem, toLeave: number): OutcomeCode {
    const { motion } = this;
    const { system, latch } = ride;
    let turns = 0;
    let engaged = Number.NaN;
    for (;;) {
      const zone = zoneOf(ride, motion.region);
      if (zone === BEYOND) {
        this.direct = turns === 0;
        return SHUT_OUT;
      }
      if (zone === RIDING) engaged = Number.NaN;
      else if (Number.isNaN(engaged)) engaged = motion.time + latch.again;
      const reached = advance(motion, system, zone === INSIDE ? engaged : motion.time + TIME_LIMIT, null);
      if (reached === REACHED_TIME && zone === INSIDE) return CAUGHT;
      if (reached !== REACHED_CUT && reached !== REACHED_TURN) return STUCK;
      if (this.isLow(system, toLeave)) return CAUGHT;
      if (reached === REACHED_CUT) passCut(motion, system);
      else {
        turns++;
        if (!startFromRest(motion, system)) return zone === INSIDE ? CAUGHT : STUCK;
      }
    }
  }
}

/** Where the bolt is while the flap is in a region of the ride's system. */
function zoneOf({ system, latch }: RideSystem, region: number): number {
  const away = Math.abs((system.cuts[region] + system.cuts[region + 1]) / 2 - latch.centre);
  return away <= latch.capture ? INSIDE : away <= latch.block ? RIDING : BEYOND;
}
