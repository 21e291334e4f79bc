/**
 * Tolerances of the file as a person types them: "0.5 mm", "30 %", or from one offset to another, "-1 mm to 2 mm, uniform". What
 * is written here reads back to the same entry.
 */
import type { Json, JsonObject } from "../../core/door/json.ts";

/** Before the key that spreads, in paths of the file. */
export const TOLERANCES = "study.tolerances.";

export function spreadText(entry: Json): string {
  if (typeof entry === "string") return entry;
  const ends = endsOf(entry);
  return ends ?? JSON.stringify(entry);
}

function endsOf(entry: Json): string | null {
  if (typeof entry !== "object" || entry === null || Array.isArray(entry)) return null;
  const { low, high, shape, ...rest } = entry as JsonObject;
  if (Object.keys(rest).length > 0 || !isPlain(low) || !isPlain(high)) return null;
  const text = `${low} to ${high}`;
  const whole = shape === undefined ? text : `${text}, ${String(shape)}`;
  return JSON.stringify(spreadFrom(whole)) === JSON.stringify(entry) ? whole : null;
}

const isPlain = (end: Json | undefined): end is string | number =>
  typeof end === "string" || typeof end === "number";

const ENDS = /^(.*\S)\s+to\s+([^,]*[^,\s])\s*(?:,\s*(.*\S))?$/;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** Nothing is refused: a text that is no tolerance is kept as it is, and the reader explains it. */
export function spreadFrom(text: string): Json | undefined {
  const plain = text.trim();
  if (plain === "") return undefined;
  if (plain.startsWith("{")) return jsonFrom(plain) ?? text;
  const ends = ENDS.exec(plain);
  if (ends === null) return NUMBER.test(plain) ? Number(plain) : text;
  const [, low, high, shape] = ends;
  return { low: endFrom(low), high: endFrom(high), ...(shape === undefined ? {} : { shape }) };
}

function endFrom(text: string): Json {
  const plain = text.replace(/^−/, "-");
  return NUMBER.test(plain) ? Number(plain) : plain;
}

function jsonFrom(text: string): Json | undefined {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return undefined;
  }
}
