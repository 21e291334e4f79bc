/** The hold's end by keyboard and by pointer: pure steps, limits and rounding. */
import { niceStep } from "./time-axis.ts";

/** Holds that can be set, s. */
export interface HoldLimits {
  readonly least: number;
  readonly most: number;
}

/** s an arrow key moves by; Shift and the page keys move ten times as far. */
export const KEY_STEP = 0.1;

/** The hold after a key, rounded to whole steps and kept within the limits; `null` for a key that does not move it. */
export function holdAfterKey(
  hold: number,
  key: string,
  shift: boolean,
  { least, most }: HoldLimits,
): number | null {
  const by = (steps: number): number => {
    const moved = roundedTo(hold, KEY_STEP) + steps * KEY_STEP * (shift ? 10 : 1);
    return Math.min(most, Math.max(least, roundedTo(moved, KEY_STEP)));
  };
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return by(1);
    case "ArrowLeft":
    case "ArrowDown":
      return by(-1);
    case "PageUp":
      return by(shift ? 1 : 10);
    case "PageDown":
      return by(shift ? -1 : -10);
    case "Home":
      return least;
    case "End":
      return most;
    default:
      return null;
  }
}

/** The nearest multiple of a step, as the decimal a person would write. */
export function roundedTo(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(12));
}

/** The finest step that the pointer can tell apart at this zoom, s: nothing finer than 0.01 s. */
export function pointerStep(secondsPerPixel: number): number {
  return niceStep(Math.max(0.01, secondsPerPixel));
}

/** The hold for a pointer, in whole steps within the limits. */
export function holdAtPointer(raw: number, step: number, { least, most }: HoldLimits): number {
  return Math.min(most, Math.max(least, roundedTo(raw, step)));
}
