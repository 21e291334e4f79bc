/** Sections, lists and curves of the file against the schema, defaults filled in. */

import { expectedQuantity } from "../quantity/quantity.ts";
import { type DoorFault, doorFault, givenWords, WHOLE_FILE } from "./fault.ts";
import type {
  Condition,
  CurveField,
  Default,
  Field,
  Fields,
  LeafField,
  ListField,
  SectionValues,
} from "./field.ts";
import type { Json, JsonObject } from "./json.ts";
import { nearestName } from "./nearest.ts";
import { readLeaf } from "./read-value.ts";
import { doorSchema } from "./schema.ts";

export type Values = Record<string, unknown>;

export function isSection(raw: Json | undefined): raw is JsonObject {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw);
}

/** Reads one section; `index` is its place where it stands in a list. Anything but a section is a fault and reads as empty. */
export function readSection(fields: Fields, raw: Json, path: string, faults: DoorFault[], index = 0): Values {
  if (!isSection(raw)) {
    faults.push(doorFault(path, givenWords(raw), `a section { … } with the keys ${keyList(fields)}`));
    return nothingRead(fields);
  }
  refuseUnknownKeys(raw, Object.keys(fields), path, faults);
  const values: Values = {};
  for (const [key, field] of Object.entries(fields)) {
    const own = Object.hasOwn(raw, key) ? raw[key] : fallbackEntry(field);
    if (own !== undefined) values[key] = readField(field, own, `${path}.${key}`, faults);
  }
  for (const [key, field] of Object.entries(fields)) {
    if (!(key in values)) values[key] = withoutEntry(field, values, `${path}.${key}`, faults, index);
  }
  return values;
}

/** Stands for a section that could not be read, so that checks across keys pass over it. */
function nothingRead(fields: Fields): Values {
  return Object.fromEntries(
    Object.entries(fields).map(([key, field]) => [
      key,
      field.kind === "list" || field.kind === "curve" ? [] : Number.NaN,
    ]),
  );
}

function keyList(fields: Fields): string {
  return Object.keys(fields).join(", ");
}

/** The default as the file could have said it. */
function fallbackEntry(field: Field): Json | undefined {
  if (field.kind === "list") return field.fewest === 0 ? [] : undefined;
  if (field.kind === "tolerances") return {};
  if (field.kind === "curve") return undefined;
  return field.default.kind === "value" ? field.default.value : undefined;
}

function readField(field: Field, raw: Json, path: string, faults: DoorFault[]): unknown {
  if (field.kind === "list") return readList(field, raw, path, faults);
  if (field.kind === "curve") return readCurve(field, raw, path, faults);
  // Tolerances name keys anywhere in the door, so they are read once the door is.
  if (field.kind === "tolerances") return new Map();
  return readLeaf(field, raw, path, faults);
}

function withoutEntry(
  field: Field,
  values: Values,
  path: string,
  faults: DoorFault[],
  index: number,
): unknown {
  const fallback: Default = "default" in field ? field.default : { kind: "required" };
  switch (fallback.kind) {
    case "value":
      return fallback.value;
    case "absent":
      return null;
    case "computed":
      return fallback.from(values, index);
    case "required":
      if (fallback.when !== undefined && !holds(fallback.when, values)) return null;
      faults.push(missingKey(field, path, fallback.when, values));
      return field.kind === "list" || field.kind === "curve" ? [] : Number.NaN;
  }
}

function holds(when: Condition, values: SectionValues): boolean {
  return when.is.includes(String(values[when.key]));
}

function missingKey(field: Field, path: string, when: Condition | undefined, values: Values): DoorFault {
  const because = when === undefined ? "" : ` because ${when.key} is "${values[when.key]}"`;
  return doorFault(path, "nothing", expectedEntry(field), `this key is required${because}`);
}

function expectedEntry(field: Field): string {
  if (field.kind === "quantity") return expectedQuantity(field.dimension);
  if (field.kind === "curve") return expectedCurve(field);
  return field.kind === "number" ? "a number" : `a ${field.kind}`;
}

/** Reads a list of sections. */
export function readList(field: ListField, raw: Json, path: string, faults: DoorFault[]): Values[] {
  const { entry, fewest, most } = field;
  if (!Array.isArray(raw)) {
    faults.push(doorFault(path, givenWords(raw), `a list [ … ] with one section { … } per ${entry}`));
    return [];
  }
  if (raw.length < fewest) faults.push(doorFault(path, givenWords(raw), `at least ${fewest} ${entry}`));
  if (raw.length > most) {
    faults.push(doorFault(path, `${raw.length} entries`, `at most ${most}`));
    return [];
  }
  return raw.map((one: Json, i) => readSection(field.fields, one, `${path}.${i}`, faults, i));
}

function expectedCurve({ columns, fewest }: CurveField): string {
  const names = columns.map(({ key }) => key).join(", ");
  const example = columns.map(({ field }) => `"${expectedExample(field)}"`).join(", ");
  return `a list of at least ${fewest} pairs [${names}], such as [${example}]`;
}

function expectedExample(field: LeafField): string {
  return field.kind === "quantity" && field.dimension === "length" ? "8 mm" : "1.2 N";
}

function readCurve(field: CurveField, raw: Json, path: string, faults: DoorFault[]): Values[] {
  if (!Array.isArray(raw) || raw.length < field.fewest) {
    const given = Array.isArray(raw) ? `${raw.length} of them` : givenWords(raw);
    faults.push(doorFault(path, given, expectedCurve(field)));
    return [];
  }
  if (raw.length > field.most) {
    faults.push(doorFault(path, `${raw.length} pairs`, `at most ${field.most}`));
    return [];
  }
  const points = raw.map((pair: Json, i) => readPair(field, pair, `${path}.${i}`, faults));
  refuseFalling(field, points, raw, path, faults);
  return points;
}

function readPair(field: CurveField, raw: Json, path: string, faults: DoorFault[]): Values {
  const { columns } = field;
  if (!Array.isArray(raw) || raw.length !== columns.length) {
    const names = columns.map(({ key }) => key).join(", ");
    const given = Array.isArray(raw) ? `a list of ${raw.length}` : givenWords(raw);
    faults.push(doorFault(path, given, `a pair [${names}]`));
    return Object.fromEntries(columns.map(({ key }) => [key, Number.NaN]));
  }
  return Object.fromEntries(
    columns.map((column, i) => [column.key, readLeaf(column.field, raw[i], `${path}.${i}`, faults)]),
  );
}

function refuseFalling(
  field: CurveField,
  points: Values[],
  raw: readonly Json[],
  path: string,
  faults: DoorFault[],
): void {
  const { key } = field.columns[0];
  for (let i = 1; i < points.length; i++) {
    if (Number(points[i][key]) <= Number(points[i - 1][key])) {
      const before = givenWords((raw[i - 1] as readonly Json[])[0]);
      const here = givenWords((raw[i] as readonly Json[])[0]);
      faults.push(doorFault(`${path}.${i}.0`, here, `a ${key} above the one before it, ${before}`));
    }
  }
}

/** More than these say nothing new, and each takes a search for the nearest key. */
const UNKNOWN_KEYS_NAMED = 50;

/** One fault per key that is none of the known ones, with the nearest of them. */
export function refuseUnknownKeys(
  raw: JsonObject,
  known: readonly string[],
  path: string,
  faults: DoorFault[],
): void {
  const unknown = Object.keys(raw).filter((key) => !known.includes(key));
  for (const key of unknown.slice(0, UNKNOWN_KEYS_NAMED)) {
    const short = key === "" ? '""' : key.slice(0, LONGEST_KEY);
    const place = path === "" ? short : `${path}.${short}`;
    faults.push(
      doorFault(
        place,
        `the key "${key.slice(0, LONGEST_KEY)}"`,
        keyMeant(key, known),
        "the key is not known",
      ),
    );
  }
  if (unknown.length <= UNKNOWN_KEYS_NAMED) return;
  faults.push(
    doorFault(path === "" ? WHOLE_FILE : path, `${unknown.length} unknown keys`, `of ${known.join(", ")}`),
  );
}

/** Longest part of a key shown. */
const LONGEST_KEY = 60;

function keyMeant(key: string, known: readonly string[]): string {
  const near = nearestName(key, known);
  if (near !== undefined) return `a known key; the nearest is "${near}"`;
  const home = sectionWith(key);
  return home === undefined ? `one of ${known.join(", ")}` : `a known key; "${key}" belongs to "${home}"`;
}

function sectionWith(key: string): string | undefined {
  return doorSchema.find(({ shape }) => Object.hasOwn(shape.fields, key))?.key;
}
