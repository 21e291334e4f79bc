/**
 * Numbers of a door by key path, for studies, maps and suggestions.
 *
 * `setValue` changes that one number and nothing else. Values the reader worked out from others (the push height from
 * the shoulder height, the comfortable push from the mass, the density from the material) are values of the door like
 * any other and stay as they are; whoever wants them to follow edits the file and reads it again.
 */
import type { Door } from "./door.ts";
import { type DoorFault, doorFault } from "./fault.ts";
import { inRange, type NumericField } from "./field.ts";
import { fieldAt, isIndex, isNumeric } from "./schema.ts";

export type DoorSet =
  | { readonly ok: true; readonly door: Door }
  | { readonly ok: false; readonly error: DoorFault };

/**
 * The number at a key path, SI. `null` where the door has none: a section left out, an entry past a list's end, an
 * optional number not given, or a path that is not a number's.
 */
export function getValue(door: Door, path: string): number | null {
  let here: unknown = door;
  for (const step of stepsOf(path)) {
    if (!hasMember(here, step)) return null;
    here = here[step];
  }
  return typeof here === "number" ? here : null;
}

/**
 * The door with one number replaced (SI); every untouched part is shared with the old one. Neither the range nor the
 * other keys are checked: see `valueFits` and `crossFaults`. An error for a path that is not a number's or leads
 * into what the door lacks.
 */
export function setValue(door: Door, path: string, si: number): DoorSet {
  const changed = withNumber(door, stepsOf(path), 0, si);
  if (changed !== null) return { ok: true, door: changed as Door };
  const expected = isNumeric(fieldAt(path)) ? "a key this door has" : "the path of a number of the door";
  return { ok: false, error: doorFault(path, `the key "${path.slice(0, 60)}"`, expected) };
}

/** Whether a number (SI) lies in the range of its key. False for a path that is not a number's. */
export function valueFits(path: string, si: number): boolean {
  const field: NumericField | undefined = numericAt(path);
  return (
    field !== undefined &&
    inRange(si, field.range) &&
    !(field.kind === "number" && field.whole && !Number.isInteger(si))
  );
}

function numericAt(path: string): NumericField | undefined {
  const field = fieldAt(path);
  return isNumeric(field) ? field : undefined;
}

/** The file's pairs [stroke, force] are records in the door. */
const PULL_COLUMNS: Readonly<Record<string, string>> = { "0": "stroke", "1": "force" };

function stepsOf(path: string): string[] {
  const steps = path.split(".");
  if (path.startsWith("solenoid.pull.") && steps.length === 4) steps[3] = PULL_COLUMNS[steps[3]] ?? steps[3];
  return steps;
}

/** A copy along the path; null where the way or the number's place is missing. */
function withNumber(here: unknown, steps: readonly string[], depth: number, si: number): unknown {
  if (depth === steps.length) return isNumberPlace(here, depth) ? si : null;
  const step = steps[depth];
  if (!hasMember(here, step)) return null;
  const next = withNumber(here[step], steps, depth + 1, si);
  if (next === null) return null;
  return Array.isArray(here) ? here.with(Number(step), next) : { ...here, [step]: next };
}

function hasMember(here: unknown, step: string): here is Record<string, unknown> {
  if (typeof here !== "object" || here === null || !Object.hasOwn(here, step)) return false;
  return !Array.isArray(here) || isIndex(step);
}

/** A number, or one not given: sections left out are `null` too, but they stand at the first step. */
function isNumberPlace(here: unknown, depth: number): boolean {
  return typeof here === "number" || (here === null && depth > 1);
}
