import { describe, expect, test } from "vitest";
import {
  countOf,
  NO_TEXTS,
  readTrial,
  type TrialField,
  type TrialTexts,
} from "../../../renderer/state/trial-readings.ts";

const BENCH = { reach: 0.4, latch: true };
const read = (texts: Partial<TrialTexts>, bench = BENCH) => readTrial({ ...NO_TEXTS, ...texts }, bench);
const DEGREE = Math.PI / 180;

describe("what is written is read in the unit the tool shows, or the one it names", () => {
  test.each<[TrialField, string, number]>([
    ["letGo", "60", 60 * DEGREE],
    ["letGo", "0.5 rad", 0.5],
    ["passes", "13", 13],
    ["settle", "4.4", 4.4],
    ["still", "1.1 min", 66],
    ["rest", "3 mm", Math.asin(0.003 / 0.4)],
    ["rest", "1/8 in", Math.asin(0.003175 / 0.4)],
    ["rest", "-1.5", -1.5 * DEGREE],
    // Published conversions: 1 kgf = 9.80665 N, 1 oz = 28.349523125 g.
    ["push", "620 g", 0.62 * 9.80665],
    ["push", "22 oz", 22 * 0.028349523125 * 9.80665],
    ["push", "6.1 N", 6.1],
    ["hold", "10.2 s", 10.2],
    ["lowEnd", "0", 0],
    ["lowEnd", "10", 10],
    ["pullIn", "13.9", 13.9],
    ["pullIn", "900 mV", 0.9],
    ["room", "21 °C", 21],
    ["room", "-4 degC", -4],
    // 32 °F and 212 °F are 0 °C and 100 °C.
    ["coil", "212 °F", 100],
  ])("%s %s", (field, text, value) => {
    const { values, faults } = read({ [field]: text });
    expect(faults).toEqual({});
    expect(values[field]).toBeCloseTo(value, 12);
  });
});

describe("a wrong entry is explained with a right one", () => {
  test.each<[TrialField, string, RegExp]>([
    ["letGo", "wide", /given "wide", expected an angle, such as/],
    ["passes", "7.5", /whole number from 1/],
    ["passes", "0", /whole number from 1/],
    ["still", "-3", /more than 0/],
    ["rest", "1 m", /more than the flap is high/],
    ["rest", "3 cats", /"3 mm" or "1.5 deg"/],
    ["push", "620", /"620 g"/],
    ["push", "3 mm", /what the scale shows/],
    ["lowEnd", "11", /how many of 10 times/],
    ["lowEnd", "9.5", /0 to 10/],
    ["pullIn", "12 A", /expected a voltage/],
    ["coil", "48", /"48 °C" or "118 °F"/],
    ["room", "warm", /what the thermometer shows/],
  ])("%s %s", (field, text, words) => {
    const { values, faults } = read({ [field]: text });
    expect(values).toEqual({});
    expect(faults[field]).toMatch(words);
    expect(faults[field]).toMatch(/^[A-Z"].*\.$/);
  });
});

test("a fit takes what it can tell of, from the card's let-go unless another is written", () => {
  expect(countOf(read({}), 1, BENCH)).toBeNull();
  expect(countOf(read({ rest: "3 mm", push: "6 N", hold: "9" }), 1, BENCH)).toBeNull();
  expect(countOf(read({ still: "6", letGo: "30" }), 1, BENCH)).toEqual({
    releaseAngle: expect.closeTo(30 * DEGREE, 12),
    restTime: 6,
  });
  // With a latch and without: passes are counted as the card says, and the fit takes them so.
  for (const latch of [true, false]) {
    expect(countOf(read({ passes: "13" }), 1, { ...BENCH, latch })).toEqual({ releaseAngle: 1, passes: 13 });
  }
  expect(countOf(read({ settle: "4", still: "6" }), 1, BENCH)).toMatchObject({ settleTime: 4, restTime: 6 });
});
