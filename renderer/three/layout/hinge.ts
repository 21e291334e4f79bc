/** Pin and knuckles along the flap's top edge, by turns on the frame and on the flap. World frame; the axis does not move. */
import type { Flap } from "../../../core/door/door.ts";
import { type Box, box, clamp, type Rod, rod } from "./solids.ts";

export interface HingeLayout {
  readonly pin: Rod;
  readonly fixedKnuckles: readonly Rod[];
  /** Flap frame. */
  readonly flapKnuckles: readonly Rod[];
  /** Strips that grip the plate, flap frame. */
  readonly leaves: readonly Box[];
  readonly knuckleRadius: number;
}

const KNUCKLES = 7;
/** How far the leaves reach down over the plate, m. */
const GRIP = 0.016;
const LEAF = 0.0014;

/** Radius of the knuckles, m: what fits between the axis and the plate's top edge, within reason. */
export function knuckleRadius(flap: Flap): number {
  return clamp(flap.hingeOffset * 0.8, 0.0028, 0.007);
}

export function hingeLayout(flap: Flap, hingeHeight: number): HingeLayout {
  const radius = knuckleRadius(flap);
  const length = flap.width / KNUCKLES;
  const knuckle = (i: number, y: number) =>
    rod("x", [-flap.width / 2 + (i + 0.5) * length, y, 0], radius, length * 0.97);
  const places = Array.from({ length: KNUCKLES }, (_, i) => i);
  return {
    pin: rod("x", [0, hingeHeight, 0], radius * 0.5, flap.width + 0.004),
    fixedKnuckles: places.filter((i) => i % 2 === 0).map((i) => knuckle(i, hingeHeight)),
    flapKnuckles: places.filter((i) => i % 2 === 1).map((i) => knuckle(i, 0)),
    leaves: leaves(flap, radius),
    knuckleRadius: radius,
  };
}

function leaves(flap: Flap, radius: number): Box[] {
  const half = flap.thickness / 2;
  const x: [number, number] = [-flap.width / 2, flap.width / 2];
  const y: [number, number] = [-flap.hingeOffset - Math.min(GRIP, flap.height / 4), -radius * 0.6];
  return [box(x, y, [half, half + LEAF]), box(x, y, [-half - LEAF, -half])];
}
