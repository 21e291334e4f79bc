/** The faces of a cut across the hinge: what a plane at one x goes through, as flat outlines in y and z. Pure. */
import type { PlateLayout } from "./flap.ts";
import type { BoltLayout, LatchLayout } from "./latch.ts";
import type { DoorLayout } from "./layout.ts";
import type { Disc } from "./magnets.ts";
import { type Box, box, isBox, type Rod, rod, type Stuff } from "./solids.ts";
import { layerBoxes, type WallLayer } from "./wall.ts";

/** An outline in y and z, convex, in order. Of two that overlap the higher layer lies on top. */
export interface CutFace {
  readonly stuff: Stuff;
  readonly layer: number;
  readonly outline: readonly (readonly [y: number, z: number])[];
}

export interface CutFaces {
  /** World frame. */
  readonly fixed: readonly CutFace[];
  /** Flap frame. */
  readonly flap: readonly CutFace[];
  /** Frame of what holds the solenoid, with the bolt withdrawn. */
  readonly bolt: readonly CutFace[];
}

export function cutFaces(layout: DoorLayout, x: number): CutFaces {
  const cut = (shapes: readonly (Box | Rod)[], stuff: Stuff, layer: number) =>
    shapes.flatMap((shape) => faceOf(shape, x, stuff, layer));
  const { wall, frame, hinge, magnets, latch } = layout;
  const layer = (parts: readonly WallLayer[]) => parts.flatMap((part) => layerBoxes(part, x));
  const still = latch === null ? [] : solenoidFaces(latch.bolt, cut);
  const strike = latch === null ? [] : cut(latch.strike, "steel", 4);
  const fixed = [
    ...cut([wall.slab], "core", 0),
    ...cut([wall.indoorFloor], "boards", 1),
    ...cut([wall.outdoorFloor], "paving", 1),
    ...cut(layer(wall.core), "core", 1),
    ...cut(layer(wall.plaster), "plaster", 2),
    ...cut(layer(wall.cladding), "cladding", 2),
    ...cut([...frame.boards, ...frame.casing, frame.sill], "timber", 3),
    ...(frame.rail === null ? [] : cut([frame.rail], "timber", 3)),
    ...cut(hinge.fixedKnuckles, "steel", 4),
    ...cut([hinge.pin], "steel", 6),
    ...cut((magnets?.onFrame ?? []).map(discRod), "magnet", 5),
  ];
  const flap = [
    ...cut(plateBoxes(layout.plate), "flap", 3),
    ...cut([...hinge.flapKnuckles, ...hinge.leaves], "steel", 4),
    ...cut(layout.weights, "steel", 4),
    ...cut(magnets?.carriers ?? [], "plastic", 4),
    ...cut((magnets?.onFlap ?? []).map(discRod), "magnet", 5),
  ];
  const bolt = latch === null ? [] : cut([latch.bolt.shaft, latch.bolt.collar], "brass", 7);
  return latch === null || latch.boltOn === "frame"
    ? { fixed: [...fixed, ...still], flap: [...flap, ...strike], bolt }
    : { fixed: [...fixed, ...strike], flap: [...flap, ...still], bolt };
}

type Cut = (shapes: readonly (Box | Rod)[], stuff: Stuff, layer: number) => CutFace[];

function solenoidFaces(bolt: BoltLayout, cut: Cut): CutFace[] {
  return [...cut([bolt.guide], "steel", 4), ...cut([bolt.coil], "copper", 5), ...cut(bolt.yoke, "steel", 6)];
}

export function discRod({ axis, centre, radius, thickness }: Disc): Rod {
  return rod(axis, centre, radius, thickness);
}

/** The plate as boxes around its notch. */
export function plateBoxes({ halfWidth, top, bottom, thickness, notch }: PlateLayout): Box[] {
  const z: [number, number] = [-thickness / 2, thickness / 2];
  if (notch === null || notch.top <= bottom) return [box([-halfWidth, halfWidth], [bottom, top], z)];
  return [
    box([-halfWidth, -notch.halfWidth], [bottom, top], z),
    box([notch.halfWidth, halfWidth], [bottom, top], z),
    box([-notch.halfWidth, notch.halfWidth], [notch.top, top], z),
  ];
}

function faceOf(shape: Box | Rod, x: number, stuff: Stuff, layer: number): CutFace[] {
  const outline = isBox(shape) ? boxOutline(shape, x) : rodOutline(shape, x);
  return outline === null ? [] : [{ stuff, layer, outline }];
}

function boxOutline({ min, max }: Box, x: number): CutFace["outline"] | null {
  if (x < min[0] || x > max[0]) return null;
  return [
    [min[1], min[2]],
    [min[1], max[2]],
    [max[1], max[2]],
    [max[1], min[2]],
  ];
}

const ROUND = 24;

function rodOutline({ axis, centre, radius, length }: Rod, x: number): CutFace["outline"] | null {
  const away = Math.abs(x - centre[0]);
  if (axis === "x") {
    if (away > length / 2) return null;
    return Array.from({ length: ROUND }, (_, i) => {
      const turn = (2 * Math.PI * i) / ROUND;
      return [centre[1] + radius * Math.cos(turn), centre[2] + radius * Math.sin(turn)] as const;
    });
  }
  if (away >= radius) return null;
  const half = Math.sqrt(radius * radius - away * away);
  const [tall, deep] = axis === "y" ? [length / 2, half] : [half, length / 2];
  return [
    [centre[1] - tall, centre[2] - deep],
    [centre[1] - tall, centre[2] + deep],
    [centre[1] + tall, centre[2] + deep],
    [centre[1] + tall, centre[2] - deep],
  ];
}

/** Where the latch is in the world with the flap closed, for labels and for the camera. */
export function latchPlace(layout: DoorLayout, latch: LatchLayout): { mouth: number; tip: number } {
  const strikeAt = latch.boltOn === "frame" ? layout.hingeHeight : 0;
  const boltAt = latch.boltOn === "frame" ? 0 : layout.hingeHeight;
  return { mouth: strikeAt + latch.mouth, tip: boltAt + latch.bolt.tip };
}
