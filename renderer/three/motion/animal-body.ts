/**
 * A plain four-legged body of an animal's own measures: back at shoulder height, as wide as its chest, nose to tail base as
 * stated, nose at the height it pushes at. Everything else is a proportion chosen for the picture (assumption). Lengths in m;
 * local frame: z forwards with the nose at 0, y up from the floor, x to its left.
 */
import type { Animal } from "../../../core/door/door.ts";

export interface Limb {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly upper: number;
  readonly lower: number;
  readonly radius: number;
  /** +1: the joint bends forwards (hind leg), −1: backwards. */
  readonly bend: 1 | -1;
  /** Part of the stride by which it is ahead. */
  readonly phase: number;
}

export interface AnimalBody {
  readonly shoulder: number;
  readonly length: number;
  readonly torso: {
    readonly front: number;
    readonly back: number;
    readonly height: number;
    readonly halfWidth: number;
    readonly halfDepth: number;
  };
  readonly head: {
    readonly y: number;
    readonly z: number;
    readonly radius: number;
    readonly halfWidth: number;
  };
  readonly nose: { readonly y: number; readonly radius: number };
  readonly limbs: readonly Limb[];
  readonly stride: number;
}

/** Part of a stride that a foot stands: a walk (assumption). */
export const DUTY = 0.64;

export function animalBody(animal: Animal): AnimalBody {
  const { shoulderHeight: shoulder, chestWidth, bodyLength: length } = animal;
  const halfDepth = Math.min(0.21 * shoulder, 0.24 * length);
  const headLength = Math.min(0.3 * length, Math.max(0.2 * length, 0.4 * shoulder));
  const radius = headLength * 0.34;
  const headY = Math.min(Math.max(animal.pushHeight, 0.5 * shoulder), shoulder - radius * 1.05);
  const front = -headLength * 0.95;
  return {
    shoulder,
    length,
    torso: {
      front,
      back: -length,
      height: shoulder - halfDepth,
      halfWidth: chestWidth / 2,
      halfDepth,
    },
    head: { y: headY, z: -headLength * 0.6, radius, halfWidth: Math.min(radius * 0.95, chestWidth * 0.45) },
    nose: { y: headY - radius * 0.22, radius: radius * 0.2 },
    limbs: limbs(shoulder, chestWidth, front, -length, halfDepth),
    stride: 1.1 * shoulder,
  };
}

function limbs(shoulder: number, chest: number, front: number, back: number, halfDepth: number): Limb[] {
  const y = shoulder - halfDepth * 1.25;
  const long = front - back;
  const x = chest * 0.29;
  const radius = Math.min(0.05 * shoulder, chest * 0.2);
  const leg = (side: 1 | -1, z: number, bend: 1 | -1, phase: number): Limb => ({
    x: side * x,
    y,
    z,
    upper: y * 0.53,
    lower: y * 0.53 - radius * 0.6,
    radius,
    bend,
    phase,
  });
  const foreZ = front - Math.min(0.16 * long, halfDepth * 0.9);
  const hindZ = back + Math.min(0.16 * long, halfDepth * 0.8);
  return [leg(1, hindZ, 1, 0), leg(1, foreZ, -1, 0.25), leg(-1, hindZ, 1, 0.5), leg(-1, foreZ, -1, 0.75)];
}
