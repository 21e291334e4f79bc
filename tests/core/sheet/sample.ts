/** Doors and outside programs for the sheets' tests. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { UnitSystem } from "../../../core/quantity/format.ts";
import { doorPlan } from "../../../core/sheet/door-plan.ts";
import { type SheetInput, sheetInput } from "../../../core/sheet/sheet-input.ts";
import type { Drawn } from "../../../core/sheet/sheet-set.ts";
import { sizes } from "../../../core/sheet/sizes.ts";
import { type DoorJson, doorOf, type Example, exampleJson, opened } from "../doors.ts";

/** The medium dog's door with some keys of its sections changed; a section of `null` is taken out. */
export function variant(changes: Readonly<Record<string, Record<string, unknown> | null>>): DoorJson {
  const json = exampleJson("medium-dog");
  for (const [section, change] of Object.entries(changes)) {
    if (change === null) delete json[section];
    else json[section] = { ...json[section], ...change };
  }
  return json;
}

export function inputOf(json: unknown, system: UnitSystem = "metric"): SheetInput {
  const { file, door } = opened(json);
  return sheetInput(door, file, system);
}

/** What drawings at full size need of a door, without computing it. */
export function drawnOf(json: unknown, system: UnitSystem = "metric"): Drawn {
  const door = doorOf(json);
  return { door, plan: doorPlan(door), sizes: sizes(system) };
}

const known = new Map<string, SheetInput>();

/** An example's input, computed once for a test file. */
export function exampleInput(name: Example, system: UnitSystem = "metric"): SheetInput {
  const key = `${name}/${system}`;
  const input = known.get(key) ?? inputOf(exampleJson(name), system);
  known.set(key, input);
  return input;
}

/** Whether a program runs here, and what to say in a skipped test's name. */
export function program(name: string, debianPackage: string, args: readonly string[] = ["-v"]) {
  const there = spawnSync(name, [...args]).error === undefined;
  const why = there
    ? ""
    : ` (skipped: ${name} is not installed; on Debian: apt-get install ${debianPackage})`;
  return { there, why };
}

export function fileOf(name: string, bytes: Uint8Array | string): string {
  const path = join(mkdtempSync(join(tmpdir(), "swingstill-sheet-")), name);
  writeFileSync(path, bytes);
  return path;
}

/** What a program writes to standard output; throws with its complaint where it fails. */
export function outputOf(name: string, args: readonly string[]): Buffer {
  const { status, stdout, stderr, error } = spawnSync(name, [...args], { maxBuffer: 1 << 28 });
  if (error !== undefined || status !== 0) throw new Error(`${name}: ${error?.message ?? stderr.toString()}`);
  return stdout;
}
