/** A door with some of its inputs changed as a person would change them in the file. */
import { crossFaults } from "../door/checks.ts";
import type { Door } from "../door/door.ts";
import { doorFault } from "../door/fault.ts";
import type { Field, Fields, SectionValues } from "../door/field.ts";
import { type DoorFile, fileEntry } from "../door/file.ts";
import { setValue, valueFits } from "../door/path.ts";
import { expectedRange } from "../door/read-value.ts";
import { doorSchema, fieldAt, isNumeric } from "../door/schema.ts";

/** One input and its value, SI. */
export interface InputValue {
  readonly key: string;
  readonly value: number;
}

export type ChangedDoor =
  | { readonly ok: true; readonly door: Door }
  /** A sentence. */
  | { readonly ok: false; readonly reason: string };

/**
 * The door with inputs changed, or why that is no door. What the reader worked out from a changed number because the file
 * leaves it out (the push height from the shoulder height) follows, as it would if the file were edited.
 */
export function changedDoor(file: DoorFile, door: Door, inputs: readonly InputValue[]): ChangedDoor {
  let changed = door;
  for (const { key, value } of inputs) {
    if (!valueFits(key, value)) return { ok: false, reason: misfit(key, value) };
    const set = setValue(changed, key, value);
    if (!set.ok) return { ok: false, reason: set.error.message };
    changed = withFollowers(file, set.door, key);
  }
  const faults = crossFaults(changed);
  return faults.length === 0
    ? { ok: true, door: changed }
    : { ok: false, reason: faults.map((f) => f.message).join(" ") };
}

function misfit(key: string, value: number): string {
  const field = fieldAt(key);
  const expected = isNumeric(field) ? expectedRange(field) : "the path of a number of the door";
  return doorFault(key, String(value), expected).message;
}

/** Numbers of the same section that have a worked-out default and do not stand in the file, worked out again. */
function withFollowers(file: DoorFile, door: Door, key: string): Door {
  const section = key.slice(0, key.lastIndexOf("."));
  let changed = door;
  for (const [name, field] of Object.entries(fieldsAt(section))) {
    const path = `${section}.${name}`;
    if (path === key || !isNumeric(field) || field.default.kind !== "computed") continue;
    if (fileEntry(file, path) !== undefined) continue;
    const index = Number(section.slice(section.lastIndexOf(".") + 1));
    const value = field.default.from(sectionAt(changed, section), Number.isNaN(index) ? 0 : index);
    const set = typeof value === "number" ? setValue(changed, path, value) : null;
    if (set?.ok) changed = set.door;
  }
  return changed;
}

function sectionAt(door: Door, path: string): SectionValues {
  let here: unknown = door;
  for (const step of path.split(".")) here = (here as Record<string, unknown>)[step];
  return here as SectionValues;
}

/** The keys of the section, or of one entry of the list, at a path. */
function fieldsAt(path: string): Fields {
  const [head, ...rest] = path.split(".");
  const shape = doorSchema.find(({ key }) => key === head)?.shape;
  if (shape === undefined) return {};
  if (shape.kind === "list") return shape.fields;
  if (rest.length === 0) return shape.fields;
  const field: Field | undefined = shape.fields[rest[0]];
  return field?.kind === "list" ? field.fields : {};
}
