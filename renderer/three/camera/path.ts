/** The way from one standpoint to another: around what is looked at, never through it. Pure but for what it writes to. */
import type { PerspectiveCamera, Vector3 } from "three";
import type { Standpoint } from "./standpoints.ts";

/** A standpoint as a look direction and how much is seen, which can be blended. */
interface Polar {
  readonly target: readonly [number, number, number];
  readonly azimuth: number;
  readonly height: number;
  readonly fov: number;
  /** Half the picture's height at the target, m. */
  readonly extent: number;
}

export interface Move {
  readonly from: Polar;
  readonly to: Polar;
  /** Where it ends to the last bit, whatever way led there: the same view is the same picture. */
  readonly end: Standpoint;
}

export function polar({ position, target, fov }: Standpoint): Polar {
  const [x, y, z] = [position[0] - target[0], position[1] - target[1], position[2] - target[2]];
  const distance = Math.hypot(x, y, z);
  return {
    target,
    azimuth: Math.atan2(x, z),
    height: Math.asin(y / distance),
    fov,
    extent: distance * Math.tan((fov * Math.PI) / 360),
  };
}

/** From one to the other the short way round. */
export function move(from: Standpoint, to: Standpoint): Move {
  const start = polar(from);
  const end = polar(to);
  const turn = end.azimuth - start.azimuth;
  const short = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return { from: start, to: { ...end, azimuth: start.azimuth + short }, end: to };
}

/** Puts the camera `part` of the way along, 0 to 1, eased at both ends. */
export function placeAlong(way: Move, part: number, camera: PerspectiveCamera, target: Vector3): void {
  if (part >= 1) placeAt(way.end, camera, target);
  else placeBetween(way, part * part * (3 - 2 * part), camera, target);
  const distance = camera.position.distanceTo(target);
  camera.near = distance * 0.05;
  camera.far = distance * 4 + 6;
  camera.lookAt(target);
  camera.updateProjectionMatrix();
}

function placeAt(
  { position, target: at, fov }: Standpoint,
  camera: PerspectiveCamera,
  target: Vector3,
): void {
  target.set(...at);
  camera.position.set(...position);
  camera.fov = fov;
}

function placeBetween({ from, to }: Move, k: number, camera: PerspectiveCamera, target: Vector3): void {
  const mix = (a: number, b: number) => a + (b - a) * k;
  camera.fov = mix(from.fov, to.fov);
  const distance = mix(from.extent, to.extent) / Math.tan((camera.fov * Math.PI) / 360);
  const azimuth = mix(from.azimuth, to.azimuth);
  const height = mix(from.height, to.height);
  target.set(
    mix(from.target[0], to.target[0]),
    mix(from.target[1], to.target[1]),
    mix(from.target[2], to.target[2]),
  );
  camera.position.set(
    target.x + distance * Math.cos(height) * Math.sin(azimuth),
    target.y + distance * Math.sin(height),
    target.z + distance * Math.cos(height) * Math.cos(azimuth),
  );
}
