/**
 * The animal under the flap (model, section 6): the flap rides on its back until the tail base has passed.
 * Plain SI numbers; angles from the closed flap.
 */
import type { Animal } from "../door/door.ts";

/**
 * The angle at which the flap rides on the back and is let go, rad: θ_h = acos((z_h − shoulder)/b).
 * 0 if the edge clears the back, π if the back is further above the hinge than the flap is long (no flap
 * lets such an animal through: `shoulder ≥ z_h` is a failure of its own).
 */
export function letGoAngle(hingeHeight: number, shoulder: number, reach: number): number {
  return Math.acos(Math.min(1, Math.max(-1, (hingeHeight - shoulder) / reach)));
}

/** From the nose at the frame to the let-go, s: (body length + b sin θ_h)/speed. */
export function passTime(bodyLength: number, reach: number, angle: number, speed: number): number {
  return (bodyLength + reach * Math.sin(angle)) / speed;
}

/** What forbids the passage of an animal, whatever the latch does. */
export type PassageFailure = "hinge not above push" | "let go beyond stop" | "shoulder not below hinge";

export interface Carry {
  /** θ_h, rad, not limited by the stop. */
  readonly letGoAngle: number;
  /** s. */
  readonly passTime: number;
  /** Empty where the animal can pass. */
  readonly failures: readonly PassageFailure[];
}

/** One animal under one flap: hinge at `hingeHeight` above the floor, `reach` to the edge, stop at `stopAngle`. */
export function carry(animal: Animal, hingeHeight: number, reach: number, stopAngle: number): Carry {
  const angle = letGoAngle(hingeHeight, animal.shoulderHeight, reach);
  const failures: PassageFailure[] = [];
  if (hingeHeight <= animal.pushHeight) failures.push("hinge not above push");
  if (angle >= stopAngle) failures.push("let go beyond stop");
  if (animal.shoulderHeight >= hingeHeight) failures.push("shoulder not below hinge");
  return { letGoAngle: angle, passTime: passTime(animal.bodyLength, reach, angle, animal.speed), failures };
}
