/** Doors for all tests: the reference's files, the examples, and doors of data. */
import { readdirSync, readFileSync } from "node:fs";
import { type Door, type DoorFile, readDoor } from "../../core/door/index.ts";

const REFERENCE = new URL("../reference/model/doors/", import.meta.url);
const ASSETS = new URL("../../assets/examples/", import.meta.url);

/** A door file's data. */
export type DoorJson = Record<string, Record<string, unknown>> & { animals?: unknown };

/** Names of the reference doors. */
export const REFERENCE_DOORS: readonly string[] = readdirSync(REFERENCE)
  .filter((file) => file.endsWith(".door.json"))
  .map((file) => file.replace(".door.json", ""))
  .sort();

export const EXAMPLES = ["cat", "large-dog-plywood", "medium-dog", "never-latches"] as const;
export type Example = (typeof EXAMPLES)[number];

/** File and door of a file's data; throws with every fault where it is no door. */
export function opened(data: unknown): { readonly file: DoorFile; readonly door: Door } {
  const read = readDoor(JSON.stringify(data));
  if (!read.ok) throw new Error(read.errors.map(({ message }) => message).join("\n"));
  return read;
}

export const doorOf = (data: unknown): Door => opened(data).door;

const jsonIn = (folder: URL, name: string): DoorJson =>
  JSON.parse(readFileSync(new URL(`${name}.door.json`, folder), "utf8"));

export const referenceJson = (name: string): DoorJson => jsonIn(REFERENCE, name);
export const referenceDoor = (name: string): Door => doorOf(referenceJson(name));
export const exampleJson = (name: Example): DoorJson => jsonIn(ASSETS, name);
export const exampleDoor = (name: Example): Door => doorOf(exampleJson(name));
