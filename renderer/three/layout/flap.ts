/** The plate with what is cut out of it, its weights and the brush around it. Flap frame unless said otherwise. */
import type { Door, ExtraMass, Flap, Seal } from "../../../core/door/door.ts";
import { STEEL_DENSITY } from "./assumptions.ts";
import type { LatchLayout } from "./latch.ts";
import { type Box, box, clamp } from "./solids.ts";

export interface PlateLayout {
  readonly halfWidth: number;
  /** Top and bottom edge below the hinge axis, negative. */
  readonly top: number;
  readonly bottom: number;
  readonly thickness: number;
  readonly notch: LatchLayout["notch"];
  readonly material: string;
}

/** A brush on both jambs that the flap leaves at the contact angle: half as wide at each height as the flap moves there. */
export interface SealLayout {
  readonly x: readonly (readonly [from: number, to: number])[];
  /** World heights. */
  readonly top: number;
  readonly bottom: number;
  readonly topHalf: number;
  readonly bottomHalf: number;
}

export function plateLayout(flap: Flap, latch: LatchLayout | null): PlateLayout {
  return {
    halfWidth: flap.width / 2,
    top: -flap.hingeOffset,
    bottom: -flap.hingeOffset - flap.height,
    thickness: flap.thickness,
    notch: latch?.notch ?? null,
    material: flap.material,
  };
}

/** A steel bar of the stated mass on the indoor face, its centre at the stated distance. */
export function weightBox(weight: ExtraMass, flap: Flap): Box {
  const volume = weight.mass / STEEL_DENSITY;
  const length = clamp(8 * Math.cbrt(volume / 2), 0.1 * flap.width, 0.7 * flap.width);
  const depth = Math.sqrt(volume / length / 2);
  const face = -flap.thickness / 2;
  const y = -weight.distanceFromHinge;
  return box([-length / 2, length / 2], [y - depth, y + depth], [face - depth, face]);
}

/** Longest bristles drawn to either side, m: a wide contact angle is not drawn across the whole room. */
const LONGEST_HALF = 0.03;

export function sealLayout(door: Door, hingeHeight: number, reach: number): SealLayout | null {
  const { seal, flap, opening } = door;
  const gap = (opening.width - flap.width) / 2;
  if (!hasSeal(seal) || gap <= 0) return null;
  const half = (r: number) => clamp(r * Math.sin(seal.contactAngle), 0.002, LONGEST_HALF);
  return {
    x: [
      [-opening.width / 2, -flap.width / 2],
      [flap.width / 2, opening.width / 2],
    ],
    top: hingeHeight - flap.hingeOffset,
    bottom: hingeHeight - reach,
    topHalf: half(flap.hingeOffset),
    bottomHalf: half(reach),
  };
}

function hasSeal(seal: Seal): boolean {
  return seal.frictionTorque > 0;
}
