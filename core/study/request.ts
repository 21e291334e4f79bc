/** What a study is asked: everything its answer depends on. Plain data that may cross to a worker or another machine. */
import type { Door } from "../door/door.ts";
import { type DoorFault, doorFault } from "../door/fault.ts";
import { studyInputs } from "./inputs.ts";
import { LARGEST_SEED } from "./stream.ts";

export const DEFAULT_SAMPLES = 20_000;
export const DEFAULT_SEED = 1;
/** Counts are 32-bit. */
export const MOST_SAMPLES = 2 ** 31 - 1;

export interface StudyRequest {
  readonly door: Door;
  readonly samples: number;
  readonly seed: number;
}

/** What forbids the study; empty where it can run. */
export function requestFaults({ door, samples, seed }: StudyRequest): readonly DoorFault[] {
  const faults: DoorFault[] = [];
  if (!Number.isInteger(samples) || samples < 1 || samples > MOST_SAMPLES) {
    faults.push(doorFault("samples", String(samples), `a whole number from 1 to ${MOST_SAMPLES}`));
  }
  if (!Number.isInteger(seed) || seed < 0 || seed > LARGEST_SEED) {
    faults.push(doorFault("seed", String(seed), `a whole number from 0 to ${LARGEST_SEED}`));
  }
  if (door.latch === null) {
    const problem = "without a bolt there is nothing to be caught, so no hold to recommend";
    faults.push(doorFault("latch", "nothing", "a latch section", problem));
  }
  return [...faults, ...studyInputs(door).faults];
}
