/**
 * Parts of a study that may run on different machines: part i of n counts its share of the samples and writes a file; the
 * files joined give the very answer of one run. A file carries the door, so that joining needs nothing else.
 */
import { type DoorFault, doorFault } from "../door/fault.ts";
import { doorAsJson, doorDigest, doorFromJson } from "./digest.ts";
import { type HoldStudy, holdStudy } from "./hold-study.ts";
import { type PackedAnimal, type PackedTally, packTally, unpackTally } from "./pack.ts";
import { requestFaults, type StudyRequest } from "./request.ts";
import { pointPlan, pointsBefore } from "./study-points.ts";
import type { Tally } from "./tally.ts";
import { type SampleRange, StudyTotal } from "./total.ts";

export const PART_FORMAT = "swingstill-study-part";
/** Goes up whenever the same seed would give other samples or counts: parts of different versions do not join. */
export const PART_VERSION = 2;

/** Part `part` (from 1) of `parts`: its samples. */
export function partRange(samples: number, part: number, parts: number): SampleRange {
  return { from: Math.floor((samples * (part - 1)) / parts), to: Math.floor((samples * part) / parts) };
}

/** Reads "2/4"; `null` for anything else. */
export function parsePart(text: string): { readonly part: number; readonly parts: number } | null {
  const match = /^\s*(\d{1,6})\s*\/\s*(\d{1,6})\s*$/.exec(text);
  if (match === null) return null;
  const [part, parts] = [Number(match[1]), Number(match[2])];
  return part >= 1 && part <= parts ? { part, parts } : null;
}

export interface StudyPart {
  readonly request: StudyRequest;
  readonly digest: string;
  readonly tally: PackedTally;
}

/** The file of a part. */
export function writePart(request: StudyRequest, tally: Tally): string {
  const { door, samples, seed } = request;
  return `${JSON.stringify({
    format: PART_FORMAT,
    version: PART_VERSION,
    digest: doorDigest(door),
    samples,
    seed,
    tally: tallyToJson(packTally(tally)),
    door: doorAsJson(door),
  })}\n`;
}

/** JSON has no infinity: never is null. */
function tallyToJson(packed: PackedTally): unknown {
  const times = (array: Float64Array) => Array.from(array, (time) => (Number.isFinite(time) ? time : null));
  return {
    ...packed,
    needed: times(packed.needed),
    points: times(packed.points),
    animals: packed.animals.map((animal) => ({
      ...animal,
      grids: animal.grids.map((grid) => Array.from(grid)),
      settleBins: Array.from(animal.settleBins),
    })),
  };
}

export type PartRead =
  | { readonly ok: true; readonly part: StudyPart }
  | { readonly ok: false; readonly error: DoorFault };

/** Reads a part's file; `name` is what to call it in an error. */
export function readPart(text: string, name: string): PartRead {
  const refused = (given: string, expected: string): PartRead => ({
    ok: false,
    error: doorFault(name, given, expected),
  });
  const file = parsed(text);
  if (file === null || file.format !== PART_FORMAT) {
    return refused("something else", `a part of a study ("${PART_FORMAT}"), as hold --part writes it`);
  }
  if (file.version !== PART_VERSION) {
    return refused(
      `a part of version ${String(file.version)}`,
      `version ${PART_VERSION}; count it again with this program`,
    );
  }
  try {
    return readBody(file, refused);
  } catch {
    return refused("a damaged part", "a part as hold --part wrote it, unchanged");
  }
}

function parsed(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

function readBody(
  file: Record<string, unknown>,
  refused: (given: string, expected: string) => PartRead,
): PartRead {
  const door = doorFromJson(file.door);
  const request = { door, samples: file.samples as number, seed: file.seed as number };
  const tally = tallyFromJson(file.tally as JsonTally);
  const { samples } = request;
  if (file.digest !== doorDigest(door) || requestFaults(request).length > 0 || !fits(tally, request)) {
    return refused(
      `a part whose figures do not belong together (${samples} samples)`,
      "a part as hold --part wrote it, unchanged",
    );
  }
  return { ok: true, part: { request, digest: file.digest as string, tally } };
}

/** Whether a tally counts what it says it counts. */
function fits(tally: PackedTally, request: StudyRequest): boolean {
  const { door, samples } = request;
  const plan = pointPlan(request);
  const pointsFrom = pointsBefore(plan, samples, tally.from);
  const counted = tally.animals.reduce((sum, animal) => sum + animal.samples, 0);
  return (
    tally.animals.length === door.animals.length &&
    tally.from >= 0 &&
    tally.to <= samples &&
    counted === tally.to - tally.from &&
    tally.pointsFrom === pointsFrom &&
    tally.points.length === pointsBefore(plan, samples, tally.to) - pointsFrom
  );
}

interface JsonTally {
  readonly from: number;
  readonly to: number;
  readonly rowsFrom: number;
  readonly needed: readonly (number | null)[];
  readonly pointsFrom: number;
  readonly points: readonly (number | null)[];
  readonly animals: readonly (Omit<PackedAnimal, "grids" | "settleBins"> & {
    readonly grids: readonly (readonly number[])[];
    readonly settleBins: readonly number[];
  })[];
}

function tallyFromJson(json: JsonTally): PackedTally {
  const times = (list: readonly (number | null)[]) =>
    Float64Array.from(list, (time) => time ?? Number.POSITIVE_INFINITY);
  return {
    ...json,
    needed: times(json.needed),
    points: times(json.points),
    animals: json.animals.map((animal) => ({
      ...animal,
      grids: animal.grids.map((grid) => Int32Array.from(grid)),
      settleBins: Int32Array.from(animal.settleBins),
    })),
  };
}

export type Joined =
  | { readonly ok: true; readonly study: HoldStudy; readonly request: StudyRequest }
  | { readonly ok: false; readonly error: DoorFault };

/** Joins parts, in any order. `names` are the files', for errors. */
export function joinParts(parts: readonly StudyPart[], names: readonly string[]): Joined {
  const refused = (path: string, given: string, expected: string, problem: string): Joined => ({
    ok: false,
    error: doorFault(path, given, expected, problem),
  });
  const [first] = parts;
  if (first === undefined) return refused("parts", "none", "the files of all parts of a study", "");
  const { request } = first;
  const total = new StudyTotal(request);
  for (let i = 0; i < parts.length; i++) {
    const problem = mismatch(parts[i], first, names[0]);
    if (problem !== null) return refused(names[i], problem.given, problem.expected, problem.problem);
    const { from, to } = parts[i].tally;
    if (!total.add(unpackTally(parts[i].tally))) {
      return refused(
        names[i],
        `samples ${from} to ${to - 1}`,
        "each part once",
        "some of these are in another part too",
      );
    }
  }
  const [gap] = total.missing;
  if (gap !== undefined) {
    const given = `${parts.length} parts`;
    return refused(
      "parts",
      given,
      `the part with samples ${gap.from} to ${gap.to - 1} as well`,
      "a part is missing",
    );
  }
  return { ok: true, study: holdStudy(request, total), request };
}

interface Mismatch {
  readonly given: string;
  readonly expected: string;
  readonly problem: string;
}

function mismatch(part: StudyPart, first: StudyPart, firstName: string): Mismatch | null {
  const { door, samples, seed } = part.request;
  const other = first.request;
  if (part.digest !== first.digest) {
    const expected = `"${other.door.name}" as in ${firstName} (fingerprint ${first.digest})`;
    return {
      given: `"${door.name}" (fingerprint ${part.digest})`,
      expected,
      problem: "it is of another door",
    };
  }
  if (seed !== other.seed) {
    return { given: `seed ${seed}`, expected: `seed ${other.seed} as in ${firstName}`, problem: "" };
  }
  if (samples !== other.samples) {
    const expected = `${other.samples} samples in all, as in ${firstName}`;
    return { given: `${samples} samples in all`, expected, problem: "" };
  }
  return null;
}
