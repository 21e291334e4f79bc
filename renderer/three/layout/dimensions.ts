/** The latch's sizes as a draughtsman writes them beside its section: where each line runs and what it measures. Pure. */
import type { Latch } from "../../../core/door/door.ts";
import type { LatchLayout } from "./latch.ts";

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
  readonly side: 0 | 1;
}

/** Each in the frame of the part that carries it, so that it goes with the flap. */
export interface LatchDimensions {
  readonly strike: readonly Dimension[];
  readonly bolt: readonly Dimension[];
}

export function latchDimensions(latch: Latch, placed: LatchLayout): LatchDimensions {
  return { strike: strikeDimensions(latch, placed), bolt: boltDimensions(latch, placed) };
}

/** How far from the middle the words stand, in half-widths of the edge. */
const WORDS = 1.9;

function strikeDimensions(latch: Latch, { bolt, mouth, strikeZ: z }: LatchLayout): Dimension[] {
  const { direction, radius } = bolt;
  const unit = latch.edgeHalfWidth;
  const slot = latch.slotWidth / 2;
  const engaged = mouth + direction * latch.engagement;
  const back = mouth + direction * (Math.max(bolt.stroke, latch.engagement) + unit * 1.1);
  const before = mouth - direction * unit * 0.9;
  return [
    upright(
      "engagement",
      latch.engagement,
      z + unit * WORDS,
      [mouth, z + slot],
      [engaged, z + slot],
      0,
      unit,
    ),
    level("slot", latch.slotWidth, back, [mouth, z - slot], [mouth, z + slot], z - unit * WORDS, 1),
    level("play", slot - radius, before, [mouth, z + radius], [mouth, z + slot], z + unit * WORDS, 0),
  ];
}

function boltDimensions(latch: Latch, { bolt }: LatchLayout): Dimension[] {
  const { direction, radius, tip, z } = bolt;
  const unit = latch.edgeHalfWidth;
  const mouth = tip + direction * latch.tipGap;
  const below = tip - direction * unit * 1.1;
  const left = z - unit * WORDS;
  const dimensions = [
    upright("tip gap", latch.tipGap, left, [tip, z - radius], [mouth, z - radius], 1, unit),
    level("bolt", latch.boltWidth, below, [tip, z - radius], [tip, z + radius], left, 1),
  ];
  if (latch.offset === 0) return dimensions;
  const far = tip - direction * unit * 2;
  const [near, other] = z === 0 ? [0, latch.offset] : [z - latch.offset, z];
  return [
    ...dimensions,
    level("offset", Math.abs(latch.offset), far, [mouth, near], [mouth, other], left, 1),
  ];
}

function upright(
  name: string,
  value: number,
  at: number,
  a: YZ,
  b: YZ,
  side: 0 | 1,
  unit: number,
): Dimension {
  const words = at + (side === 0 ? 1 : -1) * unit * 0.35;
  return {
    name,
    value,
    from: [a[0], at],
    to: [b[0], at],
    feet: [a, b],
    textAt: [(a[0] + b[0]) / 2, words],
    side,
  };
}

function level(name: string, value: number, at: number, a: YZ, b: YZ, words: number, side: 0 | 1): Dimension {
  return { name, value, from: [at, a[1]], to: [at, b[1]], feet: [a, b], textAt: [at, words], side };
}
