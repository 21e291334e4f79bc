/** The hold's end by key and by pointer. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holdAfterKey, holdAtPointer, pointerStep, roundedTo } from "../../../renderer/strip/hold-keys.ts";

const limits = { least: 0, most: 30 };

describe("keys", () => {
  test.each([
    ["ArrowRight", false, 12.6],
    ["ArrowUp", false, 12.6],
    ["ArrowLeft", false, 12.4],
    ["ArrowDown", false, 12.4],
    ["ArrowRight", true, 13.5],
    ["ArrowLeft", true, 11.5],
    ["PageUp", false, 13.5],
    ["PageDown", false, 11.5],
    ["PageUp", true, 13.5],
    ["Home", false, 0],
    ["End", false, 30],
  ])("%s (Shift: %s) from 12.5 s leads to %d s", (key, shift, hold) => {
    expect(holdAfterKey(12.5, key, shift, limits)).toBe(hold);
  });

  test("other keys move nothing", () => {
    for (const key of ["a", "Tab", "Enter", " "]) expect(holdAfterKey(12.5, key, false, limits)).toBeNull();
  });

  test("stays within the limits", () => {
    expect(holdAfterKey(30, "ArrowRight", true, limits)).toBe(30);
    expect(holdAfterKey(0.05, "ArrowLeft", false, limits)).toBe(0);
  });

  test("an odd hold goes to whole tenths", () => {
    expect(holdAfterKey(12.437, "ArrowRight", false, limits)).toBe(12.5);
    expect(holdAfterKey(12.437, "ArrowLeft", false, limits)).toBe(12.3);
  });

  test("right and left again is where it was, for any tenth", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 299 }), (tenths) => {
        const hold = roundedTo(tenths / 10, 0.1);
        const there = holdAfterKey(hold, "ArrowRight", false, limits) ?? 0;
        expect(holdAfterKey(there, "ArrowLeft", false, limits)).toBe(hold);
      }),
    );
  });
});

describe("pointer", () => {
  test("whole steps within the limits, short to write", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 40, noNaN: true }),
        fc.double({ min: 1e-4, max: 1, noNaN: true }),
        (raw, spp) => {
          const step = pointerStep(spp);
          const hold = holdAtPointer(raw, step, limits);
          expect(hold).toBeGreaterThanOrEqual(0);
          expect(hold).toBeLessThanOrEqual(30);
          expect(String(hold).length).toBeLessThanOrEqual(5);
          if (raw > 0 && raw < 30) expect(Math.abs(hold - raw)).toBeLessThanOrEqual(step / 2 + 1e-9);
        },
      ),
    );
  });

  test("never finer than a hundredth of a second, never finer than a pixel", () => {
    expect(pointerStep(0.0001)).toBeCloseTo(0.01, 12);
    expect(pointerStep(0.014)).toBeCloseTo(0.02, 12);
  });
});
