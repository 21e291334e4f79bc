/** What was measured on a door's bench, as text that is kept for it. */
import { NO_TEXTS, TRIAL_FIELDS, type TrialTexts } from "./trial-readings.ts";

/** A table of a swing as it was chosen. */
export interface MeasuredFile {
  readonly name: string;
  readonly text: string;
}

/** What a person wrote and loaded. */
export interface Measurements {
  readonly texts: TrialTexts;
  readonly file: MeasuredFile | null;
}

export const NOTHING_MEASURED: Measurements = { texts: NO_TEXTS, file: null };

const FORMAT = "swingstill-trial";
const VERSION = 1;

export function isNothing({ texts, file }: Measurements): boolean {
  return file === null && TRIAL_FIELDS.every((field) => texts[field] === "");
}

export function writeRecord({ texts, file }: Measurements): string {
  const written = Object.fromEntries(
    TRIAL_FIELDS.flatMap((field) => (texts[field] === "" ? [] : [[field, texts[field]]])),
  );
  return JSON.stringify({ format: FORMAT, version: VERSION, texts: written, file });
}

export type ReadRecord =
  | { readonly kind: "measured"; readonly measured: Measurements }
  /** Written by a later program: to be left as it is. */
  | { readonly kind: "newer" }
  | { readonly kind: "unreadable" };

export function readRecord(text: string): ReadRecord {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { kind: "unreadable" };
  }
  if (!isObject(raw) || raw.format !== FORMAT || typeof raw.version !== "number")
    return { kind: "unreadable" };
  if (raw.version > VERSION) return { kind: "newer" };
  const { texts, file } = raw;
  return { kind: "measured", measured: { texts: textsOf(isObject(texts) ? texts : {}), file: fileOf(file) } };
}

function textsOf(raw: Readonly<Record<string, unknown>>): TrialTexts {
  const entries = TRIAL_FIELDS.map((field) => {
    const text = Object.hasOwn(raw, field) ? raw[field] : "";
    return [field, typeof text === "string" ? text : ""];
  });
  return Object.fromEntries(entries) as TrialTexts;
}

function fileOf(raw: unknown): MeasuredFile | null {
  if (!isObject(raw) || typeof raw.name !== "string" || typeof raw.text !== "string") return null;
  return { name: raw.name, text: raw.text };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
