import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { nudge } from "../../../renderer/state/nudge.ts";

describe("the step is a sensible one in the unit written", () => {
  test.each([
    ["39 cm", "40 cm", "38 cm"],
    ["6 mN m", "6.1 mN m", "5.9 mN m"],
    ["1.2 V", "1.3 V", "1.1 V"],
    ["470 ohm", "480 ohm", "460 ohm"],
    ["100 uF", "110 uF", "99 uF"],
    ["10 s", "11 s", "9 s"],
    ["0 deg", "1 deg", "-1 deg"],
    ["0.45", "0.46", "0.44"],
    ["9.9 N", "10.0 N", "9.8 N"],
    ["-1 deg", "-0.9 deg", "-1.1 deg"],
    ["1.204 kg/m^3", "1.205 kg/m^3", "1.203 kg/m^3"],
  ])("%s", (text, up, down) => {
    expect(nudge(text, 1)).toBe(up);
    expect(nudge(text, -1)).toBe(down);
  });
});

describe("inches go by sixteenths", () => {
  test.each([
    ["3/8 in", "7/16 in", "5/16 in"],
    ["12 in", "12 1/16 in", "11 15/16 in"],
    ["1 3/8 in", "1 7/16 in", "1 5/16 in"],
    ["1-3/8 in", "1 7/16 in", "1 5/16 in"],
    ['3/8"', '7/16"', '5/16"'],
    ["5/64 in", "3/32 in", "1/16 in"],
    ["15/16 in", "1 in", "7/8 in"],
    ["1/16 in", "1/8 in", "0 in"],
    ["1/3 ft", "2/3 ft", "0 ft"],
  ])("%s", (text, up, down) => {
    expect(nudge(text, 1)).toBe(up);
    expect(nudge(text, -1)).toBe(down);
  });
});

test("Shift goes far, Alt a little", () => {
  expect(nudge("39 cm", 1, "far")).toBe("49 cm");
  expect(nudge("39 cm", 1, "near")).toBe("39.1 cm");
  expect(nudge("3/8 in", 1, "far")).toBe("7/8 in");
  expect(nudge("3/8 in", 1, "near")).toBe("25/64 in");
});

test.each(["", "wide", "cm 3", "½ in", "3/0 in"])("what does not start with a number stays: %s", (text) => {
  expect(nudge(text, 1)).toBeNull();
});

test("up then down comes back, for decimals, and every nudge reads as the same kind of quantity", () => {
  const number = fc.integer({ min: 1, max: 99_999 }).map((n) => (n / 100).toFixed(2));
  fc.assert(
    fc.property(number, fc.constantFrom("cm", "in", "mm", "ft"), (value, unit) => {
      const text = `${value} ${unit}`;
      const up = nudge(text, 1);
      expect(up).not.toBeNull();
      expect(nudge(up ?? "", -1)).toBe(text);
      const before = parseQuantity(text, "length");
      const after = parseQuantity(up ?? "", "length");
      expect(before.ok && after.ok && after.value > before.value).toBe(true);
    }),
  );
});
