/** The same swing in C (`c/swing.c`, gcc −O3), where gcc is present: built into a folder of its own, asked through pipes. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { SwingSystem } from "../../core/swing/system.ts";
import type { Timed } from "./timing.ts";

/** Settle time, s, and best time per swing, as the program prints them. */
export interface AskedOfC {
  readonly settleTime: number;
  readonly timed: Timed;
}

export type CSwing = (system: SwingSystem, release: number, tolerance: number, budget: number) => AskedOfC;

/** The numbers that the program reads, in its order. Calm air only. */
function input(system: SwingSystem, release: number, tolerance: number, budget: number): string {
  const { magnets, capture } = system;
  const table = magnets ?? { fineWidth: 1, fineCells: 0, coarseWidth: 1, coarseCells: 0, torque: [] };
  return [
    ...[system.inertia, system.weightMoment, system.plumb, system.air.stillDrag, system.staticRatio],
    ...[system.stopAngle, system.restitution, capture?.centre ?? 0, capture?.half ?? 0],
    ...[system.damping.length, ...system.cuts, ...system.damping, ...system.friction],
    ...[table.fineWidth, table.fineCells, table.coarseWidth, table.coarseCells, ...table.torque],
    ...[release, tolerance, budget],
  ].join(" ");
}

/** Builds the program and hands it to `use`; returns false where there is no gcc. */
export function withCSwing(use: (ask: CSwing) => void): boolean {
  const folder = mkdtempSync(join(tmpdir(), "swingstill-bench-"));
  try {
    const program = join(folder, "swing");
    const built = spawnSync("gcc", ["-O3", "-o", program, "tests/bench/c/swing.c", "-lm"]);
    if (built.status !== 0) return false;
    use((system, release, tolerance, budget) => {
      const ran = spawnSync(program, { input: input(system, release, tolerance, budget), encoding: "utf8" });
      if (ran.status !== 0) throw new Error(`the swing in C ended with status ${ran.status}`);
      const [settleTime, nanoseconds] = ran.stdout.split(" ").map(Number);
      return { settleTime, timed: { seconds: nanoseconds * 1e-9, calls: 20 } };
    });
    return true;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
