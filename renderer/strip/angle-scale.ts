/**
 * Angles on the strip's small trace. The capture band is some tenths of a degree where the swing is sixty, so angles are
 * drawn to an inverse hyperbolic sine: even near the slot, ever closer together away from it. Without a latch: to scale.
 */
import { niceStep } from "./time-axis.ts";

export interface AngleScale {
  /** Angle drawn in the middle, rad: the slot's. */
  readonly centre: number;
  /** The largest distance from the centre that is drawn, rad. */
  readonly reach: number;
  /** rad; angles within it are drawn nearly to scale. `null`: all of them are. */
  readonly even: number | null;
  readonly top: number;
  readonly height: number;
}

/** Share of the half height at an angle, −1 to 1, outdoors positive. */
function share({ centre, reach, even }: AngleScale, angle: number): number {
  const away = angle - centre;
  if (even === null) return away / reach;
  return Math.asinh(away / even) / Math.asinh(reach / even);
}

/** px from the top; outdoors is up. */
export function angleY(scale: AngleScale, angle: number): number {
  return scale.top + (scale.height / 2) * (1 - share(scale, angle));
}

/** The scale for a capture half-angle (`null` without a latch) and the largest angle from the centre, rad. */
export function angleScale(
  centre: number,
  capture: number | null,
  largest: number,
  top: number,
  height: number,
): AngleScale {
  const reach = Math.max(largest * 1.06, capture === null ? 0.02 : capture * 4);
  return { centre, reach, even: capture === null ? null : capture, top, height };
}

/** Angles worth a tick beside the slot's, rad, rising in size: one per side, away from each other. */
export function angleTicks(scale: AngleScale): number[] {
  const largest = (scale.reach / 1.06) * (180 / Math.PI);
  const outer = Math.floor(largest / niceStep(largest / 8)) * niceStep(largest / 8);
  return outer > 0 ? [(outer * Math.PI) / 180] : [];
}
