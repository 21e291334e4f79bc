/** A suggestion's edits carried out on a computed door's `Door`, as the file would carry them out. */
import { crossFaults } from "../door/checks.ts";
import type { Door } from "../door/door.ts";
import { inRange } from "../door/field.ts";
import { setValue } from "../door/path.ts";
import { fieldAt, isNumeric } from "../door/schema.ts";
import { parseQuantity } from "../quantity/quantity.ts";
import type { DoorEdit } from "./finding.ts";

/** The number an edit's text stands for, SI; `null` where it is none or out of its key's range. */
export function editValue({ path, text }: DoorEdit): number | null {
  const field = fieldAt(path);
  if (!isNumeric(field)) return null;
  const value = field.kind === "number" ? Number(text) : quantityValue(text, field.dimension);
  if (value === null || !inRange(value, field.range)) return null;
  return field.kind === "number" && field.whole && !Number.isInteger(value) ? null : value;
}

function quantityValue(text: string, dimension: Parameters<typeof parseQuantity>[1]): number | null {
  const read = parseQuantity(text, dimension);
  return read.ok ? read.value : null;
}

/** The door with all edits made; `null` where one of them cannot be, or the door would be an error. */
export function applyEdits(door: Door, edits: readonly DoorEdit[]): Door | null {
  let changed: Door | null = door;
  for (const edit of edits) changed = changed && applyEdit(changed, edit);
  return changed === null || crossFaults(changed).length > 0 ? null : changed;
}

function applyEdit(door: Door, edit: DoorEdit): Door | null {
  const field = fieldAt(edit.path);
  if (field?.kind === "choice") {
    return field.options.includes(edit.text) ? withLeaf(door, edit.path, edit.text) : null;
  }
  if (field?.kind === "flag") return withLeaf(door, edit.path, edit.text === "true");
  const value = editValue(edit);
  if (value === null) return null;
  const set = setValue(door, edit.path, value);
  return set.ok ? set.door : null;
}

/** A choice or a flag, "section.key"; `null` where the door lacks the section. */
function withLeaf(door: Door, path: string, value: string | boolean): Door | null {
  const [section, key] = path.split(".");
  const old: unknown = door[section as keyof Door];
  return typeof old === "object" && old !== null ? { ...door, [section]: { ...old, [key]: value } } : null;
}
