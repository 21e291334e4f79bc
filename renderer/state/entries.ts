/** Entries of the door file as a person types them, and the changes forms make of them. */
import type { Field } from "../../core/door/field.ts";
import { type DoorFile, editDoorFile, fileEntry } from "../../core/door/file.ts";
import type { Json } from "../../core/door/json.ts";
import { fieldAt } from "../../core/door/schema.ts";
import { type Command, replaceFile } from "./command.ts";
import { spreadFrom, spreadText, TOLERANCES } from "./spread-text.ts";

/** One entry to write; undefined takes it out of the file. */
export interface EntryChange {
  readonly path: string;
  readonly entry: Json | undefined;
}

/** Several entries as one change. */
export function changeEntries(name: string, file: DoorFile, changes: readonly EntryChange[]): Command {
  const after = changes.reduce((f, { path, entry }) => editDoorFile(f, path, entry), file);
  return replaceFile(name, file, after);
}

/** What stands in a field's input: the person's own text, "" where the file has no entry. */
export function entryText(file: DoorFile, path: string): string {
  const entry = fileEntry(file, path);
  if (entry === undefined || entry === null) return "";
  if (path.startsWith(TOLERANCES)) return spreadText(entry);
  return typeof entry === "string" ? entry : JSON.stringify(entry);
}

/**
 * The entry a typed text stands for. Nothing is refused here: a text that is wrong for its field is kept as it is and the
 * reader explains it. An emptied field falls back to its default where it has one.
 */
export function entryFrom(path: string, text: string): Json | undefined {
  if (path.startsWith(TOLERANCES)) return spreadFrom(text);
  const field = fieldAt(path);
  if (text.trim() === "") return emptied(field);
  if (field?.kind === "number") return numberFrom(text);
  if (field?.kind === "flag") return text === "true";
  return text;
}

function emptied(field: Field | undefined): Json | undefined {
  const mayLack = field !== undefined && "default" in field && field.default.kind !== "required";
  return mayLack ? undefined : "";
}

const PLAIN_NUMBER = /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i;

function numberFrom(text: string): Json {
  const value = Number(text);
  return PLAIN_NUMBER.test(text) && Number.isFinite(value) ? value : text;
}

/** What the field falls back to, for an empty input's place: the default as the file would write it, or in words. */
export function defaultText(path: string): string {
  const field = fieldAt(path);
  if (field === undefined || !("default" in field)) return "";
  const fallback = field.default;
  if (fallback.kind === "value") return String(fallback.value);
  if (fallback.kind === "absent") return "none";
  return fallback.kind === "required" ? "" : fallback.words;
}
