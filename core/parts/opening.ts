/**
 * The opening in the wall or door, against the animals that use it (model, section 6). Plain SI numbers.
 */
import type { Animal, Opening } from "../door/door.ts";

/** Hinge axis above the floor, m: z_h = sill height + bottom clearance + b. */
export function hingeHeight(sillHeight: number, bottomClearance: number, reach: number): number {
  return sillHeight + bottomClearance + reach;
}

/** Height left above the back, m: opening height − (shoulder − sill height + margin); negative does not fit. */
export function heightSpare(height: number, shoulder: number, sillHeight: number, margin: number): number {
  return height - (shoulder - sillHeight + margin);
}

/** Width left beside the chest, m: opening width − chest width − margin. */
export function widthSpare(width: number, chestWidth: number, margin: number): number {
  return width - chestWidth - margin;
}

/** Step left to the highest the animal steps with ease, m: ratio × shoulder − sill height. */
export function stepSpare(stepRatio: number, shoulder: number, sillHeight: number): number {
  return stepRatio * shoulder - sillHeight;
}

/** Spare room, m; negative does not fit. */
export interface Fit {
  readonly height: number;
  readonly width: number;
  readonly step: number;
}

export interface FitResult extends Fit {
  /** The same figures per animal, in the door's order. */
  readonly each: readonly Fit[];
}

/** One animal in one opening. */
export function animalFit(opening: Opening, animal: Animal): Fit {
  const { sillHeight } = opening;
  return {
    height: heightSpare(opening.height, animal.shoulderHeight, sillHeight, opening.heightMargin),
    width: widthSpare(opening.width, animal.chestWidth, opening.widthMargin),
    step: stepSpare(animal.stepRatio, animal.shoulderHeight, sillHeight),
  };
}

/** Every animal in the opening, and each figure's least over the animals (a door has at least one). */
export function fitResult(opening: Opening, animals: readonly Animal[]): FitResult {
  const each = animals.map((animal) => animalFit(opening, animal));
  return {
    height: Math.min(...each.map((one) => one.height)),
    width: Math.min(...each.map((one) => one.width)),
    step: Math.min(...each.map((one) => one.step)),
    each,
  };
}
