/** The replay at any moment: straight lines between its samples, into an object made once. */
import type { Replay } from "../../../core/passage/replay.ts";

export interface Sample {
  /** rad, positive outwards. */
  angle: number;
  /** Bolt extension, m. */
  bolt: number;
  /** The coil is driven. */
  coil: boolean;
  /** Nose of the animal past the frame in its direction of travel, m. */
  nose: number;
}

export function emptySample(): Sample {
  return { angle: 0, bolt: 0, coil: false, nose: 0 };
}

/**
 * Writes the state at `time`, s from detection, into `out` and returns it. Before the first sample and after the last the
 * film stands still; the coil is what it was at the sample before.
 */
export function sampleReplay(replay: Replay, time: number, out: Sample): Sample {
  const last = replay.time.length - 1;
  const place = Math.min(last, Math.max(0, (time - replay.time[0]) / replay.interval));
  const before = Math.min(last, Math.floor(place));
  const after = Math.min(last, before + 1);
  const part = place - before;
  out.angle = between(replay.angle[before], replay.angle[after], part);
  out.bolt = between(replay.bolt[before], replay.bolt[after], part);
  out.nose = between(replay.nose[before], replay.nose[after], part);
  out.coil = replay.coil[before] === 1;
  return out;
}

function between(a: number, b: number, part: number): number {
  return part === 0 ? a : a + (b - a) * part;
}
