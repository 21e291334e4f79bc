import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossFaults, latchCannotWork, latchFaults } from "../../../core/door/checks.ts";
import { setValue } from "../../../core/door/path.ts";
import { doorWith } from "./sample.ts";

const door = doorWith();

function changed(changes: readonly (readonly [string, number])[]) {
  return changes.reduce((before, [path, value]) => {
    const set = setValue(before, path, value);
    if (!set.ok) throw new Error(set.error.message);
    return set.door;
  }, door);
}

describe("checks between keys", () => {
  it("find nothing in a sound door", () => {
    expect(crossFaults(door)).toEqual([]);
    expect(latchCannotWork(door)).toBe(false);
    expect(latchCannotWork(doorWith(["latch", undefined]))).toBe(false);
  });

  it("reach the model's limits one by one", () => {
    const limits: [string, number, boolean][] = [
      ["latch.slotWidth", 0.0081, false],
      ["latch.slotWidth", 0.008, true],
      ["latch.slotWidth", 0.0201, true],
      ["latch.tipGap", 0.00201, true],
      ["latch.distanceFromHinge", 0.34, false],
      ["latch.distanceFromHinge", 0.3401, true],
      // Edge and bolt: (10 mm + 4 mm)/r_l reaches 1 at 14 mm.
      ["latch.distanceFromHinge", 0.0141, false],
      ["latch.distanceFromHinge", 0.014, true],
      ["latch.offset", 0.299, false],
      ["latch.offset", -0.3, true],
      ["latch.springForce", 0.03 * 9.80665 * 1.001, false],
      ["latch.springForce", 0.03 * 9.80665, true],
    ];
    for (const [path, value, fails] of limits)
      expect(latchCannotWork(changed([[path, value]])), `${path} ${value}`).toBe(fails);
  });

  it("say in words exactly what the fast check says", () => {
    // Evenly spread: doubles by their bits would hardly ever be of like size.
    const even = (min: number, max: number) =>
      fc.integer({ min: 0, max: 1e6 }).map((i) => min + (max - min) * (i / 1e6));
    // One key in five is drawn from far and wide, the others where latches work: about half of all have no fault.
    const size = (min: number, max: number, from: number, to: number) =>
      fc.oneof({ weight: 4, arbitrary: even(from, to) }, { weight: 1, arbitrary: even(min, max) });
    const sample = fc.tuple(
      size(0.001, 0.03, 0.004, 0.01),
      size(0.001, 0.03, 0.012, 0.018),
      size(0.001, 0.4, 0.2, 0.34),
      size(0, 0.01, 0, 0.002),
      size(0.001, 0.03, 0.01, 0.03),
      size(0, 1, 0.3, 1),
      size(-0.4, 0.4, -0.1, 0.1),
    );
    const paths = [
      "boltWidth",
      "slotWidth",
      "distanceFromHinge",
      "tipGap",
      "edgeHalfWidth",
      "springForce",
      "offset",
    ];
    let failing = 0;
    fc.assert(
      fc.property(sample, (values) => {
        const one = changed(values.map((value, i) => [`latch.${paths[i]}`, value] as const));
        const faults = latchFaults(one);
        expect(latchCannotWork(one)).toBe(faults.length > 0);
        if (faults.length > 0) failing++;
      }),
      { numRuns: 1000 },
    );
    expect(failing).toBeGreaterThan(250);
    expect(failing).toBeLessThan(750);
  });
});
