/** A door file from disk, or the complaint that names every fault in it. */
import { readFileSync } from "node:fs";
import { type Door, type DoorFile, readDoor } from "../door/index.ts";
import type { UnitSystem } from "../quantity/format.ts";
import { CallError } from "./call.ts";

export interface DoorInput {
  readonly path: string;
  readonly door: Door;
  readonly file: DoorFile;
}

/** Reads and checks a door file; throws a `CallError` with every fault on a line of its own. */
export function readDoorFile(path: string): DoorInput {
  const read = readDoor(textOf(path));
  if (read.ok) return { path, door: read.door, file: read.file };
  const faults = read.errors.map((fault) => `  ${fault.message}`);
  const count = faults.length === 1 ? "a fault" : `${faults.length} faults`;
  throw new CallError(`${path} has ${count}:\n${faults.join("\n")}`);
}

/** Text of a file as UTF-8. */
export function textOf(path: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(path));
  } catch (error) {
    if (error instanceof TypeError) throw new CallError(`${path} is not a UTF-8 text file`);
    throw new CallError(`${path} can't be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The units a person wants to read: those asked for, else those the file's own lengths are mostly written in. */
export function unitSystem(asked: string | null, file: DoorFile): UnitSystem {
  if (asked === "metric" || asked === "inch") return asked;
  if (asked !== null) throw new CallError(`--units must be metric or inch; received "${asked}"`);
  const text = JSON.stringify(file.root);
  const inches = text.match(/\d\s*(?:in|inch|inches|ft|\\")"/g)?.length ?? 0;
  const metres = text.match(/\d\s*(?:mm|cm|m)"/g)?.length ?? 0;
  return inches > metres ? "inch" : "metric";
}
