/**
 * Changes of a door as commands, and the stack that takes them back. Every change has a name; one gesture (typing in a
 * field, a drag, a held arrow key) is one step however many times it changed the file on the way.
 */
import type { DoorFile } from "../../core/door/index.ts";

export interface Command {
  /** What it does, for the menu: "Change the magnets' gap". */
  readonly name: string;
  readonly apply: (file: DoorFile) => DoorFile;
  readonly undo: (file: DoorFile) => DoorFile;
}

export interface History {
  readonly done: readonly Command[];
  readonly undone: readonly Command[];
  /** The gesture under way, which the next change of the same gesture joins. */
  readonly gesture: string | null;
}

export interface Changed {
  readonly file: DoorFile;
  readonly history: History;
}

export const NO_HISTORY: History = { done: [], undone: [], gesture: null };

/** A command from one file to another. Its undo gives back the very file it started from, text included. */
export function replaceFile(name: string, before: DoorFile, after: DoorFile): Command {
  return { name, apply: () => after, undo: () => before };
}

/**
 * Carries out a change and puts it on the stack. With a gesture, further changes of the same gesture become part of its
 * step, and a gesture that ends where it began leaves no step. A change that changes nothing is none.
 */
export function run(history: History, file: DoorFile, command: Command, gesture: string | null): Changed {
  const after = command.apply(file);
  const last = history.done[history.done.length - 1];
  const joins = gesture !== null && gesture === history.gesture && last !== undefined;
  if (!joins) {
    if (sameDoor(after, file)) return { file, history };
    return { file: after, history: { done: [...history.done, command], undone: [], gesture } };
  }
  const before = last.undo(file);
  const earlier = history.done.slice(0, -1);
  if (sameDoor(after, before)) {
    return { file: before, history: { done: earlier, undone: [], gesture: null } };
  }
  const joined = replaceFile(command.name, before, after);
  return { file: after, history: { done: [...earlier, joined], undone: [], gesture } };
}

/** The gesture is over: what follows is a step of its own. */
export function endGesture(history: History): History {
  return history.gesture === null ? history : { ...history, gesture: null };
}

/** Takes back the last step; `null` where there is none. */
export function undo({ done, undone }: History, file: DoorFile): Changed | null {
  const last = done[done.length - 1];
  if (last === undefined) return null;
  return {
    file: last.undo(file),
    history: { done: done.slice(0, -1), undone: [...undone, last], gesture: null },
  };
}

/** Does the last step taken back again; `null` where there is none. */
export function redo({ done, undone }: History, file: DoorFile): Changed | null {
  const next = undone[undone.length - 1];
  if (next === undefined) return null;
  return {
    file: next.apply(file),
    history: { done: [...done, next], undone: undone.slice(0, -1), gesture: null },
  };
}
/** Equal data, order of keys included: what such files look like is the same. */
function sameDoor(a: DoorFile, b: DoorFile): boolean {
  return a.root === b.root || JSON.stringify(a.root) === JSON.stringify(b.root);
}
