/** Rounded solids of the animal's body. */
import { type BufferGeometry, SphereGeometry } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { AnimalBody, Limb } from "../motion/animal-body.ts";
import { loftGeometry, type Station, smoothStations, taperedGeometry } from "./loft.ts";

/** Between two places in the middle plane (y, z), thick at the first and thin at the second, `wide` times as wide as thick. */
function taper(
  from: readonly [number, number],
  to: readonly [number, number],
  radii: readonly [number, number],
  wide = 1,
): BufferGeometry {
  const [dy, dz] = [to[0] - from[0], to[1] - from[1]];
  return taperedGeometry(Math.hypot(dy, dz), radii[0], radii[1])
    .scale(wide, 1, 1)
    .rotateX(Math.atan2(-dz, -dy))
    .translate(0, from[0], from[1]);
}

function ball(x: number, y: number, z: number, radii: readonly [number, number, number]): BufferGeometry {
  return new SphereGeometry(1, 16, 12).scale(...radii).translate(x, y, z);
}

/** Trunk, neck, head, muzzle, ears and tail in one. */
export function bodyGeometry(body: AnimalBody): BufferGeometry {
  const { head, nose } = body;
  return mergeGeometries([
    loftGeometry(smoothStations(trunkStations(body), 2), 24),
    neck(body),
    ball(0, head.y, head.z, [head.halfWidth, head.radius * 0.94, head.radius * 1.12]),
    taper(
      [head.y - head.radius * 0.2, head.z + head.radius * 0.5],
      [nose.y, -nose.radius * 1.7],
      [head.radius * 0.56, head.radius * 0.36],
      1.05,
    ),
    ...[-1, 1].map((side) => ear(body, side)),
    tail(body),
  ]);
}

/**
 * Along the back from the rump (0) to the chest (1): width and depth as parts of the chest's, and how far the back lies below
 * the shoulder as part of the half-depth. The back stays at shoulder height to the tail base: the flap rides on it.
 */
const TRUNK: readonly (readonly [at: number, width: number, depth: number, drop: number])[] = [
  [-0.05, 0, 0, 0.75],
  [-0.045, 0.34, 0.4, 0.32],
  [-0.03, 0.58, 0.66, 0.12],
  [0, 0.74, 0.82, 0.02],
  [0.06, 0.86, 0.9, 0],
  [0.2, 0.9, 0.9, 0],
  [0.4, 0.86, 0.85, 0],
  [0.6, 0.94, 0.94, 0],
  [0.78, 1, 1.04, 0],
  [0.9, 0.92, 1, 0.02],
  [0.97, 0.7, 0.8, 0.14],
  [1.01, 0.4, 0.48, 0.4],
  [1.02, 0, 0, 0.8],
];

function trunkStations({ torso, shoulder }: AnimalBody): Station[] {
  const long = torso.front - torso.back;
  return TRUNK.map(([at, width, depth, drop]) => {
    const halfHeight = torso.halfDepth * depth;
    return {
      z: torso.back + at * long,
      y: shoulder - drop * torso.halfDepth - halfHeight,
      halfWidth: torso.halfWidth * width,
      halfHeight,
    };
  });
}

function neck({ torso, head, shoulder }: AnimalBody): BufferGeometry {
  const thick = Math.min(torso.halfDepth * 0.66, torso.halfWidth * 0.9);
  return taper(
    [shoulder - thick * 1.12, torso.front - torso.halfDepth * 0.75],
    [head.y - head.radius * 0.12, head.z - head.radius * 0.25],
    [thick, head.radius * 0.78],
    0.92,
  );
}

/** Laid back along the head: an animal that pushes a flap does so. */
function ear({ head }: AnimalBody, side: number): BufferGeometry {
  const { radius } = head;
  return ball(0, 0, 0, [radius * 0.13, radius * 0.36, radius * 0.6])
    .rotateX(-0.35)
    .rotateZ(side * 0.25)
    .translate(side * head.halfWidth * 0.92, head.y + radius * 0.1, head.z - radius * 0.5);
}

function tail({ torso, shoulder, length }: AnimalBody): BufferGeometry {
  const radius = Math.min(0.036 * shoulder, torso.halfWidth * 0.25);
  const y = shoulder - 0.3 * torso.halfDepth;
  return taper(
    [y, torso.back + torso.halfDepth * 0.1],
    [y - 0.16 * shoulder, torso.back - 0.2 * length],
    [radius * 1.15, radius * 0.55],
  );
}

/** Eyes and the tip of the nose. */
export function faceGeometry({ head, nose }: AnimalBody): BufferGeometry {
  const { radius, halfWidth } = head;
  const eye = radius * 0.12;
  return mergeGeometries([
    ball(0, nose.y + nose.radius * 0.6, -nose.radius, [nose.radius * 1.15, nose.radius * 0.9, nose.radius]),
    ...[-1, 1].map((side) =>
      ball(side * halfWidth * 0.6, head.y + radius * 0.3, head.z + radius * 0.84, [eye, eye, eye]),
    ),
  ]);
}

/** From the joint down. */
export function limbGeometry(limb: Limb, part: "upper" | "lower"): BufferGeometry {
  const { radius, upper, lower, bend } = limb;
  if (part === "upper")
    return taperedGeometry(upper, radius * (bend === 1 ? 2.3 : 1.9), radius * 1.08).scale(0.8, 1, 1);
  const paw = ball(0, -lower, radius * 0.45, [radius * 1.15, radius * 0.85, radius * 1.55]);
  return mergeGeometries([taperedGeometry(lower, radius * 1.08, radius * 0.8), paw]);
}
