/** The program as a person calls it: `node core/cli/launch.mjs …`, in a folder of the test's own. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

export const ROOT = resolve(import.meta.dirname, "../../..");
export const MEDIUM_DOG = join(ROOT, "assets/examples/medium-dog.door.json");

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

export function run(args: readonly string[], cwd = ROOT): Outcome {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, "core/cli/launch.mjs"), ...args],
    {
      cwd,
      encoding: "utf8",
      maxBuffer: 1 << 28,
    },
  );
  return { code: status, out: stdout, error: stderr };
}

export function folder(): string {
  return mkdtempSync(join(tmpdir(), "swingstill-"));
}

/** A file of the given text (or bytes) and its path. */
export function fileOf(text: string | Uint8Array, name = "test.door.json"): string {
  const path = join(folder(), name);
  writeFileSync(path, text);
  return path;
}
