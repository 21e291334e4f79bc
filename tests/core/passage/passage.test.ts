import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Animal, Detection } from "../../../core/door/door.ts";
import {
  governing,
  holdEnd,
  holdNeeded,
  holdResult,
  holdStart,
  lastPulse,
  passage,
  releaseState,
} from "../../../core/passage/passage.ts";
import { si } from "../../../core/quantity/brands.ts";

const dog: Animal = {
  name: "",
  shoulderHeight: si(0.4),
  chestWidth: si(0.18),
  bodyLength: si(0.6),
  mass: si(15),
  speed: si(1),
  stepRatio: si(0.45),
  pushHeight: si(0.36),
  comfortablePush: si(14.7),
};
const detection: Detection = { range: si(3), farSideRange: si(0), pulseInterval: si(1) };
const STOP = (100 * Math.PI) / 180;
/** Hinge at 0.6 m, flap 0.4 m: let go at 60°, 0.9464 s of pass, 3 s of approach. */
const passed = passage(dog, detection, 0.6, 0.4, STOP);
const PASS = 0.6 + 0.4 * Math.sin(Math.PI / 3);

describe("a passage", () => {
  test("arrives after range over speed and lets go after the pass", () => {
    expect(passed.letGoAngle).toBeCloseTo(Math.PI / 3, 12);
    expect(passed.arrivalTime).toBe(3);
    expect(passed.passTime).toBeCloseTo(PASS, 12);
    expect(passed.letGoTime).toBeCloseTo(3 + PASS, 12);
    expect(passed.failures).toEqual([]);
  });

  test("counts its last pulse one interval before the arrival, with no credit behind the door", () => {
    expect(passed.lastPulse).toBe(2);
  });

  test("counts pulses behind the door up to the let-go, and none before the detection", () => {
    expect(lastPulse(4, 3, 1.5, 1, 1)).toBe(3.5);
    expect(lastPulse(4, 3, 9, 1, 1)).toBe(4);
    expect(lastPulse(4, 3, 0, 1, 5)).toBe(0);
  });

  test("keeps the let-go angle beyond the stop, where the swing starts at the stop", () => {
    const blocked = passage(dog, detection, 0.6, 0.4, Math.PI / 4);
    expect(blocked.passTime).toBe(passed.passTime);
    expect(releaseState(blocked.letGoAngle, { angle: null, speed: si(0) }, Math.PI / 4)).toEqual({
      angle: Math.PI / 4,
      speed: 0,
    });
  });
});

describe("the swing's release", () => {
  test("is the let-go at rest, or what the door's file puts in its place", () => {
    expect(releaseState(1, { angle: null, speed: si(0) }, STOP)).toEqual({ angle: 1, speed: 0 });
    expect(releaseState(1, { angle: si(0.5), speed: si(-2) }, STOP)).toEqual({ angle: 0.5, speed: -2 });
    expect(releaseState(1, { angle: null, speed: si(2) }, STOP)).toEqual({ angle: 1, speed: 2 });
    expect(releaseState(1, { angle: si(-3), speed: si(0) }, STOP).angle).toBe(-STOP);
  });
});

describe("the hold needed", () => {
  test("of a retriggered timer runs from the last counted pulse", () => {
    expect(holdNeeded(passed, 5, true, 1)).toBeCloseTo(5 + 3 + PASS - 2, 12);
    expect(holdStart(passed, true)).toBe(2);
  });

  test("is at least two pulse intervals", () => {
    const slow = passage(dog, { ...detection, pulseInterval: si(10) }, 0.6, 0.4, STOP);
    expect(holdNeeded(slow, 5, true, 10)).toBe(20);
  });

  test("of a one-trigger timer runs from the detection", () => {
    expect(holdNeeded(passed, 5, false, 1)).toBeCloseTo(5 + 3 + PASS, 12);
    expect(holdNeeded(passed, 5, false, 100)).toBeCloseTo(5 + 3 + PASS, 12);
  });

  test("does not exist for a flap that never settles", () => {
    expect(holdNeeded(passed, null, true, 1)).toBeNull();
  });

  test("just outlasts the swing: a hold as long as the need ends at the settle time", () => {
    for (const retriggers of [true, false]) {
      const need = holdNeeded(passed, 5, retriggers, 1) ?? Number.NaN;
      expect(holdEnd(passed, retriggers, need)).toBeCloseTo(5, 12);
    }
  });
});

describe("the animal that governs", () => {
  test("needs the longest hold, the first of equals", () => {
    expect(governing([3, 9, 9, 4])).toBe(1);
  });

  test("is one that no hold is enough for before any other", () => {
    expect(governing([3, null, 9, null])).toBe(1);
    expect(governing([null])).toBe(0);
    expect(governing([])).toBe(-1);
  });
});

describe("a timer against the need", () => {
  const need = 5 + 3 + PASS - 2;
  const timer = (nominal: number, factor = 0.76) => ({
    nominal,
    shortest: nominal * factor,
    retriggers: true,
  });

  test("must hold the required hold at its shortest: what to set, the margin included", () => {
    const result = holdResult(passed, 5, timer(12), 1, 0.2);
    expect(result.need).toBeCloseTo(need, 12);
    expect(result.required).toBeCloseTo(1.2 * need, 12);
    expect(result.setting).toBeCloseTo((1.2 * need) / 0.76, 12);
    const set = holdResult(passed, 5, timer((result.setting ?? 0) * (1 + 1e-12)), 1, 0.2);
    expect([set.tooShort, set.withinMargin]).toEqual([false, false]);
  });

  test("is too short below the need, and eats into the margin below the required", () => {
    expect(holdResult(passed, 5, timer(need / 0.76 - 0.01), 1, 0.2).tooShort).toBe(true);
    const close = holdResult(passed, 5, timer(need / 0.76 + 0.01), 1, 0.2);
    expect([close.tooShort, close.withinMargin]).toEqual([false, true]);
  });

  test("of one trigger lets the bolt rise under the animal below the let-go", () => {
    const once = (nominal: number) =>
      holdResult(passed, 0, { nominal, shortest: nominal, retriggers: false }, 1, 0);
    expect(once(3.9).underAnimal).toBe(true);
    expect(once(4).underAnimal).toBe(false);
  });

  test("left out of the door's file leaves the need of a retriggered one, unjudged and without a setting", () => {
    const none = holdResult(passed, 5, null, 1, 0.2);
    expect(none.required).toBeCloseTo(1.2 * need, 12);
    expect([none.setting, none.tooShort, none.withinMargin, none.underAnimal]).toEqual([
      null,
      false,
      false,
      false,
    ]);
  });

  test("is never enough for a flap that never settles, and can't be set if it may not hold at all", () => {
    const never = holdResult(passed, null, timer(12), 1, 0.2);
    expect(never).toEqual({
      need: null,
      required: null,
      setting: null,
      tooShort: true,
      withinMargin: false,
      underAnimal: false,
    });
    expect(holdResult(passed, 5, timer(12, 0), 1, 0.2).setting).toBeNull();
  });
});

test("a slower flap never needs less, and a one-trigger timer never less than a retriggered one beyond two pulses", () => {
  const positive = (max: number) => fc.double({ min: 0.05, max, noNaN: true });
  fc.assert(
    fc.property(positive(60), positive(8), positive(3), positive(5), (settle, range, speed, interval) => {
      const seen = {
        range: si<"m">(range),
        farSideRange: si<"m">(range / 2),
        pulseInterval: si<"s">(interval),
      };
      const one = passage({ ...dog, speed: si(speed) }, seen, 0.6, 0.4, STOP);
      const again = holdNeeded(one, settle, true, interval) ?? Number.NaN;
      const once = holdNeeded(one, settle, false, interval) ?? Number.NaN;
      expect(holdNeeded(one, settle + 1, true, interval)).toBeGreaterThanOrEqual(again);
      expect(again).toBeLessThanOrEqual(Math.max(once, 2 * interval));
      expect(one.lastPulse).toBeLessThanOrEqual(one.letGoTime);
      expect(one.lastPulse).toBeGreaterThanOrEqual(0);
    }),
  );
});
