/**
 * The file as the person wrote it: its text, and its data with every entry's own words. Saving an unchanged file gives
 * back the text byte for byte; an edit changes one entry and leaves the rest, the order of keys included.
 */
import type { Json, JsonObject } from "./json.ts";
import { isIndex } from "./schema.ts";

export interface DoorFile {
  /** The text as read; null once edited or migrated. */
  readonly text: string | null;
  readonly root: JsonObject;
}

/** The text to save: as read where nothing changed, else JSON indented by two spaces. */
export function writeDoor(file: DoorFile): string {
  return file.text ?? `${JSON.stringify(file.root, null, 2)}\n`;
}

/** What stands at a key path of the file; undefined where nothing does. */
export function fileEntry(file: DoorFile, path: string): Json | undefined {
  let here: Json | undefined = file.root;
  for (const step of stepsOf(path)) here = memberAt(here, step);
  return here;
}

const TOLERANCES = "study.tolerances.";

/** Tolerances are kept under key paths: in "study.tolerances.magnets.gap.low" the key is "magnets.gap". */
function stepsOf(path: string): string[] {
  if (!path.startsWith(TOLERANCES)) return path.split(".");
  const [key, end] = path.slice(TOLERANCES.length).split(/\.(low|high|shape)$/);
  return ["study", "tolerances", key, ...(end === undefined ? [] : [end])];
}

/**
 * The file with one entry replaced, added, or (with undefined) taken out. Missing sections on the way are made; an
 * index may be that of an entry or the one after the last. Throws a RangeError for a path no edit can reach.
 */
export function editDoorFile(file: DoorFile, path: string, entry: Json | undefined): DoorFile {
  const root = withEntry(file.root, stepsOf(path), entry, path) as JsonObject;
  return root === file.root ? file : { text: null, root };
}

function withEntry(
  here: Json | undefined,
  steps: readonly string[],
  entry: Json | undefined,
  path: string,
): Json | undefined {
  if (steps.length === 0) return entry;
  const [step, ...rest] = steps;
  if (here === undefined && entry === undefined) return undefined;
  const home: Json = here ?? (isIndex(step) ? [] : {});
  const old = memberAt(home, step);
  const next = withEntry(old, rest, entry, path);
  if (next === old) return here;
  if (Array.isArray(home)) return withListed(home, step, next, path);
  if (typeof home !== "object" || home === null) throw unreachable(path);
  return withMember(home as JsonObject, step, next);
}

function memberAt(home: Json | undefined, step: string): Json | undefined {
  if (Array.isArray(home)) return isIndex(step) ? home[Number(step)] : undefined;
  if (typeof home !== "object" || home === null) return undefined;
  return Object.hasOwn(home, step) ? (home as JsonObject)[step] : undefined;
}

function withListed(list: readonly Json[], step: string, next: Json | undefined, path: string): Json {
  if (!isIndex(step) || Number(step) > list.length) throw unreachable(path);
  const copy = [...list];
  if (next === undefined) copy.splice(Number(step), 1);
  else copy[Number(step)] = next;
  return copy;
}

function withMember(home: JsonObject, step: string, next: Json | undefined): JsonObject {
  const copy: Record<string, Json> = Object.assign(Object.create(null), home);
  if (next === undefined) delete copy[step];
  else copy[step] = next;
  return copy;
}

function unreachable(path: string): RangeError {
  return new RangeError(
    `Path of an edit must lead through sections and lists of the file; received "${path}"`,
  );
}
