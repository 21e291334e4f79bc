/** Timer programs of doors for the tests. */
import { type Computed, compute } from "../../../../core/review/compute.ts";
import { type TimerProgram, timerProgram } from "../../../../core/sheet/program.ts";
import { goodWith } from "../../review/doors.ts";
import { compilesC } from "./host.ts";
import type { Edge } from "./trains.ts";

export const NO_C = compilesC ? "" : " (skipped: gcc is not installed)";

export function programOf(computed: Computed, hold: number | null = null): TimerProgram {
  const made = timerProgram(computed, "metric", hold);
  if (made === null) throw new Error(`no program for ${computed.door.name}`);
  return made;
}

/** The good door without magnets, which the program does not look at, and with changes. */
export const plain = (changes: Readonly<Record<string, unknown>>) =>
  compute(goodWith({ magnets: undefined, ...changes }));

/** Clean pulses of one width, ms. */
export const pulses = (times: readonly number[], width: number): Edge[] =>
  times.flatMap((time): Edge[] => [
    [Math.round(time), 1],
    [Math.round(time) + width, 0],
  ]);
