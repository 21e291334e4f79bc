/**
 * What it takes to push the flap open (model, section 6). Plain SI numbers; angles from the closed flap,
 * positive in the direction of the push. Still air, no pressure difference.
 */
import type { Animal, Hinge, Seal } from "../door/door.ts";
import { type FlapBody, STANDARD_GRAVITY } from "./flap.ts";
import { maximum } from "./maximum.ts";

/** Everything that resists a slow push. */
export interface Resistance {
  readonly body: FlapBody;
  readonly hinge: Hinge;
  readonly seal: Seal;
  /** δ, rad, either sign: the push is taken against it. */
  readonly outOfPlumb: number;
  /** Torque of the magnets at an angle, N m; negative at θ > 0 pulls back to the centre. */
  readonly magnetTorque: (angle: number) => number;
}

export interface Push {
  /** N at the push height; `null` where the hinge is not above it. */
  readonly force: number | null;
  /** Where the push is hardest, rad; `null` with the force. */
  readonly angle: number | null;
  /** What the animal is comfortable with, N. */
  readonly limit: number;
  /** What it also puts in at its walking speed, J: ½ I (speed/(z_h − h_push))²; `null` with the force. */
  readonly energy: number | null;
}

/** Dry friction at an angle, N m: the hinge's, and the seal's up to and including the end of its contact. */
export function dryFriction(
  hingeTorque: number,
  sealTorque: number,
  contactAngle: number,
  angle: number,
): number {
  return hingeTorque + (Math.abs(angle) <= contactAngle ? sealTorque : 0);
}

/**
 * How far the flap is pushed, rad: from 0 to min(θ_h, acos((z_h − h_push)/b)), beyond which the flap's edge
 * is above the push; an argument above 1 (an animal that pushes below the edge) counts as 1.
 */
export function pushRange(letGoAngle: number, lever: number, reach: number): number {
  return Math.min(letGoAngle, Math.acos(Math.min(1, lever / reach)));
}

/** The slow torque that holds the flap open at an angle, N m: S g sin(θ + |δ|) − τ_mag + k_s τ_fric. */
export function pushTorque(resistance: Resistance, angle: number): number {
  const { body, hinge, seal, outOfPlumb, magnetTorque } = resistance;
  const gravity = body.firstMoment * STANDARD_GRAVITY * Math.sin(angle + Math.abs(outOfPlumb));
  const friction = dryFriction(hinge.frictionTorque, seal.frictionTorque, seal.contactAngle, angle);
  return gravity - magnetTorque(angle) + hinge.staticRatio * friction;
}

/** The push of one animal: hinge at `hingeHeight`, m, flap let go at `letGoAngle`, rad. */
export function push(animal: Animal, resistance: Resistance, hingeHeight: number, letGoAngle: number): Push {
  const lever = hingeHeight - animal.pushHeight;
  const limit = animal.comfortablePush;
  if (!(lever > 0)) return { force: null, angle: null, limit, energy: null };
  const end = pushRange(letGoAngle, lever, resistance.body.reach);
  const torque = (angle: number) => pushTorque(resistance, angle);
  const hardest = maximum(torque, end, [resistance.seal.contactAngle]);
  return {
    force: hardest.value / lever,
    angle: hardest.at,
    limit,
    energy: (resistance.body.inertia * (animal.speed / lever) ** 2) / 2,
  };
}

/**
 * Which animal's push the door is judged by: the one with the least limit − force, the first of equals. One
 * that cannot push at all (force `null`) comes before any that can.
 */
export function hardestPush(pushes: readonly Push[]): number {
  const spare = pushes.map((one) => (one.force === null ? Number.NEGATIVE_INFINITY : one.limit - one.force));
  return spare.indexOf(Math.min(...spare));
}
