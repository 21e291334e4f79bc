/** The outcome of every hold at once against the relatch of each hold by itself. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outcomeStretches } from "../../../core/passage/outcomes.ts";
import { holdStart } from "../../../core/passage/passage.ts";
import { type Computed, compute, relatchAt } from "../../../core/review/compute.ts";
import { referenceDoor } from "../doors.ts";

function computed(name: string): Computed {
  return compute(referenceDoor(name));
}

function stretchesOf(door: Computed, step = 0.02) {
  const { latch, governing, system, trace, solenoid } = door;
  if (latch === null) throw new Error("no latch");
  const retriggers = door.door.timer?.retriggers ?? true;
  const longest = governing.passage.letGoTime + trace.endTime + 1;
  const source = {
    passage: governing.passage,
    system,
    trace,
    latch,
    retriggers,
    releaseTime: solenoid?.bolt?.releaseTime ?? 0,
  };
  return outcomeStretches(source, longest, step);
}

function direct(door: Computed, hold: number) {
  return relatchAt(door.door, door, door.governing, door.trace, hold, door.solenoid)?.outcome;
}

describe.each([
  "01-plain",
  "05-jamb-three-alternating",
  "10-wind-out",
  "13-wide-seal",
  "29-ride-then-caught",
])("%s", (name) => {
  const door = computed(name);
  const stretches = stretchesOf(door);

  test("covers every hold from none to the longest, each change a change", () => {
    expect(stretches[0].from).toBe(0);
    for (let i = 1; i < stretches.length; i++) {
      expect(stretches[i].from).toBe(stretches[i - 1].to);
      expect(stretches[i].to).toBeGreaterThan(stretches[i].from);
      expect(stretches[i].outcome).not.toBe(stretches[i - 1].outcome);
    }
  });

  test("agrees with the relatch of any hold, a millisecond about the changes apart", () => {
    const longest = stretches[stretches.length - 1].to;
    const changes = stretches.map(({ from }) => from);
    const hold = fc.double({ min: 0, max: longest, noNaN: true });
    const far = (h: number) => changes.every((change) => Math.abs(h - change) > 1.1e-3);
    fc.assert(
      fc.property(hold.filter(far), (h) => {
        const found = stretches.find(({ to }) => h < to) ?? stretches[stretches.length - 1];
        // Stretches shorter than the step between two equal outcomes may be missed, and nothing else.
        if (found.outcome === direct(door, h)) return;
        const finer = stretchesOf(door, 0.001).find(({ to }) => h < to);
        expect(finer?.outcome).toBe(direct(door, h));
        expect((finer?.to ?? 0) - (finer?.from ?? 0)).toBeLessThan(0.02);
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  test("changes lie within a millisecond of where the relatch changes", () => {
    for (let i = 1; i < stretches.length; i++) {
      const { from, outcome } = stretches[i];
      expect(direct(door, from)).toBe(outcome);
      expect(direct(door, from - 1e-3)).toBe(stretches[i - 1].outcome);
    }
  });
});

test("a plain door: under the animal until let-go, caught for good once settled", () => {
  const door = computed("01-plain");
  const stretches = stretchesOf(door);
  const { passage, swing } = door.governing;
  expect(stretches[0].outcome).toBe("under the animal");
  const letGo = passage.letGoTime - holdStart(passage, true);
  expect(stretches[0].to).toBeGreaterThan(letGo - 1e-9);
  expect(stretches[0].to).toBeLessThan(letGo + 1e-3);
  const last = stretches[stretches.length - 1];
  expect(last.outcome).toBe("caught");
  expect(last.from).toBeLessThanOrEqual(letGo + (swing.settleTime ?? 0) + 1e-3);
});
