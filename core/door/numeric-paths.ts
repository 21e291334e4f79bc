/** Every key path of a number, for suggestions, menus of inputs and the study. */
import type { Field, Fields } from "./field.ts";
import { doorSchema, isNumeric } from "./schema.ts";

/** How many entries to list of each list: one stands for all. */
const ONE_ENTRY = 1;

/**
 * Key paths of all numbers, in the file's order. `entries` gives each list's length by its path ("animals"); without
 * it one entry of each list is named.
 */
export function numericPaths(entries: (listPath: string) => number = () => ONE_ENTRY): string[] {
  return doorSchema.flatMap(({ key, shape }) =>
    shape.kind === "list" ? pathsOf(shape, key, entries) : pathsIn(shape.fields, key, entries),
  );
}

function pathsIn(fields: Fields, path: string, entries: (listPath: string) => number): string[] {
  return Object.entries(fields).flatMap(([key, field]) => pathsOf(field, `${path}.${key}`, entries));
}

function pathsOf(field: Field, path: string, entries: (listPath: string) => number): string[] {
  if (isNumeric(field)) return [path];
  if (field.kind !== "list" && field.kind !== "curve") return [];
  return Array.from({ length: entries(path) }, (_, i) => `${path}.${i}`).flatMap((entry) =>
    field.kind === "list"
      ? pathsIn(field.fields, entry, entries)
      : field.columns.map((_, column) => `${entry}.${column}`),
  );
}
