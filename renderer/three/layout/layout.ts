/**
 * A door as the picture needs it: every box and cylinder with its place, in metres. Pure; what moves is in the frame of the
 * thing it moves with. Levels: `solids` · `assumptions` · one file per subject · this.
 */
import type { Door } from "../../../core/door/door.ts";
import { type PlateLayout, plateLayout, type SealLayout, sealLayout, weightBox } from "./flap.ts";
import { type FrameLayout, frameLayout } from "./frame.ts";
import { type HingeLayout, hingeLayout, knuckleRadius } from "./hinge.ts";
import { type LatchLayout, latchLayout } from "./latch.ts";
import { type MagnetLayout, magnetLayout } from "./magnets.ts";
import type { Box } from "./solids.ts";
import { openingTop, type WallLayout, wallLayout } from "./wall.ts";

export interface DoorLayout {
  /** Hinge axis above the floor. */
  readonly hingeHeight: number;
  /** Hinge axis to the flap's bottom edge. */
  readonly reach: number;
  /** Clear opening, world frame. */
  readonly opening: { readonly halfWidth: number; readonly bottom: number; readonly top: number };
  readonly wall: WallLayout;
  readonly frame: FrameLayout;
  readonly hinge: HingeLayout;
  readonly plate: PlateLayout;
  readonly weights: readonly Box[];
  readonly magnets: MagnetLayout | null;
  readonly latch: LatchLayout | null;
  readonly seal: SealLayout | null;
}

/** Sizes that the computation has already worked out. */
export interface GivenGeometry {
  readonly hingeHeight: number;
  readonly reach: number;
}

export function layoutDoor(door: Door, given: GivenGeometry): DoorLayout {
  const { hingeHeight, reach } = given;
  const hingeTop = hingeHeight + knuckleRadius(door.flap) + 0.001;
  const top = openingTop(door, hingeTop);
  const latch = latchLayout(door, hingeHeight, reach);
  return {
    hingeHeight,
    reach,
    opening: { halfWidth: door.opening.width / 2, bottom: door.opening.sillHeight, top },
    wall: wallLayout(door, reach, top, latch?.pocket ?? null),
    frame: frameLayout(door, top, hingeTop),
    hinge: hingeLayout(door.flap, hingeHeight),
    plate: plateLayout(door.flap, latch),
    weights: door.flap.extraMasses.map((weight) => weightBox(weight, door.flap)),
    magnets: magnetLayout(door, hingeHeight),
    latch,
    seal: sealLayout(door, hingeHeight, reach),
  };
}
