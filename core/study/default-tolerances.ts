/**
 * How far inputs spread where the door file says nothing (model, section 7). Every one is an assumption of this program
 * and carries its reason; a tolerance of the file for the same key replaces it.
 */
import type { Tolerance } from "../door/door.ts";

export interface DefaultTolerance {
  /** A door file's key path; `*` stands for every entry of a list. */
  readonly key: string;
  readonly tolerance: Tolerance;
  readonly reason: string;
}

/** ± two standard deviations, as a share of the nominal. */
function share(twoSigma: number): Tolerance {
  return { shape: "normal", twoSigma, relative: true };
}

/** ± two standard deviations, in the key's SI unit. */
function plusMinus(twoSigma: number): Tolerance {
  return { shape: "normal", twoSigma, relative: false };
}

const DEGREE = Math.PI / 180;

export const DEFAULT_TOLERANCES: readonly DefaultTolerance[] = [
  {
    key: "hinge.frictionTorque",
    tolerance: share(0.4),
    reason: "dry friction differs from hinge to hinge and with alignment, dirt and wear",
  },
  {
    key: "seal.frictionTorque",
    tolerance: share(0.4),
    reason: "a brush or lip presses harder or softer with how it is set and how it ages",
  },
  {
    key: "hinge.viscousDamping",
    tolerance: share(0.5),
    reason: "grease thickens in the cold, and the value is seldom measured",
  },
  {
    key: "damper.coefficient",
    tolerance: share(0.5),
    reason: "damper oil changes with temperature, an eddy-current plate with its gap",
  },
  {
    key: "flap.density",
    tolerance: share(0.05),
    reason: "sheet material differs in density and thickness from batch to batch",
  },
  { key: "flap.extraMasses.*.mass", tolerance: share(0.05), reason: "strike, bar and trim as they are made" },
  { key: "latch.boltMass", tolerance: share(0.05), reason: "bolt, plunger and link as they are made" },
  {
    key: "magnets.gap",
    tolerance: plusMinus(0.5e-3),
    reason: "side play of the hinge and squareness of the frame",
  },
  { key: "magnets.remanence", tolerance: share(0.04), reason: "the span of one magnet grade" },
  { key: "latch.boltWidth", tolerance: plusMinus(0.2e-3), reason: "as filed or drawn" },
  { key: "latch.slotWidth", tolerance: plusMinus(0.2e-3), reason: "as filed or milled" },
  { key: "latch.offset", tolerance: plusMinus(1e-3), reason: "the slot is marked out by hand" },
  {
    key: "opening.outOfPlumb",
    tolerance: plusMinus(0.5 * DEGREE),
    reason: "a frame set with a builder's level",
  },
  { key: "latch.springForce", tolerance: share(0.15), reason: "wire and length of a stock spring" },
  { key: "release.angle", tolerance: share(0.1), reason: "backs are not all equally high, nor held level" },
  { key: "animals.*.speed", tolerance: share(0.3), reason: "an animal strolls or hurries" },
];

/** κ of the swing's own air drag, uniform between these: no flap of this size has been measured (assumption). */
export const SWING_FACTOR = {
  key: "air.swingFactor",
  low: 1,
  high: 3,
  reason:
    "a plate that swings less than its width drags up to several times the steady figure; fit measures it",
} as const;

/** The reason that goes with R and C: a maker's tolerance is a limit, so any value within it is as likely as another. */
export const MAKERS_LIMIT = "the maker's tolerance, any value within it as likely as another";
