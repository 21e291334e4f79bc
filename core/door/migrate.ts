/**
 * Older files brought up to the present version, one step after the other; each step is proven by a test.
 * A newer file is refused by name and left untouched.
 */
import { type DoorFault, doorFault, givenWords } from "./fault.ts";
import type { JsonObject } from "./json.ts";
import { DOOR_FORMAT } from "./schema.ts";

/** Turns the data of one version into that of the next. */
export interface Migration {
  readonly from: number;
  readonly apply: (root: JsonObject) => JsonObject;
}

/** The door file has had one version so far. */
export const doorMigrations: readonly Migration[] = [];

export type Migrated =
  | { readonly ok: true; readonly root: JsonObject; readonly changed: boolean }
  | { readonly ok: false; readonly faults: DoorFault[] };

/** Checks the envelope and runs the migrations from the file's version to `present`. */
export function migrate(root: JsonObject, present: number, chain: readonly Migration[]): Migrated {
  const fault = formatFault(root) ?? versionFault(root, present);
  if (fault !== undefined) return { ok: false, faults: [fault] };
  let data = root;
  for (let version = Number(root.version); version < present; version++) {
    const step = chain.find(({ from }) => from === version);
    if (step === undefined) return { ok: false, faults: [noWayFrom(version)] };
    data = { ...step.apply(data), version: version + 1 };
  }
  return { ok: true, root: data, changed: data !== root };
}

function formatFault(root: JsonObject): DoorFault | undefined {
  if (root.format === DOOR_FORMAT) return undefined;
  return doorFault("format", givenWords(root.format), `"${DOOR_FORMAT}"`, "this is not a door file");
}

function versionFault(root: JsonObject, present: number): DoorFault | undefined {
  const version = root.version;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 0) {
    return doorFault("version", givenWords(version), `a version number, ${present} for this program`);
  }
  if (version <= present) return undefined;
  const problem = "this file was made by a newer Swingstill";
  return doorFault(
    "version",
    String(version),
    `a version up to ${present}; update the program to open it`,
    problem,
  );
}

function noWayFrom(version: number): DoorFault {
  return doorFault(
    "version",
    String(version),
    "a version this program knows",
    "files this old cannot be read",
  );
}
