// Fitted values as edits of the door file: its units, digits by the error, tolerances on request, and read again.
import { describe, expect, test } from "vitest";
import { readRoot, writeDoor } from "../../../../core/door/index.ts";
import { fitSwing } from "../../../../core/study/fit/fit.ts";
import type { FitDone, FittedValue } from "../../../../core/study/fit/fit-types.ts";
import { fitEdits, withFitEdits } from "../../../../core/study/fit/write-back.ts";
import { opened } from "../../doors.ts";
import { BARE, DEGREE, done, door, every, filmed, noise, TRUTH } from "./helpers.ts";

const fileOf = (data: unknown) => opened(data).file;

function fitWith(values: readonly Partial<FittedValue>[]): FitDone {
  const full = values.map((value) => ({
    low: 0,
    high: 1,
    unit: "",
    atLimit: false,
    before: 0,
    given: [],
    ...value,
  }));
  return { ok: true, values: full } as unknown as FitDone;
}

const edits = (value: Partial<FittedValue>, data: unknown = BARE, tolerances = false) =>
  fitEdits(fitWith([value]), fileOf(data), { tolerances }).map(({ text }) => text);

describe("texts", () => {
  test.each([
    [2.4312e-3, 0.9e-4, "2.43 mN m"],
    [2.4312e-3, 4.6e-4, "2.4 mN m"],
    [2.4312e-3, 1.4e-6, "2.4312 mN m"],
    [2.4312e-3, 3.0e-3, "2.4 mN m"],
    [0, 2e-4, "0 mN m"],
  ])("%f ± %f N m is written %s", (value, error, text) => {
    expect(edits({ key: "hinge.frictionTorque", value, error })).toEqual([text]);
  });

  test("in the unit that the file uses, a builder's where it leaves the key out", () => {
    const inches = { ...BARE, hinge: { frictionTorque: "0.3 ozf in", viscousDamping: "1e-3 N m s/rad" } };
    // 1 ozf in = 7.06155 mN m
    expect(edits({ key: "hinge.frictionTorque", value: 3.5308e-3, error: 0.08e-3 }, inches)).toEqual([
      "0.500 ozf in",
    ]);
    expect(edits({ key: "hinge.viscousDamping", value: 1.52e-3, error: 4e-5 }, inches)).toEqual([
      "0.00152 N m s/rad",
    ]);
    expect(edits({ key: "seal.frictionTorque", value: 3.1e-3, error: 2e-4 })).toEqual(["3.10 mN m"]);
    expect(edits({ key: "opening.outOfPlumb", value: -0.0123, error: 1e-3 })[0]).toMatch(/^-0\.70 /);
    expect(edits({ key: "air.swingFactor", value: 1.7777, error: 0.21 })).toEqual(["1.78"]);
  });

  test("tolerances are ± two standard errors in the same unit", () => {
    expect(edits({ key: "hinge.frictionTorque", value: 2.43e-3, error: 9e-5 }, BARE, true)).toEqual([
      "2.43 mN m",
      "0.18 mN m",
    ]);
    expect(edits({ key: "air.swingFactor", value: 1.8, error: 0.12 }, BARE, true)).toEqual(["1.80", "0.24"]);
  });
});

test("a fit written into a copy of its file reads as the door that swings like the measured one", () => {
  const file = fileOf(BARE);
  const fit = done(fitSwing(door(), filmed(door(), TRUTH, every(0.03, 12), noise(1, 0.2 * DEGREE))));
  const changed = withFitEdits(file, fitEdits(fit, file, { tolerances: true }));
  const read = readRoot(changed);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  for (const { key, value, error } of fit.values) {
    const [section, name] = key.split(".") as ["hinge", "frictionTorque"];
    expect(Math.abs(read.door[section][name] - value)).toBeLessThanOrEqual(0.5 * error);
    const tolerance = read.door.study.tolerances.get(key);
    expect(tolerance && "twoSigma" in tolerance ? tolerance.twoSigma / (2 * error) : 0).toBeCloseTo(1, 0);
  }
  expect(file.text).toBe(JSON.stringify(BARE));
  expect(writeDoor(changed)).toContain('"study"');
});
