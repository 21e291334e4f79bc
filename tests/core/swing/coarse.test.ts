/** Swings by whole stretches against swings by fine steps: every reference door and every example, both ways. */
import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { compute } from "../../../core/review/compute.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { type Swing, SwingRun } from "../../../core/swing/swing.ts";
import { COARSE, type SwingSystem, swingSystem } from "../../../core/swing/system.ts";
import { Trace } from "../../../core/swing/trace.ts";
import { EXAMPLES, exampleDoor, REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { imbalance } from "./systems.ts";

const DOORS = [
  ...REFERENCE_DOORS.map((name) => [name, referenceDoor(name)] as const),
  ...EXAMPLES.map((name) => [name, exampleDoor(name)] as const),
];

function systems(door: Door) {
  const { system, body, governing } = compute(door);
  const coarse = swingSystem(door, body, system.magnets, system.capture, COARSE);
  return { fine: system, coarse, release: governing.release };
}

/** Settle times agree to a tenth of a millisecond, by far less than any input is known to. */
function agree(exact: Swing, quick: Swing): void {
  expect(quick.status).toBe(exact.status);
  expect(quick.centrePasses).toBe(exact.centrePasses);
  expect(quick.settleTime === null).toBe(exact.settleTime === null);
  if (exact.settleTime !== null)
    expect(Math.abs((quick.settleTime ?? 1e9) - exact.settleTime)).toBeLessThan(1e-4);
  if (exact.restTime !== null) expect(Math.abs((quick.restTime ?? 1e9) - exact.restTime)).toBeLessThan(1e-4);
  if (exact.restAngle !== null) expect(quick.restAngle).toBeCloseTo(exact.restAngle, 5);
  expect(Math.abs(imbalance(quick))).toBeLessThan(1e-5 * Math.max(1e-3, Math.abs(exact.ledger.initial)));
}

describe.each(DOORS)("%s", (_, door) => {
  const { fine, coarse, release } = systems(door);

  test.each([1, -1])("let go in direction %d it settles and rests at the same time", (direction) => {
    const exact = new SwingRun(new Motion(), new Trace());
    const quick = new SwingRun(new Motion(), new Trace());
    const one = exact.run(fine, direction * release.angle, direction * release.speed);
    const other = quick.run(coarse, direction * release.angle, direction * release.speed);
    agree(one, other);
    readsAlike(exact.trace, fine, quick.trace, coarse, one.endTime);
  });
});

/** Both traces read at moments that neither has a row for, before the tail end where a rest decides by a hair. */
function readsAlike(exact: Trace, fine: SwingSystem, quick: Trace, coarse: SwingSystem, end: number): void {
  const [a, b] = [0, 1].map(() => ({ time: 0, angle: 0, speed: 0 }));
  for (let i = 0; i < 97; i++) {
    const time = (end * (i + 0.5)) / 97;
    exact.at(fine, time, a);
    quick.at(coarse, time, b);
    expect(Math.abs(b.angle - a.angle)).toBeLessThan(1e-5 + 1e-4 * Math.abs(a.speed));
  }
}
