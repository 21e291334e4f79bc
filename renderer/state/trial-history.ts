/** Steps back and forth through what was measured. Writing in one field is one step until it is left. */
import type { Measurements } from "./trial-record.ts";

export interface TrialStep {
  /** For the button: "Passes through the middle", "the table". */
  readonly name: string;
  readonly measured: Measurements;
}

export interface TrialHistory {
  /** What stood before each step, the last at the end. */
  readonly done: readonly TrialStep[];
  readonly undone: readonly TrialStep[];
  /** The field being written in. */
  readonly gesture: string | null;
}

export const NO_STEPS: TrialHistory = { done: [], undone: [], gesture: null };

/** A change is about to be made. */
export function stepOf(
  history: TrialHistory,
  name: string,
  before: Measurements,
  gesture: string | null,
): TrialHistory {
  if (gesture !== null && gesture === history.gesture) return { ...history, undone: [] };
  return { done: [...history.done, { name, measured: before }], undone: [], gesture };
}

export interface Stepped {
  readonly history: TrialHistory;
  readonly measured: Measurements;
}

/** `null` where there is no step back. */
export function stepBack({ done, undone }: TrialHistory, now: Measurements): Stepped | null {
  const last = done[done.length - 1];
  if (last === undefined) return null;
  const history = {
    done: done.slice(0, -1),
    undone: [...undone, { name: last.name, measured: now }],
    gesture: null,
  };
  return { history, measured: last.measured };
}

/** `null` where there is no step forth. */
export function stepForth({ done, undone }: TrialHistory, now: Measurements): Stepped | null {
  const next = undone[undone.length - 1];
  if (next === undefined) return null;
  const history = {
    done: [...done, { name: next.name, measured: now }],
    undone: undone.slice(0, -1),
    gesture: null,
  };
  return { history, measured: next.measured };
}
