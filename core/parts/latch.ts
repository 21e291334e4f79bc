/** The spring bolt: its angles at the flap, its net force and its times (model, section 4). */

import type { Latch } from "../door/door.ts";
import { blockSine, captureSine, netBoltForce } from "../door/latch-limits.ts";

/** θ_c = asin((w_s − w_b)/(2 r_l)), rad: the play of the bolt in its slot, seen from the hinge. */
export function captureAngle(slotWidth: number, boltWidth: number, distance: number): number {
  return Math.asin(captureSine(slotWidth, boltWidth, distance));
}

/** θ_b = asin((h + w_b/2)/r_l), rad: beyond it the bolt passes beside the flap's edge. */
export function blockAngle(edgeHalfWidth: number, boltWidth: number, distance: number): number {
  return Math.asin(blockSine(edgeHalfWidth, boltWidth, distance));
}

/** θ_off = asin(offset/r_l), rad: the slot's centre. */
export function slotAngle(offset: number, distance: number): number {
  return Math.asin(offset / distance);
}

/** Time of a bolt of mass m under a constant force from rest over a distance, s: √(2 x m/F). */
export function riseTime(distance: number, mass: number, force: number): number {
  return Math.sqrt((2 * distance * mass) / force);
}

/** The latch as the relatch rule needs it: angles in rad, times in s, torque in N m. */
export interface LatchMechanics {
  readonly centre: number;
  readonly capture: number;
  readonly block: number;
  readonly boltForce: number;
  /** Withdrawn to the slot's mouth. */
  readonly toMouth: number;
  /** Withdrawn to least engagement. */
  readonly toEngagement: number;
  /** Mouth to least engagement, starting from rest at the mouth. */
  readonly again: number;
  /** Dry friction that the riding bolt adds at the hinge: μ F r_l. */
  readonly rideTorque: number;
}

/** All of the latch's own figures. The door reader has made sure that they exist. */
export function latchMechanics(latch: Latch): LatchMechanics {
  const { boltWidth, slotWidth, distanceFromHinge, tipGap, engagement, boltMass } = latch;
  const boltForce = netBoltForce(latch.springForce, boltMass, latch.boltPoints);
  return {
    centre: slotAngle(latch.offset, distanceFromHinge),
    capture: captureAngle(slotWidth, boltWidth, distanceFromHinge),
    block: blockAngle(latch.edgeHalfWidth, boltWidth, distanceFromHinge),
    boltForce,
    toMouth: riseTime(tipGap, boltMass, boltForce),
    toEngagement: riseTime(tipGap + engagement, boltMass, boltForce),
    again: riseTime(engagement, boltMass, boltForce),
    rideTorque: latch.frictionCoefficient * boltForce * distanceFromHinge,
  };
}
