/**
 * JSON text to plain data, for files of unknown origin. Differs from `JSON.parse` in five ways: errors carry line and
 * column, keys given twice are errors (the second would silently replace the first), nesting is bounded, objects
 * have no prototype, so that a key such as "__proto__" is only a key, and NaN and Infinity, which some programs write, are
 * numbers here, so that whoever checks the numbers can say where. Numbers and strings are read by `JSON.parse`.
 * One algorithm, recursive descent after RFC 8259.
 */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

export interface JsonFault {
  /** "flap.width" for a key given twice; "" for broken text. */
  readonly path: string;
  /** From 1. */
  readonly line: number;
  readonly column: number;
  readonly problem: string;
  /** What stands there, or the end of the text. */
  readonly given: string;
  readonly expected: string;
}

export type JsonRead =
  | { readonly ok: true; readonly value: Json }
  | {
      readonly ok: false;
      readonly faults: JsonFault[];
      /** What the text says but for these faults, so that others can be looked for; `undefined` where it breaks off. */
      readonly value: Json | undefined;
    };

/** Deepest nesting read; a door file has five levels. */
export const DEEPEST_JSON = 32;

/** Parses the text. Never throws; a leading byte order mark is passed over. */
export function parseJson(text: string): JsonRead {
  const scan: Scan = { text, at: text.startsWith("\ufeff") ? 1 : 0, path: [], faults: [] };
  try {
    const value = readValue(scan);
    skipSpace(scan);
    if (scan.at < text.length) fail(scan, "there is text after the end", "the end of the file");
    return scan.faults.length > 0 ? { ok: false, faults: scan.faults, value } : { ok: true, value };
  } catch (error) {
    if (!(error instanceof Broken)) throw error;
    return { ok: false, faults: [...scan.faults, error.fault], value: undefined };
  }
}

interface Scan {
  readonly text: string;
  at: number;
  readonly path: (string | number)[];
  readonly faults: JsonFault[];
}

/** Leaves the descent at the first place that is not JSON. */
class Broken extends Error {
  readonly fault: JsonFault;
  constructor(fault: JsonFault) {
    super(fault.problem);
    this.fault = fault;
  }
}

function fail(scan: Scan, problem: string, expected: string): never {
  const rest = scan.text.slice(scan.at, scan.at + 12).split(/[\r\n]/)[0];
  const given =
    scan.at >= scan.text.length ? "the end of the file" : rest === "" ? "the end of the line" : rest;
  throw new Broken({ path: "", ...lineAndColumn(scan.text, scan.at), problem, given, expected });
}

function lineAndColumn(text: string, at: number): { line: number; column: number } {
  const lines = text.slice(0, at).split(/\r\n|\r|\n/);
  const last = lines[lines.length - 1];
  return { line: lines.length, column: last.replace("\ufeff", "").length + 1 };
}

function skipSpace(scan: Scan): void {
  while (scan.at < scan.text.length && " \t\n\r".includes(scan.text[scan.at])) scan.at++;
}

function readValue(scan: Scan): Json {
  skipSpace(scan);
  const sign = scan.text[scan.at];
  if (sign === "{") return readObject(scan);
  if (sign === "[") return readList(scan);
  if (sign === '"') return readString(scan);
  return readLiteral(scan);
}

const LITERAL = /(?:true|false|null|NaN|-?Infinity|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;

function readLiteral(scan: Scan): null | boolean | number {
  LITERAL.lastIndex = scan.at;
  const match = LITERAL.exec(scan.text);
  if (match === null)
    fail(scan, "this is not a value", 'a text in quotes, a number, true, false, "{" or "["');
  scan.at = LITERAL.lastIndex;
  return /[NI]/.test(match[0]) ? Number(match[0]) : JSON.parse(match[0]);
}

/** By hand, not by one pattern: a text of megabytes would exhaust a pattern's own stack. */
function readString(scan: Scan): string {
  const start = scan.at;
  let end = start + 1;
  while (end < scan.text.length && scan.text[end] !== '"') end += scan.text[end] === "\\" ? 2 : 1;
  try {
    const value = JSON.parse(scan.text.slice(start, end + 1));
    scan.at = end + 1;
    return value;
  } catch {
    return fail(
      scan,
      "a text is not closed or holds a wrong escape",
      "a text that ends in quotes on its line",
    );
  }
}

function readList(scan: Scan): Json[] {
  const list: Json[] = [];
  readMembers(scan, "]", () => {
    scan.path.push(list.length);
    list.push(readValue(scan));
    scan.path.pop();
  });
  return list;
}

function readObject(scan: Scan): JsonObject {
  const object: Record<string, Json> = Object.create(null);
  readMembers(scan, "}", () => {
    skipSpace(scan);
    const start = scan.at;
    if (scan.text[start] !== '"') fail(scan, "a key is missing", "a key in quotes");
    const key = readString(scan);
    scan.path.push(key);
    if (Object.hasOwn(object, key)) noteDuplicate(scan, start);
    skipSpace(scan);
    if (scan.text[scan.at] !== ":") fail(scan, `the key "${key}" has no value`, '":" and a value');
    scan.at++;
    object[key] = readValue(scan);
    scan.path.pop();
  });
  return object;
}

/** More than these only lengthen the report, and finding their lines takes time. */
const DUPLICATES_NOTED = 20;

function noteDuplicate(scan: Scan, start: number): void {
  if (scan.faults.length >= DUPLICATES_NOTED) return;
  const place = lineAndColumn(scan.text, start);
  scan.faults.push({
    path: scan.path.map((step) => (step === "" ? '""' : step)).join("."),
    ...place,
    problem: `the key is given a second time in line ${place.line}, column ${place.column}`,
    given: "the same key twice",
    expected: "each key once",
  });
}

/** What stands between the brackets, separated by commas. */
function readMembers(scan: Scan, close: "]" | "}", readOne: () => void): void {
  if (scan.path.length >= DEEPEST_JSON)
    fail(scan, "the nesting is too deep", `at most ${DEEPEST_JSON} levels`);
  scan.at++;
  skipSpace(scan);
  if (scan.text[scan.at] === close) {
    scan.at++;
    return;
  }
  for (;;) {
    readOne();
    skipSpace(scan);
    const sign = scan.text[scan.at];
    if (sign !== "," && sign !== close)
      fail(scan, "a list or section does not go on as it must", `"," or "${close}"`);
    scan.at++;
    if (sign === close) return;
  }
}
