/** One axis of a map: an input of the door and the values it takes. */
import type { Door } from "../door/door.ts";
import { type DoorFault, doorFault } from "../door/fault.ts";
import { inRange, type NumericField } from "../door/field.ts";
import { nearestName } from "../door/nearest.ts";
import { numericPaths } from "../door/numeric-paths.ts";
import { expectedRange } from "../door/read-value.ts";
import { fieldAt, isNumeric } from "../door/schema.ts";
import { DIMENSIONS } from "../quantity/dimensions.ts";
import { parseQuantity } from "../quantity/quantity.ts";

/** Values equally far apart, both ends included; SI. */
export interface MapAxis {
  readonly key: string;
  readonly from: number;
  readonly to: number;
  /** At least 2. */
  readonly count: number;
}

export type AxisRead =
  | { readonly ok: true; readonly axis: MapAxis }
  | { readonly ok: false; readonly error: DoorFault };

/** Most values along one axis: a picture has no more points. */
export const MOST_VALUES = 10_000;

const EXAMPLE = 'a range such as "magnets.gap=2 mm..8 mm:13"';

/** Value `index` of an axis, SI; the ends to the last bit. */
export function axisValue({ from, to, count }: MapAxis, index: number): number {
  const share = index / (count - 1);
  return index === count - 1 ? to : from * (1 - share) + to * share;
}

/** The SI unit of an input's numbers: "m", "N m"; "1" for a plain number. */
export function axisUnit(key: string): string {
  const field = fieldAt(key);
  return isNumeric(field) && field.kind === "quantity" ? DIMENSIONS[field.dimension].siUnit : "1";
}

/** Reads "KEY=FROM..TO:N" for a door; the ends in any unit of the key's dimension, in either order. */
export function parseAxis(text: string, door: Door): AxisRead {
  const match = /^\s*([^=]*?)\s*=\s*(.*?)\s*\.\.\s*(.*?)\s*:\s*([^:]*?)\s*$/.exec(
    text.slice(0, LONGEST_RANGE),
  );
  if (match === null) return refused("range", `"${text.slice(0, 80)}"`, EXAMPLE, missingPart(text));
  const [, key, fromText, toText, countText] = match;
  const field = numericField(key, door);
  if ("message" in field) return { ok: false, error: field };
  const from = readEnd(key, field, fromText);
  if (typeof from !== "number") return { ok: false, error: from };
  const to = readEnd(key, field, toText);
  if (typeof to !== "number") return { ok: false, error: to };
  const count = /^\d{1,9}$/.test(countText) ? Number(countText) : Number.NaN;
  return checkedAxis({ key, from, to, count }, field, `"${countText}"`);
}

const LONGEST_RANGE = 500;

function refused(path: string, given: string, expected: string, problem = ""): AxisRead {
  return { ok: false, error: doorFault(path, given, expected, problem) };
}

function missingPart(text: string): string {
  if (!text.includes("=")) return 'the "=" between key and range is missing';
  if (!text.includes("..")) return 'the ".." between the ends is missing';
  return 'the ":" before the number of values is missing';
}

/** The schema's entry of a number that this door has, or what is wrong with the key. */
export function numericField(key: string, door: Door): NumericField | DoorFault {
  const field = fieldAt(key);
  const given = `the key "${key.slice(0, 60)}"`;
  if (!isNumeric(field)) {
    const near = nearestName(key, numericPaths());
    const hint = near === undefined ? "" : `; the nearest is "${near}"`;
    const problem = field === undefined ? "the key is not known" : "this key is not a number";
    return doorFault("range", given, `the path of a number of the door${hint}`, problem);
  }
  const lacking = lackingPart(key, door);
  return lacking === null ? field : doorFault("range", given, "a key this door has", lacking);
}

/** What the door lacks on the way to a key. */
function lackingPart(key: string, door: Door): string | null {
  const steps = key.split(".");
  let here: unknown = door;
  for (let depth = 0; depth < steps.length - 1; depth++) {
    const path = steps.slice(0, depth + 1).join(".");
    here = (here as Record<string, unknown>)[steps[depth]];
    if (here === undefined) return `there is no "${path}", entries count from 0`;
    if (here === null) return `the door has no "${path}"`;
  }
  return null;
}

function readEnd(key: string, field: NumericField, text: string): number | DoorFault {
  const value = field.kind === "number" ? plainNumber(text) : quantityOf(field, text);
  if (typeof value !== "number")
    return doorFault(key, `"${text.slice(0, 60)}"`, expectedRange(field), value.problem);
  return inRange(value, field.range)
    ? value
    : doorFault(key, `"${text.slice(0, 60)}"`, expectedRange(field), "outside the key's range");
}

function plainNumber(text: string): number | { readonly problem: string } {
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) return Number(text);
  return { problem: "this is a plain number, without a unit" };
}

function quantityOf(field: NumericField & { kind: "quantity" }, text: string): number | { problem: string } {
  const read = parseQuantity(text, field.dimension);
  return read.ok ? read.value : { problem: read.problem };
}

/** An axis whose ends are read, checked as a whole; for axes made by a program too. */
export function checkedAxis(axis: MapAxis, field: NumericField, countGiven = String(axis.count)): AxisRead {
  const { key, from, to, count } = axis;
  if (!(Number.isInteger(count) && count >= 2 && count <= MOST_VALUES)) {
    return refused(key, `${countGiven} values`, `a whole number of values from 2 to ${MOST_VALUES}`);
  }
  if (from === to) return refused(key, "two equal ends", "a range from one value to another");
  if (field.kind === "number" && field.whole && (to - from) % (count - 1) !== 0) {
    const expected = `a number of values that makes every one whole, such as ${Math.abs(to - from) + 1}`;
    return refused(key, `${count} values from ${from} to ${to}`, expected, "the key takes whole numbers");
  }
  return { ok: true, axis };
}
