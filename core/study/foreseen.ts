/**
 * Rides whose end the energy alone makes sure, so that they need not be followed: a fast flap that the whole way over the edge
 * and the slot cannot keep, and one that crosses the slot too slowly to be gone before the bolt is engaged.
 */
import type { RideSystem } from "../passage/relatch.ts";
import type { Motion } from "../swing/motion.ts";
import type { RideBounds } from "./ride-bounds.ts";
import { CAUGHT, type OutcomeCode, SHUT_OUT } from "./stretches.ts";

/** Share of the energies' range that a bound must hold by: more than lies between the places that were looked at. */
const MARGIN = 1e-2;

export interface Foreseen {
  /** `null` where nothing is sure. */
  outcome: OutcomeCode | null;
  /** Least energy left where it leaves, over what it takes, J; NaN for an end in the slot. */
  excess: number;
}

/** Looks at a moving flap over the edge with an energy `energy` (static and kinetic, J); the answer is in `found`. */
export function foresee(
  { system, latch }: RideSystem,
  bounds: RideBounds,
  { angle, speed }: Motion,
  energy: number,
  found: Foreseen,
): void {
  found.outcome = null;
  const { looks: way, sides } = bounds;
  const margin = MARGIN * (bounds.toLeave - way.low);
  const offset = angle - latch.centre;
  const away = Math.abs(offset);
  const here = sides[offset < 0 ? 0 : 1];
  const drag = bounds.dragAt(Math.sqrt((2 * (energy - way.low)) / system.inertia));
  const width = latch.block - latch.capture;
  if (offset * speed > 0) {
    const left = energy - (way.edgeFriction + drag) * (latch.block - away) - here.hill;
    if (left > margin) leaves(found, left);
    return;
  }
  const atSlot = energy - (way.edgeFriction + drag) * (away - latch.capture);
  if (!(atSlot - here.hill > margin)) return;
  const most = energy - way.leastEdgeFriction * (away - latch.capture) - way.slotLow;
  if (tooSlow(most + margin, system.inertia, latch)) {
    found.outcome = CAUGHT;
    found.excess = Number.NaN;
    return;
  }
  const pastSlot = atSlot - (way.slotFriction + drag) * 2 * latch.capture;
  const least = pastSlot - way.slotHigh - margin;
  if (!(least > 0) || !tooFast(least, system.inertia, latch)) return;
  const there = sides[offset < 0 ? 1 : 0];
  const left = pastSlot - (way.edgeFriction + drag) * width - there.hill;
  if (left > margin) leaves(found, left);
}

function leaves(found: Foreseen, left: number): void {
  found.outcome = SHUT_OUT;
  found.excess = left;
}

/** Whether a flap of at most this kinetic energy, J, is still in the slot when the bolt is engaged. */
function tooSlow(most: number, inertia: number, { capture, again }: RideSystem["latch"]): boolean {
  return again * Math.sqrt((2 * most) / inertia) < 2 * capture;
}

/** Whether a flap of at least this kinetic energy, J, is gone by then. */
function tooFast(least: number, inertia: number, { capture, again }: RideSystem["latch"]): boolean {
  return again * Math.sqrt((2 * least) / inertia) > 2 * capture;
}
