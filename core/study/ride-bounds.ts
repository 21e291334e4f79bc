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
import { frictionAt, type SwingSystem } from "../swing/system.ts";
import { staticEnergy, staticTorque } from "../swing/torque.ts";
import { INSIDE, RIDING } from "./marks.ts";

/** Places looked at across the edge on each side, and inside the slot; the torque is smooth on that scale. */
const LOOKS = 32;

/** What becomes of a slow flap that stops on the edge. */
export const STICKS = 0;
export const RETURNS = 1;
export const UNSURE = 2;
export type Stop = typeof STICKS | typeof RETURNS | typeof UNSURE;

/** One side of the edge, by `LOOKS` + 1 places from the slot's edge outwards. */
interface Side {
  readonly stops: readonly Stop[];
  /** Number of changes between sticking and returning up to each place. */
  readonly changes: readonly number[];
  /** Most work that moving out from the slot to the last place that does not return can take, J; infinite if that is the end. */
  readonly work: number;
  /** Static energy up to which every place from the slot outwards returns, J. */
  readonly calm: number;
  /** Greatest static energy on it, J. */
  readonly hill: number;
}

/** What the way over edge and slot can take at least and at most, whatever the ride. */
export interface WayBounds {
  /** Least and greatest static energy in the slot, and the least over the edge as well, J. */
  readonly slotLow: number;
  readonly slotHigh: number;
  readonly low: number;
  /** Greatest dry friction in the slot and on the edge, and the least on the edge, N m. */
  readonly slotFriction: number;
  readonly edgeFriction: number;
  readonly leastEdgeFriction: number;
}

export interface RideBounds {
  /** Least energy with which the flap can get past its edge's end, J: its static energy there, the lesser side's. */
  readonly toLeave: number;
  /** With less energy, J, it ends caught: it comes back from everywhere it may get to. */
  readonly calm: number;
  /** It comes back from everywhere on both sides. */
  readonly neverSticks: boolean;
  /** At negative and at positive angles from the slot's centre. */
  readonly sides: readonly [Side, Side];
  readonly way: WayBounds;
}

/** The bounds of a ride's door; `null` where nothing so simple can be said. */
export function rideBounds(ride: RideSystem): RideBounds | null {
  const { system, latch } = ride;
  const { centre, block } = latch;
  if (Math.abs(centre) + block >= system.stopAngle) return null;
  const toLeave = Math.min(staticEnergy(system, centre - block), staticEnergy(system, centre + block));
  const slot = slotEnergies(ride);
  const sideways = [-1, 1].map((side) => edgeEnergies(ride, side));
  const low = Math.min(slot.low, sideways[0].low, sideways[1].low);
  const energy = toLeave - low;
  if (!(energy > 0)) return null;
  const drag = dragAt(system, Math.sqrt((2 * energy) / system.inertia));
  const left = lookAlong(ride, -1, drag, sideways[0]);
  const right = lookAlong(ride, 1, drag, sideways[1]);
  if (left === null || right === null) return null;
  const neverSticks = left.work === 0 && right.work === 0;
  const enough = Math.min(energy, Math.max(left.work, right.work));
  if (!neverSticks && !leavesFast(ride, drag, enough)) return null;
  const calm = Math.min(toLeave, left.calm, right.calm);
  const way = { slotLow: slot.low, slotHigh: slot.high, low, ...frictions(ride) };
  return { toLeave, calm, neverSticks, sides: [left, right], way };
}

interface Energies {
  readonly low: number;
  readonly high: number;
}

/** Static energies in the slot, J. */
function slotEnergies({ system, latch }: RideSystem): Energies {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= LOOKS; i++) {
    const energy = staticEnergy(system, latch.centre + latch.capture * ((2 * i) / LOOKS - 1));
    if (energy < low) low = energy;
    if (energy > high) high = energy;
  }
  return { low, high };
}

/** Static energies on one side of the edge, J. */
function edgeEnergies({ system, latch }: RideSystem, side: number): EdgeEnergies {
  const { centre, capture, block } = latch;
  const energies = new Float64Array(LOOKS + 1);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= LOOKS; i++) {
    const away = capture + ((block - capture) * i) / LOOKS;
    const energy = staticEnergy(system, centre + side * away);
    energies[i] = energy;
    if (energy < low) low = energy;
    if (energy > high) high = energy;
  }
  return { low, high, energies };
}

interface EdgeEnergies extends Energies {
  /** By `LOOKS` + 1 places from the slot's edge outwards. */
  readonly energies: Float64Array;
}

/** Dry friction where the bolt rides and where it does not, N m. */
function frictions({ system, place }: RideSystem) {
  let slotFriction = 0;
  let edgeFriction = 0;
  let leastEdgeFriction = Number.POSITIVE_INFINITY;
  for (let region = 0; region < place.length; region++) {
    const friction = system.friction[region];
    if (place[region] === INSIDE) slotFriction = Math.max(slotFriction, friction);
    else if (place[region] === RIDING) {
      edgeFriction = Math.max(edgeFriction, friction);
      leastEdgeFriction = Math.min(leastEdgeFriction, friction);
    }
  }
  return { slotFriction, edgeFriction, leastEdgeFriction };
}

/** No less than the viscous and the air's torque at any speed up to this, N m. */
export function dragAt(system: SwingSystem, speed: number): number {
  const { air } = system;
  const windy = Math.abs(air.wind) * air.scale * air.swingFactor * air.outer ** 3;
  return Math.max(...system.damping) * speed + air.stillDrag * speed * speed + windy * speed;
}

/** Torque towards the slot on a flap at rest at a distance from its centre on one side, N m. */
function pullAt(system: SwingSystem, centre: number, side: number, away: number): number {
  return -side * staticTorque(system, centre + side * away);
}

/** Looks at one side of the edge; `null` without any friction, where a ride might never end. */
function lookAlong(
  { system, latch }: RideSystem,
  side: number,
  drag: number,
  { energies, high }: EdgeEnergies,
): Side | null {
  const { centre, capture, block } = latch;
  const width = (block - capture) / LOOKS;
  const stops: Stop[] = [];
  const changes: number[] = [];
  /** Energy gained from each place to the slot, least and most, and the most so far; work taken on the way out. */
  const least = { now: 0, most: 0 };
  const most = { now: 0, most: 0 };
  let out = 0;
  let last = -1;
  let pushed = false;
  const outTo: number[] = [];
  let before = { pull: 0, friction: 0 };
  for (let i = 0; i <= LOOKS; i++) {
    const away = capture + width * i;
    const here = {
      pull: pullAt(system, centre, side, away),
      friction: frictionAt(system, centre + side * away),
    };
    if (!(here.friction > 0)) return null;
    if (i > 0) {
      const net = ((here.pull + before.pull - here.friction - before.friction) / 2) * width;
      least.now += net - drag * width;
      most.now += net;
      out += (Math.max(0, here.pull, before.pull) + Math.max(here.friction, before.friction) + drag) * width;
    }
    const hold = system.staticRatio * here.friction;
    pushed ||= here.pull < -hold;
    const holds = Math.abs(here.pull) <= hold;
    const short = i > 0 && most.now <= most.most;
    const free = here.pull > hold && (last < 0 || least.now > least.most);
    const stop = holds || (short && !pushed) ? STICKS : free && !short ? RETURNS : UNSURE;
    changes.push((changes[i - 1] ?? 0) + (i > 0 && stop !== stops[i - 1] ? 1 : 0));
    stops.push(stop);
    outTo.push(out);
    least.most = Math.max(least.most, least.now);
    most.most = Math.max(most.most, most.now);
    if (stop !== RETURNS) last = i;
    before = here;
  }
  const work = last < 0 ? 0 : (outTo[last + 1] ?? Number.POSITIVE_INFINITY);
  const returning = stops.findIndex((stop) => stop !== RETURNS);
  const calm = returning === 0 ? Number.NEGATIVE_INFINITY : energies[returning < 0 ? LOOKS : returning - 1];
  return { stops, changes, work, calm, hill: high };
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
  return side.stops[place] === side.stops[place + 1] ? side.stops[place] : UNSURE;
}

/** Tells stops apart that lie on different sides or have a change between sticking and returning between them: from 0 up. */
export function stopZone(ride: RideSystem, bounds: RideBounds, angle: number): number {
  const { side, place } = placeOf(ride, bounds, angle);
  return 2 * side.changes[place] + (side === bounds.sides[0] ? 0 : 1);
}
