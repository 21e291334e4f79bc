/**
 * A file's text to a document. A door with wrong entries opens all the same, each explained where it stands; only a text
 * that is no door file at all is refused.
 */
import type { DoorFile } from "../../core/door/index.ts";
import { type Json, type JsonObject, parseJson } from "../../core/door/json.ts";
import { doorMigrations, migrate } from "../../core/door/migrate.ts";
import { LONGEST_FILE } from "../../core/door/read-door.ts";
import { DOOR_VERSION } from "../../core/door/schema.ts";

export type OpenedText =
  | { readonly ok: true; readonly file: DoorFile }
  /** Sentences for the person. */
  | { readonly ok: false; readonly reasons: readonly string[] };

export function openText(text: string): OpenedText {
  if (text.length > LONGEST_FILE) return refused("The file is too large for a door.");
  const json = parseJson(text);
  if (!json.ok) {
    const where = json.faults.map(
      ({ line, column, problem, expected }) =>
        `Line ${line}, column ${column}: ${problem}; expected ${expected}.`,
    );
    return { ok: false, reasons: where };
  }
  if (!isObject(json.value)) return refused("The file holds no door.");
  const migrated = migrate(json.value, DOOR_VERSION, doorMigrations);
  if (!migrated.ok) return { ok: false, reasons: migrated.faults.map(({ message }) => message) };
  return { ok: true, file: { text: migrated.changed ? null : text, root: migrated.root } };
}

function refused(reason: string): OpenedText {
  return { ok: false, reasons: [reason] };
}

function isObject(value: Json): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
