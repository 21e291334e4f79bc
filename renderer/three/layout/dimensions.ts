/** The latch's sizes as a draughtsman writes them beside its section: where each line runs and what it measures. Pure. */
import type { Latch } from "../../../core/door/door.ts";
import type { DoorLayout } from "./layout.ts";
import { latchPlace } from "./section.ts";

export type YZ = readonly [y: number, z: number];

export interface Dimension {
  readonly name: string;
  /** m. */
  readonly value: number;
  readonly from: YZ;
  readonly to: YZ;
  /** Places on the part that the line is about. */
  readonly feet: readonly [YZ, YZ];
  readonly textAt: YZ;
  /** Which side of the words lies at `textAt`: 0 left, 1 right. */
  readonly side: number;
}

/** Dimensions of the latch with the flap at home, in the world at the cut. */
export function latchDimensions(latch: Latch, layout: DoorLayout): readonly Dimension[] {
  const placed = layout.latch;
  if (placed === null) return [];
  const { mouth, tip } = latchPlace(layout, placed);
  const { direction, radius } = placed.bolt;
  const z = latch.offset;
  const unit = latch.edgeHalfWidth;
  const left = z - unit * 1.9;
  const right = z + unit * 1.9;
  const slot = latch.slotWidth / 2;
  const engaged = mouth + direction * latch.engagement;
  const back = mouth + direction * (Math.max(placed.bolt.stroke, latch.engagement) + unit * 1.1);
  const upright = (name: string, value: number, at: number, a: YZ, b: YZ): Dimension => ({
    name,
    value,
    from: [a[0], at],
    to: [b[0], at],
    feet: [a, b],
    textAt: [(a[0] + b[0]) / 2, at + Math.sign(at - z) * unit * 0.35],
    side: at < z ? 1 : 0,
  });
  const level = (
    name: string,
    value: number,
    at: number,
    a: YZ,
    b: YZ,
    textZ: number,
    side: number,
  ): Dimension => ({
    name,
    value,
    from: [at, a[1]],
    to: [at, b[1]],
    feet: [a, b],
    textAt: [at, textZ],
    side,
  });
  const below = tip - direction * unit * 0.75;
  const dimensions = [
    upright("tip gap", latch.tipGap, left, [tip, z - radius], [mouth, z - slot]),
    upright("engagement", latch.engagement, right, [mouth, z + slot], [engaged, z + slot]),
    level("slot", latch.slotWidth, back, [mouth, z - slot], [mouth, z + slot], left, 1),
    level("bolt", latch.boltWidth, below, [tip, z - radius], [tip, z + radius], left, 1),
    level("play", slot - radius, below, [tip, z + radius], [mouth, z + slot], right, 0),
  ];
  if (latch.offset === 0) return dimensions;
  const far = tip - direction * unit * 1.7;
  return [...dimensions, level("offset", Math.abs(latch.offset), far, [mouth, 0], [mouth, z], right, 0)];
}
