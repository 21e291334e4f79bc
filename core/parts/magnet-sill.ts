/**
 * The sill pair: the flap's magnet in its bottom edge, axis along the flap; the sill's below it, axis vertical.
 * Closed, both axes are one line; open, they meet at the flap's angle, so the face charges are integrated.
 */

import { type MagnetPair, MU0 } from "./magnet.ts";
import { discAxialField, discRadialField } from "./magnet-disc.ts";

/** A point of a disc's face: along the swing, along the flap's width, and its share of the area. */
interface FacePoints {
  readonly along: Float64Array;
  readonly across: Float64Array;
  readonly area: Float64Array;
}

/** One pole face of the flap against one of the sill: depths below the hinge when closed, product of their charges. */
interface Faces {
  readonly flap: number;
  readonly sill: number;
  readonly sign: number;
  readonly points: FacePoints;
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
 * Points over half a face (the other half mirrors it): Gauss–Legendre in the radius, midpoints in the angle, as many
 * as a rim charge at the given distance asks for.
 */
function facePoints(radius: number, distance: number): FacePoints {
  const closeness = Math.min(200, radius / distance);
  const rings = 8 + Math.ceil(7 * Math.sqrt(closeness) + closeness);
  const spokes = 8 + Math.ceil(10 * closeness);
  const { nodes, weights } = gaussLegendre(rings);
  const along: number[] = [];
  const across: number[] = [];
  const area: number[] = [];
  nodes.forEach((node, i) => {
    for (let j = 0; j < spokes; j++) {
      const angle = ((j + 0.5) * Math.PI) / spokes;
      along.push(radius * node * Math.cos(angle));
      across.push(radius * node * Math.sin(angle));
      area.push((2 * Math.PI * radius * radius * node * weights[i]) / spokes);
    }
  });
  return {
    along: Float64Array.from(along),
    across: Float64Array.from(across),
    area: Float64Array.from(area),
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
  // A face's edge dips by up to R²/(2 d) as it swings in from the side.
  const dip = (radius * radius) / (2 * depth);
  return flaps.flatMap(({ flap, charge }) =>
    sills.map(({ sill, charge: other }) => {
      const distance = Math.max(0.5 * (sill - flap), sill - flap - dip);
      return { flap, sill, sign: charge * other, points: facePoints(radius, distance) };
    }),
  );
}

/** Torque of a unit-charged sill face on a unit-charged flap face about the hinge: Σ r × F over the flap's face. */
function faceTorque(radius: number, faces: Faces, sin: number, cos: number): number {
  const { along, across, area } = faces.points;
  let sum = 0;
  for (let i = 0; i < area.length; i++) {
    const x = faces.flap * sin + along[i] * cos;
    const y = along[i] * sin - faces.flap * cos;
    const rho = Math.hypot(x, across[i]);
    const height = y + faces.sill;
    const swing = (discRadialField(radius, rho, height) * x) / rho;
    sum += area[i] * (x * discAxialField(radius, rho, height) - y * swing);
  }
  return sum;
}

/**
 * Torque of one attracting sill pair about the hinge as a function of the angle (rad), per Br², N m/T²; negative at a
 * positive angle where it pulls back. `depth`: hinge to the flap magnet's lower pole face, m.
 */
export function sillTorque(pair: MagnetPair, depth: number): (angle: number) => number {
  const scale = 1 / (4 * Math.PI * MU0);
  const all = facesOf(pair, depth);
  return (angle) => {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    let sum = 0;
    for (const faces of all) sum += faces.sign * faceTorque(pair.radius, faces, sin, cos);
    return scale * sum;
  };
}
