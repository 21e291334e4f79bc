/**
 * The shapes a layout is made of, in metres. World frame: x along the hinge, y up from the floor, z from indoors to outdoors,
 * the hinge axis at z = 0. Flap frame: the same axes with the origin on the hinge axis, turned with the flap.
 */

export type Vec3 = readonly [x: number, y: number, z: number];
export type Axis = "x" | "y" | "z";

export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
  /** Direction of the grain, for wood. */
  readonly grain?: Axis;
}

/** A cylinder along one axis. */
export interface Rod {
  readonly axis: Axis;
  readonly centre: Vec3;
  readonly radius: number;
  readonly length: number;
}

/** What a solid is made of, as a cut shows it. */
export type Stuff =
  | "plaster"
  | "core"
  | "cladding"
  | "timber"
  | "boards"
  | "paving"
  | "flap"
  | "steel"
  | "brass"
  | "copper"
  | "plastic"
  | "magnet";

export const AXIS_INDEX: Readonly<Record<Axis, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

export function box(
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
): Box {
  return {
    min: [Math.min(...x), Math.min(...y), Math.min(...z)],
    max: [Math.max(...x), Math.max(...y), Math.max(...z)],
  };
}

export function grained(one: Box, grain: Axis): Box {
  return { ...one, grain };
}

export function rod(axis: Axis, centre: Vec3, radius: number, length: number): Rod {
  return { axis, centre, radius, length };
}

export function isBox(shape: Box | Rod): shape is Box {
  return "min" in shape;
}

export function middle({ min, max }: Box): Vec3 {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

export function size({ min, max }: Box): Vec3 {
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
}

/** Bounds of a rod. */
export function rodBounds({ axis, centre, radius, length }: Rod): Box {
  const half = [radius, radius, radius];
  half[AXIS_INDEX[axis]] = length / 2;
  return {
    min: [centre[0] - half[0], centre[1] - half[1], centre[2] - half[2]],
    max: [centre[0] + half[0], centre[1] + half[1], centre[2] + half[2]],
  };
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
