/**
 * The door file: text to `Door` and back, and what the schema knows.
 *
 * Levels, from the bottom: `json` (text to data) · `field`, `ranges`, `schema` (what keys there are) · `read-value`,
 * `read-section`, `tolerances` (data against the schema) · `checks` (between keys) · `read-door` (all of it) · `file`
 * (the person's words) · `path` (numbers by key path).
 */
export { crossFaults, latchCannotWork, latchFaults } from "./checks.ts";
export type * from "./door.ts";
export type { DoorFault } from "./fault.ts";
export type { Field, Fields, NumericField, Range, SectionSchema } from "./field.ts";
export { inRange } from "./field.ts";
export { type DoorFile, editDoorFile, fileEntry, writeDoor } from "./file.ts";
export type { Json, JsonObject } from "./json.ts";
export { MATERIALS, type Material, materialNamed } from "./materials.ts";
export type { Migration } from "./migrate.ts";
export { numericPaths } from "./numeric-paths.ts";
export { type DoorSet, getValue, setValue, valueFits } from "./path.ts";
export { type DoorRead, readDoor, readRoot } from "./read-door.ts";
export { DOOR_FORMAT, DOOR_VERSION, doorSchema, fieldAt, isNumeric, sectionNamed } from "./schema.ts";
