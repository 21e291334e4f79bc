/** One value of the file against its field: an SI number, a text, a flag, or a fault. */
import { DIMENSIONS } from "../quantity/dimensions.ts";
import { formatQuantity } from "../quantity/format.ts";
import { expectedQuantity, parseQuantity } from "../quantity/quantity.ts";
import { type DoorFault, doorFault, givenWords, orList } from "./fault.ts";
import { inRange, type LeafField, type NumberField, type QuantityField, type Range } from "./field.ts";
import type { Json } from "./json.ts";

/** Control characters but tab and line ends: a name goes to terminals and onto paper. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/;

/** Reads a value. After a fault it gives NaN for a number and "" for the rest, so that checks across keys pass over it. */
export function readLeaf(field: LeafField, raw: Json, path: string, faults: DoorFault[]): unknown {
  switch (field.kind) {
    case "quantity":
      return readQuantity(field, raw, path, faults);
    case "number":
      return readNumber(field, raw, path, faults);
    case "choice":
      if (typeof raw === "string" && field.options.includes(raw)) return raw;
      return refuse(faults, doorFault(path, givenWords(raw), orList(field.options.map((o) => `"${o}"`))), "");
    case "flag":
      if (typeof raw === "boolean") return raw;
      return refuse(faults, doorFault(path, givenWords(raw), "true or false"), "");
    case "text":
      if (typeof raw === "string" && !CONTROL.test(raw)) return raw;
      return refuse(
        faults,
        doorFault(path, givenWords(raw), "a text in quotes, without control characters"),
        "",
      );
  }
}

function refuse<T>(faults: DoorFault[], fault: DoorFault, stand: T): T {
  faults.push(fault);
  return stand;
}

function readQuantity(field: QuantityField, raw: Json, path: string, faults: DoorFault[]): number {
  const expected = expectedQuantity(field.dimension);
  if (typeof raw === "number" && field.dimension === "ratio") return readShare(field, raw, path, faults);
  if (typeof raw === "number") {
    const problem = "a plain number has no unit";
    return refuse(faults, doorFault(path, givenWords(raw), `${expected}, in quotes`, problem), Number.NaN);
  }
  if (typeof raw !== "string") return refuse(faults, doorFault(path, givenWords(raw), expected), Number.NaN);
  const read = parseQuantity(raw, field.dimension);
  if (!read.ok) return refuse(faults, doorFault(path, givenWords(raw), expected, read.problem), Number.NaN);
  if (inRange(read.value, field.range)) return read.value;
  return refuse(faults, doorFault(path, givenWords(raw), expectedRange(field)), Number.NaN);
}

/** A percentage written as a plain number is its share of one: 0.05 for "5 %". */
function readShare(field: QuantityField, raw: number, path: string, faults: DoorFault[]): number {
  if (inRange(raw, field.range)) return raw;
  return refuse(
    faults,
    doorFault(path, givenWords(raw), `${expectedRange(field)}, such as "5 %"`),
    Number.NaN,
  );
}

function readNumber(field: NumberField, raw: Json, path: string, faults: DoorFault[]): number {
  const expected = expectedRange(field);
  if (typeof raw !== "number") {
    const problem =
      typeof raw === "string" ? "this is a plain number, without a unit and without quotes" : "";
    return refuse(faults, doorFault(path, givenWords(raw), expected, problem), Number.NaN);
  }
  const whole = !field.whole || Number.isInteger(raw);
  if (whole && inRange(raw, field.range)) return raw;
  return refuse(faults, doorFault(path, givenWords(raw), expected), Number.NaN);
}

/** "a length from 0.001 mm to 100 m", "a whole number from 1 to 100". */
export function expectedRange(field: QuantityField | NumberField): string {
  if (field.kind === "number")
    return `a ${field.whole ? "whole " : ""}number ${rangeWords(field.range, String)}`;
  const { dimension, range } = field;
  return `${DIMENSIONS[dimension].words} ${rangeWords(range, (si) => boundText(si, field))}`;
}

/** A bound as people write it, unless rounding would put it outside its own range. */
function boundText(si: number, { dimension, range }: QuantityField): string {
  const text = formatQuantity(si, dimension, "metric");
  const read = parseQuantity(text, dimension);
  return read.ok && inRange(read.value, { ...range, maxOpen: false })
    ? text
    : `${si} ${DIMENSIONS[dimension].siUnit}`;
}

function rangeWords({ min, max, maxOpen = false }: Range, write: (value: number) => string): string {
  return `from ${write(min)} ${maxOpen ? "to below" : "to"} ${write(max)}`;
}
