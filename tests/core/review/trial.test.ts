/** The machinery a suggestion is tried with: edits, the short way of computing again, the friction reserve. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Computed, compute } from "../../../core/review/compute.ts";
import { edgeReserve, narrowed, reserveElsewhere } from "../../../core/review/findings-reserve.ts";
import { swingRun } from "../../../core/review/lazy.ts";
import { resultValues } from "../../../core/review/results.ts";
import { applyEdits, editValue } from "../../../core/review/suggest-apply.ts";
import { recompute } from "../../../core/review/suggest-recompute.ts";
import { restSets, setsOutside } from "../../../core/swing/rest.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { goodWith } from "./doors.ts";

const good = goodWith({});

describe("edits", () => {
  test("numbers, choices and flags as the file has them", () => {
    const door = applyEdits(good, [
      { path: "magnets.gap", text: "9/64 in" },
      { path: "latch.frictionCoefficient", text: "0.1" },
      { path: "driver.kind", text: "mosfet" },
      { path: "driver.onResistance", text: "100 mΩ" },
      { path: "timer.retriggers", text: "true" },
      { path: "timer.resistor", text: "47 kΩ" },
      { path: "timer.capacitor", text: "10 µF" },
    ]);
    expect(door?.magnets?.gap).toBeCloseTo((9 / 64) * 0.0254, 12);
    expect(door?.latch?.frictionCoefficient).toBe(0.1);
    expect(door?.driver).toMatchObject({ kind: "mosfet", onResistance: 0.1 });
    expect(door?.timer).toMatchObject({ retriggers: true, resistor: 47000, capacitor: 1e-5 });
    expect(good.driver?.kind).toBe("darlington");
  });

  test.each([
    ["a wrong dimension", "magnets.gap", "3 s"],
    ["no number", "magnets.gap", "narrow"],
    ["out of range", "opening.outOfPlumb", "80 deg"],
    ["a part of a count", "magnets.perSide", "1.5"],
    ["no such option", "driver.kind", "relay"],
    ["no such key", "magnets.colour", "red"],
    ["a slot no wider than the bolt", "latch.slotWidth", "8 mm"],
  ])("refused: %s", (_, path, text) => {
    expect(applyEdits(good, [{ path, text }])).toBeNull();
  });

  test("a section the door lacks cannot be edited", () => {
    expect(applyEdits(goodWith({ magnets: undefined }), [{ path: "magnets.gap", text: "3 mm" }])).toBeNull();
    expect(applyEdits(goodWith({ driver: undefined }), [{ path: "driver.clamp", text: "diode" }])).toBeNull();
    expect(editValue({ path: "driver.kind", text: "mosfet" })).toBeNull();
  });
});

/** Edits that leave the swing alone, some of them the latch's own, and some that do not. */
const EDITS = [
  ["timer.holdTime", "9.5 s"],
  ["latch.springForce", "0.9 N"],
  ["latch.frictionCoefficient", "0.3"],
  ["latch.tipGap", "1 mm"],
  ["supply.voltage", "30 V"],
  ["driver.baseResistor", "2.2 kΩ"],
  ["latch.slotWidth", "15 mm"],
  ["latch.offset", "0.5 mm"],
  ["timer.retriggers", "false"],
  ["damper.coefficient", "20 mN m s/rad"],
  ["damper.withinAngle", "30 deg"],
  ["hinge.frictionTorque", "3 mN m"],
  ["magnets.gap", "4 mm"],
  ["detection.range", "2 m"],
] as const;

const BASES: readonly Computed[] = [
  compute(good),
  ...["09-out-of-plumb", "20-family"].map((name) => compute(referenceDoor(name))),
];

test.each(EDITS)("the short way to the door with %s at %s gives what the long way gives", (path, text) => {
  for (const base of BASES) {
    const door = applyEdits(base.door, [{ path, text }]);
    if (door === null) continue;
    const short = recompute(door, base, swingRun());
    const long = compute(door);
    expect(resultValues(short)).toEqual(resultValues(long));
    expect(short.relatch).toEqual(long.relatch);
    expect(short.hold).toEqual(long.hold);
  }
});

test.each(REFERENCE_DOORS)("the friction reserve agrees with the rest sets: %s", (name) => {
  const computed = compute(referenceDoor(name));
  const { latch, system } = computed;
  if (latch === null || system.friction.every((f) => f === 0)) return;
  for (const factor of [0.3, 0.7, 1, 1.4, 2, 5, 20]) {
    const rubbed = { ...system, friction: system.friction.map((f) => f * factor) };
    const outside = setsOutside(restSets(rubbed), latch.centre, latch.capture);
    // A stop pressed against is a resting place whatever the friction is.
    const held = outside.filter(({ low, high }) => low !== high);
    const edge = edgeReserve(system, latch.centre, latch.capture);
    const { least } = reserveElsewhere(system, latch.centre, latch.capture);
    expect(held.length > 0, `factor ${factor}`).toBe(Math.min(edge, least) < factor);
  }
});

test("halving keeps to the side that passes and ends next to the one that does not", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -50, max: 50, noNaN: true }),
      fc.double({ min: 0.1, max: 40, noNaN: true }),
      (limit, width) => {
        const passes = (x: number) => x <= limit;
        const found = narrowed(passes, limit - width, limit + width);
        expect(passes(found)).toBe(true);
        expect(limit - found).toBeLessThan(1e-7);
      },
    ),
  );
  expect(narrowed(() => true, 1, 2)).toBe(2);
});

test("halving that ends where both ends round alike rounds to what it would have", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0.1, max: 40, noNaN: true }),
      (limit, width) => {
        let count = 0;
        const passes = (x: number) => {
          count++;
          return x >= limit;
        };
        const up = (x: number) => Math.ceil(x * 10 - 1e-9);
        const whole = narrowed(passes, limit + width, limit - width);
        const all = count;
        const early = narrowed(passes, limit + width, limit - width, (a, b) => up(a) === up(b));
        expect(up(early)).toBe(up(whole));
        expect(count - all).toBeLessThanOrEqual(all);
      },
    ),
  );
});
