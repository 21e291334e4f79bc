/** Compiles a timer program for the host and runs it there. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const HERE = fileURLToPath(new URL(".", import.meta.url));
const STRICT = ["-Wall", "-Wextra", "-Werror", "-pedantic"];

/** Whether the host has a compiler for C, and for C++. */
export const compilesC = spawnSync("gcc", ["--version"]).status === 0;
export const compilesCpp = spawnSync("g++", ["--version"]).status === 0;

export const COIL = 9;
export const LAMP = 13;

/** From when to when a pin was high, ms; the end is infinite where it still was. */
export type Span = readonly [from: number, to: number];

export interface HostRun {
  readonly coil: readonly Span[];
  readonly lamp: readonly Span[];
  /** Every line the host printed. */
  readonly lines: readonly string[];
}

export interface HostProgram {
  /** Edges of the input: time, ms, and level, rising. */
  readonly run: (
    edges: readonly (readonly [number, 0 | 1])[],
    length: number,
    start?: number,
    step?: number,
  ) => HostRun;
}

/** Compiles with warnings as errors, hands the program over, and cleans up after it. */
export function withProgram<T>(text: string, use: (program: HostProgram) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "swingstill-program-"));
  try {
    const source = join(folder, "timer.c");
    const binary = join(folder, "timer");
    writeFileSync(source, text);
    const files = [source, join(HERE, "host.c")];
    execFileSync("gcc", ["-std=c99", ...STRICT, "-O1", `-I${HERE}`, "-o", binary, ...files], {
      stdio: "pipe",
    });
    return use({ run: (edges, length, start = 0, step = 1) => runOnce(binary, edges, length, start, step) });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Whether the program is C++ as a sketch is; throws with the compiler's words if not. */
export function compileAsSketch(text: string): void {
  const flags = ["-x", "c++", "-std=c++11", ...STRICT, `-I${HERE}`, "-fsyntax-only", "-"];
  execFileSync("g++", flags, { input: text, stdio: ["pipe", "pipe", "pipe"] });
}

function runOnce(
  binary: string,
  edges: readonly (readonly [number, number])[],
  length: number,
  start: number,
  step: number,
): HostRun {
  const input = `${start} ${length} ${step}\n${edges.map(([time, level]) => `${time} ${level}`).join("\n")}\n`;
  const output = execFileSync(binary, { input, encoding: "utf8", maxBuffer: 1 << 28 });
  const lines = output.trim().split("\n");
  return { coil: spans(lines, COIL), lamp: spans(lines, LAMP), lines };
}

function spans(lines: readonly string[], pin: number): Span[] {
  const found: Span[] = [];
  let from: number | null = null;
  for (const line of lines) {
    const [what, time, which, level] = line.split(" ");
    if (what !== "level" || Number(which) !== pin) continue;
    if (level === "1") from = Number(time);
    else if (from !== null) {
      found.push([from, Number(time)]);
      from = null;
    }
  }
  return from === null ? found : [...found, [from, Number.POSITIVE_INFINITY]];
}
