/** What a fit can adjust: the door's own values, and what belongs to the measurement alone. */
import type { FlapBody } from "../../parts/flap.ts";
import { STANDARD_GRAVITY } from "../../parts/flap.ts";

/** Keys of the door file that a measured swing tells about, in the order in which few data are given to them. */
export const FIT_KEYS = [
  "hinge.frictionTorque",
  "hinge.viscousDamping",
  "air.swingFactor",
  "seal.frictionTorque",
  "opening.outOfPlumb",
] as const;
export type FitKey = (typeof FIT_KEYS)[number];

/**
 * What belongs to the measurement: true angle of let-go, rad; moment of let-go on the measurement's clock, s; what it reads
 * with the flap in the frame's plane, rad; its seconds per computed second.
 */
export const NUISANCES = ["release", "start", "zero", "pace"] as const;
export type Nuisance = (typeof NUISANCES)[number];

export type ParameterName = FitKey | Nuisance;

/** A value for every parameter, SI. */
export type Values = Readonly<Record<ParameterName, number>>;

export function isFitKey(name: ParameterName): name is FitKey {
  return (FIT_KEYS as readonly string[]).includes(name);
}

/** Least physical value of a parameter. */
export function lowerLimit(name: ParameterName): number {
  if (name === "pace") return 0.5;
  return isFitKey(name) && name !== "opening.outOfPlumb" ? 0 : Number.NEGATIVE_INFINITY;
}

export function upperLimit(name: ParameterName): number {
  return name === "pace" ? 2 : Number.POSITIVE_INFINITY;
}

/** The size at which a parameter changes a swing by some hundredths: what steps and starts are measured in, SI. */
export function typicalSize(name: ParameterName, body: FlapBody): number {
  const weightMoment = body.firstMoment * STANDARD_GRAVITY;
  switch (name) {
    case "hinge.frictionTorque":
    case "seal.frictionTorque":
      return 0.01 * weightMoment;
    case "hinge.viscousDamping":
      return 0.02 * Math.sqrt(body.inertia * weightMoment);
    case "air.swingFactor":
      return 1;
    case "start":
      return 0.01 * body.smallAnglePeriod;
    default:
      return 0.01;
  }
}
