/** Fitted values as edits of a door file: in the units that the file uses, rounded to what the error allows. */
import { type DoorFile, editDoorFile, fileEntry } from "../../door/file.ts";
import type { Json } from "../../door/json.ts";
import { fieldAt, isNumeric } from "../../door/schema.ts";
import type { Dimension } from "../../quantity/dimensions.ts";
import { formatQuantity } from "../../quantity/format.ts";
import { leadingNumber, plainSpelling } from "../../quantity/number-text.ts";
import { parseQuantity } from "../../quantity/quantity.ts";
import type { FitDone, FittedValue } from "./fit-types.ts";

/** One edit: a key's path, and the text to write there; a plain number for a key without a unit. */
export interface FitEdit {
  readonly path: string;
  readonly text: string;
}

export interface EditOptions {
  /** Also write ± 2 standard errors into study.tolerances. */
  readonly tolerances?: boolean;
}

/** Edits that put the fitted values into the file they were fitted to. */
export function fitEdits(fit: FitDone, file: DoorFile, { tolerances = false }: EditOptions = {}): FitEdit[] {
  return fit.values.flatMap((fitted) => {
    const { value, spread } = roundedTexts(fitted, file);
    const edit = { path: fitted.key, text: value };
    return tolerances ? [edit, { path: `study.tolerances.${fitted.key}`, text: spread }] : [edit];
  });
}

/** A copy of the file with edits made. */
export function withFitEdits(file: DoorFile, edits: readonly FitEdit[]): DoorFile {
  return edits.reduce((changed, { path, text }) => editDoorFile(changed, path, entryOf(path, text)), file);
}

function entryOf(path: string, text: string): Json {
  const field = fieldAt(path);
  return isNumeric(field) && field.kind === "number" ? Number(text) : text;
}

/** A value and its ± 2 σ as texts in one unit. */
function roundedTexts({ key, value, error }: FittedValue, file: DoorFile): { value: string; spread: string } {
  const field = fieldAt(key);
  const [unit, size] =
    isNumeric(field) && field.kind === "quantity"
      ? unitFor(key, value, error, field.dimension, file)
      : ["", 1];
  const place = lastPlace(error / size);
  const write = (x: number) => `${decimal(x, place)}${unit === "" ? "" : ` ${unit}`}`;
  return { value: write(value / size), spread: write((2 * error) / size) };
}

/** The unit that the file writes this key in, and its size in SI; a builder's unit where the file leaves the key out. */
function unitFor(
  key: string,
  value: number,
  error: number,
  dimension: Dimension,
  file: DoorFile,
): [string, number] {
  const entry = fileEntry(file, key);
  const own = typeof entry === "string" ? unitOf(entry) : "";
  const unit =
    own === "" ? unitOf(formatQuantity(Math.max(Math.abs(value), error), dimension, "metric")) : own;
  const one = parseQuantity(`1 ${unit}`, dimension);
  return one.ok ? [unit, one.value] : ["", 1];
}

function unitOf(text: string): string {
  const number = leadingNumber(plainSpelling(text));
  return number === null || number === "infinite" ? "" : number.rest;
}

/**
 * The decimal place that the error reaches: its first digit, or its second where the first is 1 or the error starts below
 * 3.5 (the rule of the Particle Data Group, Review of Particle Physics, introduction, in short).
 */
function lastPlace(error: number): number {
  if (!(error > 0 && Number.isFinite(error))) return -6;
  const exponent = Math.floor(Math.log10(error));
  const first = error / 10 ** exponent;
  return first < 3.55 ? exponent - 1 : exponent;
}

/** Rounded to 10^place, without an exponent. */
function decimal(value: number, place: number): string {
  if (place >= 0) return String(Math.round(value / 10 ** place) * 10 ** place);
  const text = value.toFixed(Math.min(12, -place));
  return Number(text) === 0 ? "0" : text;
}
