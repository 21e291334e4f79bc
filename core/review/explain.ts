/** How a result comes about: its formula, everything it is made of with the values of this door, and its source, as data. */
import { type DoorFile, fileEntry } from "../door/file.ts";
import type { Json } from "../door/json.ts";
import { fieldAt } from "../door/schema.ts";
import { DIMENSIONS } from "../quantity/dimensions.ts";
import type { Computed } from "./compute.ts";
import type { ResultDefinition, ResultInput } from "./result.ts";
import { RESULTS, resultNamed } from "./results.ts";
import { figureText, type Words } from "./words.ts";

export interface ExplainedInput {
  /** A key path of the door file, the animal's number filled in, or the name of another result. */
  readonly name: string;
  readonly kind: "key" | "result";
  /** What it is, one phrase. */
  readonly title: string;
  /** SI; a choice's word, a flag; `null` where the door has none. Lists (masses, a pull curve) have their text only. */
  readonly value: number | string | boolean | null;
  readonly unit: string | null;
  /** As the file says it where it does, else in the reader's units. */
  readonly text: string;
  /** Whether the text is the person's own. */
  readonly fromFile: boolean;
}

export interface Explanation {
  readonly name: string;
  readonly title: string;
  readonly formula: string;
  readonly source: string;
  readonly unit: string;
  readonly value: number | null;
  readonly text: string;
  readonly inputs: readonly ExplainedInput[];
}

/**
 * Explains a result of a computed door. With the door's file, its keys are told in the person's own words. Throws a
 * RangeError for a name that is no result's.
 */
export function explain(
  computed: Computed,
  name: string,
  words: Words,
  file: DoorFile | null = null,
): Explanation {
  const definition = resultNamed(name);
  if (definition === undefined) {
    const known = RESULTS.map((r) => r.name).join(", ");
    throw new RangeError(`Name of a result must be one of ${known}; received "${name}"`);
  }
  const { title, formula, source, unit } = definition;
  const value = definition.value(computed);
  const inputs = definition.inputs.map((input) => explainInput(input, definition, computed, words, file));
  return { name, title, formula, source, unit, value, text: figureText(value, unit, words), inputs };
}

function explainInput(
  input: ResultInput,
  of: ResultDefinition,
  computed: Computed,
  words: Words,
  file: DoorFile | null,
): ExplainedInput {
  return "result" in input
    ? explainResult(input.result, computed, words)
    : explainKey(
        input.key.replace(/^animals\./, `animals.${decidingAnimal(of.name, computed)}.`),
        computed,
        words,
        file,
      );
}

function explainResult(name: string, computed: Computed, words: Words): ExplainedInput {
  const definition = resultNamed(name);
  const value = definition?.value(computed) ?? null;
  const unit = definition?.unit ?? "1";
  const title = definition?.title ?? name;
  return { name, kind: "result", title, value, unit, text: figureText(value, unit, words), fromFile: false };
}

/** The place in the list of the animal a result is of. */
export function decidingAnimal(result: string, computed: Computed): number {
  if (result.startsWith("push.")) return computed.hardestPush;
  const { each, height, width, step } = computed.fit;
  if (result === "fit.heightSpare") return each.findIndex((fit) => fit.height === height);
  if (result === "fit.widthSpare") return each.findIndex((fit) => fit.width === width);
  if (result === "fit.stepSpare") return each.findIndex((fit) => fit.step === step);
  return computed.door.animals.indexOf(computed.governing.animal);
}

function explainKey(path: string, computed: Computed, words: Words, file: DoorFile | null): ExplainedInput {
  const field = fieldAt(path);
  const value = valueAt(computed, path);
  const own = file === null ? undefined : fileEntry(file, path);
  const plain = typeof value === "object" ? null : value;
  const unit =
    field?.kind === "quantity" ? DIMENSIONS[field.dimension].siUnit : field?.kind === "number" ? "1" : null;
  return {
    name: path,
    kind: "key",
    title: field?.doc ?? "",
    value: plain,
    unit,
    text: own === undefined ? valueText(path, value, words) : jsonText(own),
    fromFile: own !== undefined,
  };
}

/** What stands at a key path of the door: a number, a word, a flag, a list; `null` where a section or key is left out. */
function valueAt(computed: Computed, path: string): number | string | boolean | readonly unknown[] | null {
  let here: unknown = computed.door;
  for (const step of path.split(".")) {
    if (typeof here !== "object" || here === null) return null;
    here = (here as Record<string, unknown>)[step];
  }
  if (Array.isArray(here)) return here;
  return typeof here === "number" || typeof here === "string" || typeof here === "boolean" ? here : null;
}

function valueText(path: string, value: ReturnType<typeof valueAt>, words: Words): string {
  if (value === null) return "none";
  if (typeof value === "number") return numberText(path, value, words);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value === "" ? "none" : value;
  return value.length === 0 ? "none" : value.map((entry) => entryWords(entry as ListEntry, words)).join(", ");
}

/** Digits of a key's value that the file does not say. */
const DIGITS = 4;

function numberText(path: string, value: number, words: Words): string {
  const field = fieldAt(path);
  return field?.kind === "quantity"
    ? words.of(value, field.dimension, DIGITS)
    : String(Number(value.toPrecision(DIGITS)));
}

type ListEntry =
  | { name: string; mass: number; distanceFromHinge: number }
  | { stroke: number; force: number };

/** "strike: 80 g at 25 cm", "8 mm: 1.2 N" */
function entryWords(entry: ListEntry, w: Words): string {
  return "mass" in entry
    ? `${entry.name}: ${w.mass(entry.mass)} at ${w.length(entry.distanceFromHinge)}`
    : `${w.length(entry.stroke)}: ${w.force(entry.force)}`;
}

/** An entry of the file as the person wrote it; a list's in a row. */
function jsonText(entry: Json): string {
  if (typeof entry === "string") return entry;
  if (typeof entry === "boolean") return entry ? "yes" : "no";
  if (Array.isArray(entry)) return entry.length === 0 ? "none" : entry.map(rowText).join(", ");
  return String(entry);
}

function rowText(row: Json): string {
  if (Array.isArray(row)) return row.map(jsonText).join(": ");
  if (typeof row !== "object" || row === null) return jsonText(row);
  const { name, mass, distanceFromHinge } = row as Readonly<Record<string, Json>>;
  const label = name === undefined ? "" : `${jsonText(name)}: `;
  return `${label}${jsonText(mass)} at ${jsonText(distanceFromHinge)}`;
}
