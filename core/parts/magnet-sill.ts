/**
 * The sill pair: the flap's magnet in its bottom edge, axis along the flap; the sill's below it, axis vertical.
 * Closed, both axes are one line; open, they meet at the flap's angle, so the face charges are integrated.
 */

import { edgeDip } from "../door/swept.ts";
import { type MagnetPair, MU0 } from "./magnet.ts";
import { discAxialField, discRadialField } from "./magnet-disc.ts";

/** A point of a disc's face: along the swing, along the flap's width, and its share of the area. */
interface FacePoints {
  readonly along: Float64Array;
  readonly across: Float64Array;
  readonly area: Float64Array;
}

/** One pole face of the flap against one of the sill. */
interface Faces {
  /** Depths below the hinge when closed, m. */
  readonly flap: number;
  readonly sill: number;
  /** Product of the charges. */
  readonly sign: number;
  /** Least distance between the faces' rims, m. */
  readonly distance: number;
}

/** Nodes and weights of the n-point Gauss–Legendre rule on 0…1 (Newton on P_n; Abramowitz & Stegun 25.4.29). */
function gaussLegendre(n: number): { nodes: number[]; weights: number[] } {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let [before, value] = [1, x];
      for (let k = 2; k <= n; k++)
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (n * (x * value - before)) / (x * x - 1);
      const move = value / slope;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    nodes.push(0.5 * (1 + x));
    weights.push(1 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/**
 * Points over half a face (the other half mirrors it): Gauss–Legendre in the radius, midpoints in the angle. The
 * counts bring the error below 10⁻¹¹ of the peak with the other rim `closeness` = radius/distance away (found by
 * refinement, and checked so in the tests).
 */
function facePoints(radius: number, closeness: number): FacePoints {
  const rings = Math.ceil(5 + 3.5 * closeness);
  const spokes = Math.ceil(6 + 7 * closeness);
  const { nodes, weights } = gaussLegendre(rings);
  const size = rings * spokes;
  const points = {
    along: new Float64Array(size),
    across: new Float64Array(size),
    area: new Float64Array(size),
  };
  for (let i = 0; i < size; i++) {
    const ring = Math.floor(i / spokes);
    const angle = (((i % spokes) + 0.5) * Math.PI) / spokes;
    const r = radius * nodes[ring];
    points.along[i] = r * Math.cos(angle);
    points.across[i] = r * Math.sin(angle);
    points.area[i] = (2 * Math.PI * radius * r * weights[ring]) / spokes;
  }
  return points;
}

/** Sets of points for closeness ¼ and each STEP times the one before: an angle takes the least that is enough. */
const LEAST_CLOSENESS = 0.25;
const STEP = 2 ** 0.25;

/** Gives a face's points for a closeness; sets are made when first asked for. */
function pointSets(radius: number): (closeness: number) => FacePoints {
  const sets: FacePoints[] = [];
  return (closeness) => {
    const level = Math.max(0, Math.ceil(Math.log(closeness / LEAST_CLOSENESS) / Math.log(STEP)));
    sets[level] ??= facePoints(radius, LEAST_CLOSENESS * STEP ** level);
    return sets[level];
  };
}

/** The four pairs of pole faces, unlike poles facing (attraction). */
function facesOf(pair: MagnetPair, depth: number): Faces[] {
  const { radius, thickness, gap } = pair;
  const flaps = [
    { flap: depth, charge: 1 },
    { flap: depth - thickness, charge: -1 },
  ];
  const sills = [
    { sill: depth + gap, charge: -1 },
    { sill: depth + gap + thickness, charge: 1 },
  ];
  return flaps.flatMap(({ flap, charge }) =>
    sills.map(({ sill, charge: other }) => {
      return { flap, sill, sign: charge * other, distance: sill - flap - edgeDip(radius, flap) };
    }),
  );
}

/** Torque of a unit-charged sill face on a unit-charged flap face about the hinge: Σ r × F over the flap's face. */
function faceTorque(radius: number, faces: Faces, points: FacePoints, sin: number, cos: number): number {
  const { along, across, area } = points;
  let sum = 0;
  for (let i = 0; i < area.length; i++) {
    const x = faces.flap * sin + along[i] * cos;
    const y = along[i] * sin - faces.flap * cos;
    const rho = Math.sqrt(x * x + across[i] * across[i]);
    const height = y + faces.sill;
    const swing = (discRadialField(radius, rho, height) * x) / rho;
    sum += area[i] * (x * discAxialField(radius, rho, height) - y * swing);
  }
  return sum;
}

/**
 * Torque of one attracting sill pair about the hinge as a function of the angle (rad), per Br², N m/T²; negative at a
 * positive angle where it pulls back. `depth`: hinge to the flap magnet's lower pole face, m, more than the thickness.
 * The gap must be more than `edgeDip`, or the magnets would strike; time and points go with (radius/(gap − dip))².
 */
export function sillTorque(pair: MagnetPair, depth: number): (angle: number) => number {
  const scale = 1 / (4 * Math.PI * MU0);
  const { radius } = pair;
  const all = facesOf(pair, depth);
  const pointsFor = pointSets(radius);
  return (angle) => {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    let sum = 0;
    for (const faces of all) {
      const aside = Math.max(0, faces.flap * Math.abs(sin) - 2 * radius);
      const points = pointsFor(radius / Math.sqrt(aside * aside + faces.distance * faces.distance));
      sum += faces.sign * faceTorque(radius, faces, points, sin, cos);
    }
    return scale * sum;
  };
}
