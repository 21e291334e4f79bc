/**
 * What can be said of every slow ride of a door beforehand, from its torques alone, so that rides need be followed only until
 * they are slow. Slow is a flap with too little energy to get past its edge's end again.
 *
 * A slow flap inside the slot ends caught, unless it leaves again before the bolt is engaged. Then it has crossed the slot in
 * less than that time, which is a least speed: either more than a slow flap can have, or so much that it is carried past
 * every place on the edge from which it would not come back. A slow flap that stops on the edge comes back or sticks by
 * where it stops.
 */
import type { RideSystem } from "../passage/relatch.ts";
import { frictionAt, mostDamping, type SwingSystem } from "../swing/system.ts";
import { staticTorque } from "../swing/torque.ts";
import { EdgeLooks, LOOKS } from "./edge-looks.ts";

/** What becomes of a slow flap that stops on the edge. */
export const STICKS = 0;
export const RETURNS = 1;
export const UNSURE = 2;
export type Stop = typeof STICKS | typeof RETURNS | typeof UNSURE;

/** One side of the edge, by `LOOKS` + 1 places from the slot's edge outwards. */
class Side {
  readonly stops = new Uint8Array(LOOKS + 1);
  /** Number of changes between sticking and returning up to each place. */
  readonly changes = new Uint8Array(LOOKS + 1);
  /** Most work that moving out from the slot to the last place that does not return can take, J; infinite if that is the end. */
  work = 0;
  /** Last place up to which every one from the slot outwards returns, −1 for none, and the static energy there, J. */
  calmTo = 0;
  calm = 0;
  /** Greatest static energy on it, J. */
  hill = 0;
  private readonly outTo = new Float64Array(LOOKS + 1);

  /** Looks at a side, 0 or 1; false without any friction, where a ride might never end. */
  look(looks: EdgeLooks, side: number, staticRatio: number, drag: number): boolean {
    const { stops, changes, outTo } = this;
    const { width } = looks;
    // Energy gained from each place to the slot, at least and at most, and the most of both so far.
    let [least, leastMost, most, mostMost] = [0, 0, 0, 0];
    let [out, last, calmTo] = [0, -1, -1];
    let [pullBefore, frictionBefore] = [0, 0];
    let pushed = false;
    for (let i = 0; i <= LOOKS; i++) {
      const pull = looks.pull(side, i);
      const friction = looks.friction(side, i);
      if (!(friction > 0)) return false;
      if (i > 0) {
        const net = ((pull + pullBefore - friction - frictionBefore) / 2) * width;
        least += net - drag * width;
        most += net;
        out += (Math.max(0, pull, pullBefore) + Math.max(friction, frictionBefore) + drag) * width;
      }
      const hold = staticRatio * friction;
      pushed ||= pull < -hold;
      const short = i > 0 && most <= mostMost;
      const free = pull > hold && (last < 0 || least > leastMost);
      const stop = Math.abs(pull) <= hold || (short && !pushed) ? STICKS : free && !short ? RETURNS : UNSURE;
      changes[i] = i === 0 ? 0 : changes[i - 1] + (stop === stops[i - 1] ? 0 : 1);
      stops[i] = stop;
      outTo[i] = out;
      leastMost = Math.max(leastMost, least);
      mostMost = Math.max(mostMost, most);
      if (stop !== RETURNS) last = i;
      else if (last < 0) calmTo = i;
      pullBefore = pull;
      frictionBefore = friction;
    }
    this.work = last < 0 ? 0 : last < LOOKS ? outTo[last + 1] : Number.POSITIVE_INFINITY;
    this.calmTo = calmTo;
    this.calm = calmTo < 0 ? Number.NEGATIVE_INFINITY : looks.energy(side, calmTo);
    this.hill = looks.hill(side);
    return true;
  }
}

/** The bounds of one door after another. */
export class RideBounds {
  /** Least energy with which the flap can get past its edge's end, J: its static energy there, the lesser side's. */
  toLeave = 0;
  /** With less energy than this, J, it cannot leave the places about the slot from all of which it returns. */
  private calm = 0;
  /** It comes back from everywhere on both sides. */
  neverSticks = false;
  readonly looks = new EdgeLooks();
  /** At negative and at positive angles from the slot's centre. */
  readonly sides: readonly [Side, Side] = [new Side(), new Side()];
  /** Viscous torque per speed, N m s/rad, and the air's per speed and per its square, no less than anywhere on the way. */
  private viscous = 0;
  private stillDrag = 0;

  /** Finds the bounds of a ride's door; false where nothing so simple can be said. */
  find(ride: RideSystem): boolean {
    const { looks, sides } = this;
    const { system, latch } = ride;
    if (Math.abs(latch.centre) + latch.block >= system.stopAngle) return false;
    looks.look(ride);
    this.toLeave = Math.min(looks.energy(0, LOOKS), looks.energy(1, LOOKS));
    const energy = this.toLeave - looks.low;
    if (!(energy > 0)) return false;
    this.findDrag(system);
    const drag = this.dragAt(Math.sqrt((2 * energy) / system.inertia));
    for (let side = 0; side < 2; side++) {
      if (!sides[side].look(looks, side, system.staticRatio, drag)) return false;
    }
    const [left, right] = sides;
    this.neverSticks = left.work === 0 && right.work === 0;
    this.calm = Math.min(this.toLeave, left.calm, right.calm);
    const enough = Math.min(energy, Math.max(left.work, right.work));
    return this.neverSticks || leavesFast(ride, drag, enough);
  }

  /** Whether a flap that is at an angle with an energy, J, ends caught: it comes back from everywhere it may get to. */
  isCalm({ latch }: RideSystem, angle: number, energy: number): boolean {
    if (!(energy < this.calm)) return false;
    const offset = angle - latch.centre;
    return Math.abs(offset) <= latch.capture + this.looks.width * this.sides[offset < 0 ? 0 : 1].calmTo;
  }

  /** No less than the viscous and the air's torque at any speed up to this, N m. */
  dragAt(speed: number): number {
    return (this.viscous + this.stillDrag * speed) * speed;
  }

  private findDrag(system: SwingSystem): void {
    const { air } = system;
    this.viscous = mostDamping(system) + Math.abs(air.wind) * air.scale * air.swingFactor * air.outer ** 3;
    this.stillDrag = air.stillDrag;
  }
}

/** Torque towards the slot on a flap at rest at a distance from its centre on one side, N m. */
function pullAt(system: SwingSystem, centre: number, side: number, away: number): number {
  return -side * staticTorque(system, centre + side * away);
}

/**
 * Whether a slow flap that leaves the slot before the bolt is engaged does so with at least `energy`, J, and by the other side:
 * near its edges the slot must not push outwards.
 */
function leavesFast({ system, latch }: RideSystem, drag: number, energy: number): boolean {
  const { centre, capture, again } = latch;
  let hardest = 0;
  for (let i = 0; i <= LOOKS; i++) {
    const angle = centre + capture * ((2 * i) / LOOKS - 1);
    hardest = Math.max(hardest, Math.abs(staticTorque(system, angle)) + frictionAt(system, angle) + drag);
  }
  const slowing = hardest / system.inertia;
  const least = (2 * capture) / again - (slowing * again) / 2;
  if (least <= 0 || 0.5 * system.inertia * least * least <= energy) return false;
  const near = Math.min(2 * capture, (slowing * again * again) / 2);
  return [-1, 1].every((side) => pushesNowhere(system, centre, side, capture, near));
}

/** True where within `near` of a slot's edge nothing pushes a resting flap out of it. */
function pushesNowhere(
  system: SwingSystem,
  centre: number,
  side: number,
  capture: number,
  near: number,
): boolean {
  for (let i = 0; i <= LOOKS; i++) {
    const away = capture - (near * i) / LOOKS;
    if (away < 0) return true;
    if (pullAt(system, centre, side, away) < -frictionAt(system, centre + side * away)) return false;
  }
  return true;
}

/** Place of an angle on its side of the edge, counted in looks from the slot's edge, and that side. */
function placeOf({ latch }: RideSystem, { sides }: RideBounds, angle: number): { side: Side; place: number } {
  const away = angle - latch.centre;
  const place = ((Math.abs(away) - latch.capture) / (latch.block - latch.capture)) * LOOKS;
  return { side: sides[away < 0 ? 0 : 1], place: Math.max(0, Math.min(LOOKS - 1, Math.floor(place))) };
}

/** What becomes of a slow flap that stops at an angle over the edge: sure where the places on both sides of it agree. */
export function stopAt(ride: RideSystem, bounds: RideBounds, angle: number): Stop {
  const { side, place } = placeOf(ride, bounds, angle);
  return side.stops[place] === side.stops[place + 1] ? (side.stops[place] as Stop) : UNSURE;
}

/** Tells stops apart that lie on different sides or have a change between sticking and returning between them: from 0 up. */
export function stopZone(ride: RideSystem, bounds: RideBounds, angle: number): number {
  const { side, place } = placeOf(ride, bounds, angle);
  return 2 * side.changes[place] + (side === bounds.sides[0] ? 0 : 1);
}
