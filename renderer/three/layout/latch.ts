/**
 * Bolt, solenoid and strike. The bolt is at one end of the meeting and the strike with its slot at the other: a bolt that
 * points up stands in the sill and the strike hangs on the flap; one that points down hangs on the flap above a strike on the
 * sill. The slot's mouth is `distanceFromHinge` below the hinge when they meet, the withdrawn tip `tipGap` short of it.
 * The part on the frame stands `offset` towards outdoors, so that they meet with the flap at θ_off.
 */
import type { Door, Latch } from "../../../core/door/door.ts";
import { FRAME, INDOOR_FACE } from "./assumptions.ts";
import { type Box, box, clamp, type Rod, rod } from "./solids.ts";

export interface BoltLayout {
  /** +1 points up, −1 down. */
  readonly direction: 1 | -1;
  /** Height of the withdrawn tip in the frame of what holds the solenoid. */
  readonly tip: number;
  /** Place of its axis, m from the frame's or the flap's plane. */
  readonly z: number;
  readonly radius: number;
  /** Shaft and collar with the bolt withdrawn. */
  readonly shaft: Rod;
  readonly collar: Rod;
  readonly guide: Rod;
  readonly coil: Rod;
  /** End plates of the solenoid's yoke. */
  readonly yoke: readonly Box[];
  /** Between yoke and collar, bolt withdrawn: foot and length. */
  readonly spring: { readonly foot: number; readonly length: number; readonly radius: number };
  readonly stroke: number;
}

export interface LatchLayout {
  readonly boltOn: "frame" | "flap";
  /** In the frame of what holds the solenoid: the world, or the flap. */
  readonly bolt: BoltLayout;
  /** In the other one's frame. */
  readonly strike: readonly Box[];
  readonly mouth: number;
  readonly strikeZ: number;
  /** Cut out of the flap's lower edge, flap frame; `null` where nothing has to be. */
  readonly notch: { readonly halfWidth: number; readonly top: number } | null;
  /** Room for the solenoid in the wall, open to the indoor face. */
  readonly pocket: Box | null;
}

const STRIKE_GRIP = 0.006;
const STRIKE_WEB = 0.002;
const COLLAR = 0.002;
const SPRING_LEAST = 0.006;
const YOKE = 0.0015;

export function boltStroke(door: Door, latch: Latch): number {
  return door.solenoid?.stroke ?? latch.tipGap + latch.engagement;
}

export function latchLayout(door: Door, hingeHeight: number, reach: number): LatchLayout | null {
  const { latch } = door;
  if (latch === null) return null;
  const stroke = boltStroke(door, latch);
  const pocketDepth = Math.max(stroke - latch.tipGap, latch.engagement) + 0.001;
  return latch.boltPoints === "up"
    ? boltInSill(door, latch, hingeHeight, reach, stroke, pocketDepth)
    : boltOnFlap(door, latch, hingeHeight, reach, stroke, pocketDepth);
}

function boltInSill(
  door: Door,
  latch: Latch,
  hingeHeight: number,
  reach: number,
  stroke: number,
  pocketDepth: number,
): LatchLayout {
  const top = Math.max(
    door.flap.hingeOffset,
    Math.min(latch.distanceFromHinge - pocketDepth - STRIKE_WEB, reach - STRIKE_GRIP),
  );
  const tip = hingeHeight - latch.distanceFromHinge - latch.tipGap;
  const underBoard = door.opening.sillHeight - FRAME.liner;
  const guide = Math.max(0.006, tip - underBoard);
  const room = tip - guide - stroke - COLLAR - SPRING_LEAST - 0.008;
  const bolt = boltLayout(latch, tip, 1, latch.offset, stroke, guide, clamp(room, 0.018, 0.032));
  return {
    boltOn: "frame",
    bolt,
    strike: strikeBoxes(latch, -latch.distanceFromHinge, -top, 1, 0, pocketDepth),
    mouth: -latch.distanceFromHinge,
    strikeZ: 0,
    notch: { halfWidth: strikeLength(latch) / 2, top: -top },
    pocket: pocketOf(bolt, underBoard),
  };
}

function boltOnFlap(
  door: Door,
  latch: Latch,
  hingeHeight: number,
  reach: number,
  stroke: number,
  pocketDepth: number,
): LatchLayout {
  const mouth = hingeHeight - latch.distanceFromHinge;
  const tip = -latch.distanceFromHinge + latch.tipGap;
  const bolt = boltLayout(latch, tip, -1, 0, stroke, 0.006, 0.026);
  const foot = Math.min(mouth - pocketDepth - STRIKE_WEB, door.opening.sillHeight);
  const coilTop = bolt.coil.centre[1] + bolt.coil.length / 2 + 0.003;
  return {
    boltOn: "flap",
    bolt,
    strike: strikeBoxes(latch, mouth, foot, -1, latch.offset, pocketDepth),
    mouth,
    strikeZ: latch.offset,
    notch: {
      halfWidth: Math.max(bolt.coil.radius + 0.003, strikeLength(latch) / 2 + 0.003),
      top: Math.max(-reach, Math.min(coilTop, -door.flap.hingeOffset - 0.01)),
    },
    pocket: null,
  };
}

/** Along the width, m. */
function strikeLength(latch: Latch): number {
  return latch.boltWidth + 0.002 + 0.016;
}

/** A block with the slot in it: from its mouth at y = `mouth` to its back at `back`, open towards −`inward`. */
function strikeBoxes(
  latch: Latch,
  mouth: number,
  back: number,
  inward: 1 | -1,
  z: number,
  pocketDepth: number,
): Box[] {
  const half = latch.edgeHalfWidth;
  const slot = latch.slotWidth / 2;
  const length = strikeLength(latch) / 2;
  const slotLength = latch.boltWidth / 2 + 0.001;
  const y: [number, number] = [mouth, back];
  const floor = mouth + inward * pocketDepth;
  return [
    box([-length, length], y, [z + slot, z + half]),
    box([-length, length], y, [z - half, z - slot]),
    box([slotLength, length], y, [z - slot, z + slot]),
    box([-length, -slotLength], y, [z - slot, z + slot]),
    box([-slotLength, slotLength], [floor, back], [z - slot, z + slot]),
  ];
}

/** Everything behind the withdrawn tip in a row: guide, room for collar and spring, solenoid. */
function boltLayout(
  latch: Latch,
  tip: number,
  direction: 1 | -1,
  z: number,
  stroke: number,
  guideLength: number,
  coilLength: number,
): BoltLayout {
  const radius = latch.boltWidth / 2;
  const behind = (distance: number) => tip - direction * distance;
  const span = (from: number, to: number, r: number): Rod =>
    rod("y", [0, (behind(from) + behind(to)) / 2, z], r, to - from);
  const collarAt = guideLength + stroke;
  const yokeAt = collarAt + COLLAR + SPRING_LEAST;
  const coilRadius = clamp(latch.boltWidth * 1.5, 0.008, 0.014);
  const plate = (from: number) =>
    box([-coilRadius, coilRadius], [behind(from), behind(from + YOKE)], [z - coilRadius, z + coilRadius]);
  return {
    direction,
    tip,
    z,
    radius,
    shaft: span(0, yokeAt + coilLength * 0.6, radius),
    collar: span(collarAt, collarAt + COLLAR, radius + 0.003),
    guide: span(0.0003, guideLength, radius + 0.003),
    coil: span(yokeAt + YOKE, yokeAt + coilLength - YOKE, coilRadius - 0.001),
    yoke: [plate(yokeAt), plate(yokeAt + coilLength - YOKE)],
    spring: { foot: behind(yokeAt), length: SPRING_LEAST, radius: radius + 0.002 },
    stroke,
  };
}

function pocketOf(bolt: BoltLayout, top: number): Box {
  const room = bolt.coil.radius + 0.009;
  const bottom = bolt.coil.centre[1] - bolt.coil.length / 2 - 0.008;
  return box([-room, room], [bottom, top], [INDOOR_FACE, bolt.z + room]);
}
