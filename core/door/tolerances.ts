/** `study.tolerances`: how inputs spread around their nominal values. */
import type { Dimension } from "../quantity/dimensions.ts";
import { DIMENSIONS } from "../quantity/dimensions.ts";
import { parseQuantity } from "../quantity/quantity.ts";
import type { Tolerance } from "./door.ts";
import { type DoorFault, doorFault, givenWords, orList } from "./fault.ts";
import type { NumericField } from "./field.ts";
import type { Json, JsonObject } from "./json.ts";
import { nearestName } from "./nearest.ts";
import { numericPaths } from "./numeric-paths.ts";
import { isSection, refuseUnknownKeys } from "./read-section.ts";
import { fieldAt, isNumeric } from "./schema.ts";

const SHAPES = ["uniform", "normal", "triangular"] as const;
type Shape = (typeof SHAPES)[number];

/** More than a door has numbers, short of long lists. */
const MOST_TOLERANCES = 500;

/** How many entries the lists have that key paths count through, by their path ("animals", "solenoid.pull"). */
export type ListLengths = ReadonlyMap<string, number>;

/**
 * Reads the tolerances. A key must be a number of the door that can spread; keys of a section the file leaves out
 * are read and stand ready for it, keys past the end of a list are faults.
 */
export function readTolerances(
  raw: Json,
  path: string,
  lists: ListLengths,
  faults: DoorFault[],
): Map<string, Tolerance> {
  const read = new Map<string, Tolerance>();
  if (!isSection(raw)) {
    faults.push(
      doorFault(path, givenWords(raw), 'a section { … } of key paths, such as { "magnets.gap": "0.5 mm" }'),
    );
    return read;
  }
  const entries = Object.entries(raw);
  if (entries.length > MOST_TOLERANCES) {
    faults.push(doorFault(path, `${entries.length} tolerances`, `at most ${MOST_TOLERANCES}`));
    return read;
  }
  for (const [key, entry] of entries) {
    const field = spreadingField(key, `${path}.${key.slice(0, 60)}`, lists, faults);
    const tolerance = field && readTolerance(field, entry, `${path}.${key.slice(0, 60)}`, faults);
    if (tolerance) read.set(key, tolerance);
  }
  return read;
}

function spreadingField(
  key: string,
  path: string,
  lists: ListLengths,
  faults: DoorFault[],
): NumericField | undefined {
  const field = fieldAt(key);
  const given = `the key "${key.slice(0, 60)}"`;
  if (!isNumeric(field) || (field.kind === "number" && field.whole) || key.startsWith("study.")) {
    const near = nearestName(key, numericPaths());
    const problem = field === undefined ? "the key is not known" : "this key does not spread";
    const hint = near === undefined || near === key ? "" : `; the nearest is "${near}"`;
    faults.push(doorFault(path, given, `the path of a number of the door${hint}`, problem));
    return undefined;
  }
  const short = listTooShort(key, lists);
  if (short !== undefined) faults.push(doorFault(path, given, short));
  return short === undefined ? field : undefined;
}

function listTooShort(key: string, lists: ListLengths): string | undefined {
  const match = /^(.*?)\.(\d+)\./.exec(key);
  const length = match === null ? undefined : lists.get(match[1]);
  if (match === null || length === undefined || Number(match[2]) < length) return undefined;
  return `an entry of "${match[1]}", which has ${length}, counted from 0`;
}

function readTolerance(
  field: NumericField,
  raw: Json,
  path: string,
  faults: DoorFault[],
): Tolerance | undefined {
  if (isSection(raw)) return readOffsets(field, raw, path, faults);
  const spread = readOffset(field, typeof raw === "string" ? raw.replace(/^\s*(±|\+-|\+\/-)/, "") : raw);
  if (typeof spread === "string" || spread.value < 0) {
    const problem = typeof spread === "string" ? spread : "a spread is not negative";
    faults.push(doorFault(path, givenWords(raw), expectedSpread(field), problem));
    return undefined;
  }
  return { shape: "normal", twoSigma: spread.value, relative: spread.relative };
}

interface Offset {
  readonly value: number;
  readonly relative: boolean;
}

/** An offset in the field's SI unit or relative to the nominal; a text says what is wrong. */
function readOffset(field: NumericField, raw: Json): Offset | string {
  if (typeof raw === "string" && /(%|percent)\s*$/.test(raw)) {
    const share = parseQuantity(raw, "ratio");
    return share.ok ? { value: share.value, relative: true } : share.problem;
  }
  if (field.kind === "number" || field.dimension === "ratio") return plainOffset(raw);
  if (typeof raw === "number") return "a plain number has no unit";
  if (typeof raw !== "string") return "";
  const read = parseQuantity(raw, offsetDimension(field.dimension));
  return read.ok ? { value: read.value, relative: false } : read.problem;
}

function plainOffset(raw: Json): Offset | string {
  const text = typeof raw === "string" ? raw.trim() : "";
  const plain = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : raw;
  return typeof plain === "number" && Number.isFinite(plain) ? { value: plain, relative: false } : "";
}

/** Offsets of temperatures are differences: 5 degC is 5 K wide, wherever it starts. */
function offsetDimension(dimension: Dimension): Dimension {
  return dimension === "temperature" ? "temperatureDifference" : dimension;
}

function expectedSpread(field: NumericField): string {
  const own = field.kind === "number" ? "a plain number" : DIMENSIONS[offsetDimension(field.dimension)].words;
  return `± two standard deviations as a percentage ("30 %") or as ${own}, or a section { "low", "high", "shape" }`;
}

function readOffsets(
  field: NumericField,
  raw: JsonObject,
  path: string,
  faults: DoorFault[],
): Tolerance | undefined {
  const before = faults.length;
  refuseUnknownKeys(raw, ["low", "high", "shape"], path, faults);
  const low = readEnd(field, raw.low, `${path}.low`, faults);
  const high = readEnd(field, raw.high, `${path}.high`, faults);
  const shape = readShape(raw.shape, `${path}.shape`, faults);
  if (low && high && low.relative !== high.relative) {
    faults.push(
      doorFault(path, "a percentage and an absolute offset", "both ends as percentages or both absolute"),
    );
  } else if (low && high && low.value > high.value) {
    faults.push(
      doorFault(path, `low ${givenWords(raw.low)}, high ${givenWords(raw.high)}`, "low at most high"),
    );
  }
  if (faults.length > before || !low || !high || !shape) return undefined;
  return { shape, low: low.value, high: high.value, relative: low.relative };
}

function readEnd(
  field: NumericField,
  raw: Json | undefined,
  path: string,
  faults: DoorFault[],
): Offset | undefined {
  const read = raw === undefined ? "this key is required" : readOffset(field, raw);
  if (typeof read !== "string") return read;
  const own = field.kind === "number" ? "a plain number" : DIMENSIONS[offsetDimension(field.dimension)].words;
  faults.push(
    doorFault(
      path,
      givenWords(raw),
      `an offset from the nominal: ${own}, or a percentage such as "-10 %"`,
      read,
    ),
  );
  return undefined;
}

function readShape(raw: Json | undefined, path: string, faults: DoorFault[]): Shape | undefined {
  if (raw === undefined) return "uniform";
  const shape = SHAPES.find((known) => known === raw);
  if (shape === undefined) faults.push(doorFault(path, givenWords(raw), orList(SHAPES.map((s) => `"${s}"`))));
  return shape;
}
