/**
 * The flap: a rigid plate hung from a horizontal hinge along its top edge, with small masses on it
 * (model, section 1). Plain SI numbers; distances are measured down from the hinge axis.
 */

import type { Flap } from "../door/door.ts";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";

export { STANDARD_GRAVITY };

/** A mass small against the flap, taken as a point, kg, at a distance below the hinge, m. */
export interface PointMass {
  readonly mass: number;
  readonly distance: number;
}

/** What the rest of the door needs to know of the hanging flap. */
export interface FlapBody {
  /** Mass of the bare plate, kg. */
  readonly plateMass: number;
  /** Everything that swings, kg. */
  readonly mass: number;
  /** Σ m d about the hinge, kg m: S; the gravity torque at θ is −S g sin θ. */
  readonly firstMoment: number;
  /** Moment of inertia about the hinge, kg m²: I. */
  readonly inertia: number;
  /** Hinge to bottom edge, m: b. */
  readonly reach: number;
  /** Hinge axis to the plate's top edge, m: o. */
  readonly hingeOffset: number;
  /** Along the hinge, m: W. */
  readonly width: number;
  /** T0, s: small swings under gravity alone. */
  readonly smallAnglePeriod: number;
}

/** m_p = ρ W H t, kg. */
export function plateMass(density: number, width: number, height: number, thickness: number): number {
  return density * width * height * thickness;
}

/**
 * Moment of inertia of a plate about an axis along its width at `distance` from its centre, kg m²:
 * m (H² + t²)/12 + m d² (parallel axes; Meriam and Kraige, *Engineering Mechanics: Dynamics*, appendix B,
 * from memory; model, section 1).
 */
export function plateInertia(mass: number, height: number, thickness: number, distance: number): number {
  return mass * ((height * height + thickness * thickness) / 12 + distance * distance);
}

/** Period of a compound pendulum for small swings, s: 2π √(I/(S g)) (same source). */
export function smallAnglePeriod(inertia: number, firstMoment: number): number {
  return 2 * Math.PI * Math.sqrt(inertia / (firstMoment * STANDARD_GRAVITY));
}

/** The hanging flap of a door, with the magnets it carries as extra masses. */
export function flapBody(flap: Flap, magnetMasses: readonly PointMass[]): FlapBody {
  const plate = plateMass(flap.density, flap.width, flap.height, flap.thickness);
  const centre = flap.hingeOffset + flap.height / 2;
  const extras = flap.extraMasses.map((m) => ({ mass: m.mass, distance: m.distanceFromHinge }));
  let mass = plate;
  let firstMoment = plate * centre;
  let inertia = plateInertia(plate, flap.height, flap.thickness, centre);
  for (const point of [...extras, ...magnetMasses]) {
    mass += point.mass;
    firstMoment += point.mass * point.distance;
    inertia += point.mass * point.distance * point.distance;
  }
  return {
    plateMass: plate,
    mass,
    firstMoment,
    inertia,
    reach: flap.hingeOffset + flap.height,
    hingeOffset: flap.hingeOffset,
    width: flap.width,
    smallAnglePeriod: smallAnglePeriod(inertia, firstMoment),
  };
}
