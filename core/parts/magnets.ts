/**
 * The centring magnets' arrangement: which flap magnet faces which, their torque on the flap about the hinge, their
 * masses, and the figures reported (model section 3). Angles in rad, positive towards outdoors; a torque that is
 * negative at a positive angle pulls back to the centre.
 */
import type { Magnets } from "../door/door.ts";
import { edgeDip } from "../door/swept.ts";
import {
  axialPull,
  fluxIndex,
  lateralStiffness,
  MAGNET_DENSITY,
  type MagnetPair,
  remanenceAt,
} from "./magnet.ts";
import { sillTorque } from "./magnet-sill.ts";
import { type TorqueExtreme, type TorqueTable, tableExtreme } from "./torque-table.ts";

export function magnetPair(magnets: Magnets, gap: number = magnets.gap): MagnetPair {
  return { radius: magnets.diameter / 2, thickness: magnets.thickness, gap };
}

/** +1 attracting, −1 repelling. */
function forceSign(magnets: Magnets): number {
  return magnets.force === "attract" ? 1 : -1;
}

/** Distances of one side's magnets from the hinge, lowest first: each next one `pitch` higher, m. */
export function magnetRows(magnets: Magnets): number[] {
  const count = magnets.arrangement === "jamb" ? magnets.perSide : 1;
  return Array.from({ length: count }, (_, row) => magnets.distanceFromHinge - row * magnets.pitch);
}

/** Flap–jamb pairs of one side that move alike: (i, j) and (j, i) have the same offset at every angle. */
interface JambPair {
  readonly product: number;
  readonly difference: number;
  readonly weight: number;
}

function jambPairs(magnets: Magnets): JambPair[] {
  const rows = magnetRows(magnets);
  const alternating = magnets.polarity === "alternating";
  return rows.flatMap((flap, i) =>
    rows.slice(0, i + 1).map((jamb, j) => {
      const polarity = alternating && (i + j) % 2 === 1 ? -1 : 1;
      return { product: flap * jamb, difference: flap - jamb, weight: polarity * (i === j ? 1 : 2) };
    }),
  );
}

/** −dE/dθ of one side's flap–jamb pairs, attracting, per Br². dE/dθ = (dE/ds)/s · r_i r_j sin θ. */
function jambTorque(magnets: Magnets, gap: number): (angle: number) => number {
  const pairs = jambPairs(magnets);
  const pair = magnetPair(magnets, gap);
  return (angle) => {
    const half = Math.sin(angle / 2);
    let sum = 0;
    for (const { product, difference, weight } of pairs) {
      const offset = Math.sqrt(difference * difference + 4 * product * half * half);
      sum += weight * product * lateralStiffness(pair, offset);
    }
    return -Math.sin(angle) * sum;
  };
}

/** Gaps narrower than these shares of the radius (in a sill: past striking) are computed as this wide: hundredths of a
 * millimetre, or a few tenths in a sill, whose integrals are dearer. Nobody builds narrower ones, and a sampled one
 * must not take for ever; one that strikes is refused in a file, but may be drawn by a study. */
const LEAST_GAP = { jamb: 1 / 400, sill: 1 / 25 };

/** The narrowest gap that the torque follows, m. */
export function leastGap(magnets: Magnets): number {
  const radius = 0.5 * magnets.diameter;
  const dip = magnets.arrangement === "sill" ? edgeDip(radius, magnets.distanceFromHinge) : 0;
  return dip + radius * LEAST_GAP[magnets.arrangement];
}

/** The arrangement's torque at an angle, per Br² (N m/T²), at a gap: the exact one that tables are made of. */
export function torquePerRemanence2(magnets: Magnets, wanted: number): (angle: number) => number {
  const gap = Math.max(wanted, leastGap(magnets));
  const oneSide =
    magnets.arrangement === "jamb"
      ? jambTorque(magnets, gap)
      : sillTorque(magnetPair(magnets, gap), magnets.distanceFromHinge);
  const factor = forceSign(magnets) * magnets.sides;
  return (angle) => factor * oneSide(angle);
}

/** Torque of the arrangement as the door states it, N m, by direct integration. */
export function magnetTorque(magnets: Magnets, angle: number): number {
  const remanence = remanenceAt(magnets.remanence, magnets.temperature);
  return remanence * remanence * torquePerRemanence2(magnets, magnets.gap)(angle);
}

export interface MagnetMass {
  readonly mass: number;
  /** From the hinge to the magnet's centre, m. */
  readonly distance: number;
}

/** The flap's own magnets, one by one, kg and m. */
export function magnetMasses(magnets: Magnets): MagnetMass[] {
  const { diameter, thickness, sides } = magnets;
  const mass = (MAGNET_DENSITY * Math.PI * diameter * diameter * thickness) / 4;
  const centre = magnets.arrangement === "jamb" ? 0 : -thickness / 2;
  return magnetRows(magnets).flatMap((row) =>
    Array.from({ length: sides }, () => ({ mass, distance: row + centre })),
  );
}

export interface MagnetResults {
  /** Greatest torque that pulls back to the centre within the stops, N m, as a magnitude; 0 if none does. */
  readonly peakTorque: number;
  /** Its angle, rad; 0 if none pulls back. */
  readonly peakAngle: number;
  /** Greatest torque of either sign within the stops, N m, as a magnitude. Larger than the above where magnets repel. */
  readonly greatestTorque: number;
  readonly greatestAngle: number;
  /** −dτ/dθ at 0, N m/rad; negative where the centre is pushed away from. */
  readonly centreStiffness: number;
  /** Of one facing pair at θ = 0, N, attracting positive. */
  readonly axialForce: number;
  /** kG² mm², at 20 °C. */
  readonly fluxIndex: number;
}

/** The figures reported, from a door's magnets and their table; `stopAngle` bounds the search for the peak. */
export function magnetResults(magnets: Magnets, table: TorqueTable, stopAngle: number): MagnetResults {
  const restoring = tableExtreme(table, -1, stopAngle);
  const outward = tableExtreme(table, 1, stopAngle);
  const greatest: TorqueExtreme = restoring.magnitude >= outward.magnitude ? restoring : outward;
  const remanence = remanenceAt(magnets.remanence, magnets.temperature);
  return {
    peakTorque: restoring.magnitude,
    peakAngle: restoring.angle,
    greatestTorque: greatest.magnitude,
    greatestAngle: greatest.angle,
    centreStiffness: -table.torque[1] / table.fineWidth,
    axialForce: forceSign(magnets) * axialPull(magnetPair(magnets), remanence),
    fluxIndex: fluxIndex(magnets.remanence, magnets.diameter, magnets.thickness),
  };
}
