/** Faults of a door file: one form for all of them. */
import type { Json } from "./json.ts";

export interface DoorFault {
  /** Key path, "flap.extraMasses.0.mass"; "file" where the file as a whole is meant. */
  readonly path: string;
  /** What stands there, as JSON, or in words. */
  readonly given: string;
  /** What would be right, with an example where one helps. */
  readonly expected: string;
  /** The whole sentence, path included. */
  readonly message: string;
}

/** The path of faults that are not about one key. */
export const WHOLE_FILE = "file";

export function doorFault(path: string, given: string, expected: string, problem = ""): DoorFault {
  const because = problem === "" ? "" : `${problem}; `;
  return { path, given, expected, message: `${path}: ${because}given ${given}, expected ${expected}.` };
}

const LONGEST_GIVEN = 60;

/** A value of a file for a message: scalars as JSON, shortened; the rest in words. */
export function givenWords(raw: Json | undefined): string {
  if (raw === undefined) return "nothing";
  if (raw === null) return "null";
  if (Array.isArray(raw)) return raw.length === 0 ? "an empty list" : "a list";
  if (typeof raw === "object") return "a section { … }";
  const text = typeof raw === "number" ? String(raw) : JSON.stringify(raw);
  return text.length > LONGEST_GIVEN ? `${text.slice(0, LONGEST_GIVEN)}…` : text;
}

/** "a or b", "a, b or c". */
export function orList(items: readonly string[]): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} or ${items[items.length - 1]}`;
}
