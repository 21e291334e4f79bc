/** One passage as a film: flap, bolt, coil and animal at equal times from detection to the end, all from the computed door. */
import type { Outcome } from "./relatch.ts";

/** Moments of a passage, s from detection; `null` where the door has none (no latch, no timer, never rests). */
export interface PassageMarks {
  readonly arrival: number;
  /** The coil has withdrawn the bolt. */
  readonly unlocked: number | null;
  readonly letGo: number;
  /** Last counted pulse: the hold's time zero. */
  readonly holdStarts: number | null;
  readonly holdEnds: number | null;
  /** The bolt's tip is at the slot's mouth again. */
  readonly mouth: number | null;
  /** The relatch is decided. */
  readonly decided: number | null;
  /** The free swing comes inside the bolt's play to stay. */
  readonly settled: number | null;
  readonly rest: number | null;
}

/** Columns of equal length, `interval` apart. Plain data: it may cross to another thread as it is. */
export interface Replay {
  readonly interval: number;
  /** s from detection. */
  readonly time: Float64Array;
  /** Flap, rad, positive outwards. */
  readonly angle: Float64Array;
  /** rad/s. */
  readonly speed: Float64Array;
  /** Bolt extension, m: 0 is withdrawn, `tipGap` at the slot's mouth, `stroke` fully out. */
  readonly bolt: Float64Array;
  /** 1 while the coil is driven. */
  readonly coil: Uint8Array;
  /** Nose of the animal, m past the frame in its direction of travel; negative before it. */
  readonly nose: Float64Array;
  /** +1 where the animal goes outwards (the flap is let go at a positive angle), else −1. */
  readonly direction: 1 | -1;
  readonly marks: PassageMarks;
  readonly outcome: Outcome | null;
}
