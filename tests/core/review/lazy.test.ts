// A door computed lazily tells what the door computed at once tells, to the last bit, in whatever order it is asked.
import { describe, expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import { computeLazily, swingRun } from "../../../core/review/lazy.ts";
import { RESULTS } from "../../../core/review/results.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";

describe("computeLazily", () => {
  const run = swingRun();

  test.each(REFERENCE_DOORS)("%s: every result and the relatch", (file) => {
    const door = referenceDoor(file);
    const whole = compute(door);
    const lazy = computeLazily(door, whole, run);
    for (const { name, value } of [...RESULTS].reverse())
      expect([name, value(lazy)]).toEqual([name, value(whole)]);
    expect(lazy.relatch).toEqual(whole.relatch);
    expect(lazy.hold).toEqual(whole.hold);
    expect(lazy.restsOutside).toEqual(whole.restsOutside);
    expect(lazy.pushes).toEqual(whole.pushes);
    expect(lazy.crossings.map((c) => c.need)).toEqual(whole.crossings.map((c) => c.need));
  });

  test("the trace is the governing swing's, whichever crossing was read before", () => {
    const door = referenceDoor("20-family");
    const whole = compute(door);
    const lazy = computeLazily(door, whole, run);
    for (const crossing of [...lazy.crossings].reverse())
      expect(crossing.swing.endTime).toBeGreaterThanOrEqual(0);
    expect(lazy.trace.endTime).toBe(whole.trace.endTime);
    expect(lazy.trace.count).toBe(whole.trace.count);
    expect(lazy.relatch).toEqual(whole.relatch);
  });

  test("only what is read is computed", () => {
    const door = referenceDoor("04-jamb-two-like");
    const known = {
      door,
      get centring(): never {
        throw new Error("the magnets were asked for");
      },
    };
    const lazy = computeLazily(door, known, run);
    expect(lazy.body.mass).toBeGreaterThan(0);
    expect(lazy.timer?.nominal).toBe(15);
    expect(() => lazy.governing.swing).toThrow("the magnets were asked for");
  });
});
