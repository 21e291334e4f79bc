import { describe, expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import { decidingAnimal, explain } from "../../../core/review/explain.ts";
import { RESULTS, resultValues } from "../../../core/review/results.ts";
import { figureText, words } from "../../../core/review/words.ts";
import { doorOf, opened, REFERENCE_DOORS, referenceDoor, referenceJson } from "../doors.ts";
import { GOOD, goodWith, withChanges } from "./doors.ts";

const METRIC = words("metric");
const INCH = words("inch");

test.each(REFERENCE_DOORS)("every result explains itself, the figures being the review's own: %s", (name) => {
  const { door, file } = opened(referenceJson(name));
  const computed = compute(door);
  const values = resultValues(computed);
  for (const { name: result, unit } of RESULTS) {
    for (const w of [METRIC, INCH]) {
      const told = explain(computed, result, w, file);
      expect(told.value).toBe(values[result].value);
      expect(told.text).toBe(figureText(values[result].value, unit, w));
      for (const input of told.inputs) {
        if (input.kind === "result") expect(input.value).toBe(values[input.name].value);
        expect(input.title.length).toBeGreaterThan(3);
        expect(input.text).not.toMatch(/NaN|undefined|null|\[object|^$/);
      }
      expect(`${told.title}${told.formula}${told.source}`).not.toMatch(/undefined|NaN/);
    }
  }
});

describe("inputs", () => {
  const data = withChanges(GOOD, {
    "latch.springForce": "2.2 ozf",
    "flap.extraMasses": [{ name: "strike", mass: "3 oz", distanceFromHinge: "10 in" }],
  });
  const { door, file } = opened(data);
  const computed = compute(door);
  const input = (result: string, key: string, given = true) =>
    explain(computed, result, METRIC, given ? file : null).inputs.find((one) => one.name === key);

  test("a key says what the file says, with its SI value", () => {
    expect(input("latch.boltRiseTime", "latch.springForce")).toMatchObject({
      text: "2.2 ozf",
      unit: "N",
      fromFile: true,
    });
    expect(input("latch.boltRiseTime", "latch.springForce")?.value).toBeCloseTo(2.2 * 0.27801385, 7);
  });

  test("without the file, and for a default, in the reader's units", () => {
    expect(input("latch.boltRiseTime", "latch.springForce", false)).toMatchObject({
      text: "0.6116 N",
      fromFile: false,
    });
    expect(input("solenoid.current", "driver.dropVoltage")).toMatchObject({
      text: "1.2 V",
      value: 1.2,
      fromFile: false,
    });
  });

  test("choices, flags, lists and what is not there", () => {
    expect(input("magnets.peakTorque", "magnets.arrangement")).toMatchObject({ text: "jamb", value: "jamb" });
    expect(input("hold.required", "timer.retriggers")).toMatchObject({ text: "yes", value: true });
    expect(input("flap.mass", "flap.extraMasses")).toMatchObject({
      text: "strike: 3 oz at 10 in",
      value: null,
    });
    expect(input("flap.mass", "flap.extraMasses", false)?.text).toBe(
      "strike: 85.05 g at 25.4 cm".replace("85.05", "85"),
    );
    expect(input("solenoid.releaseTime", "solenoid.pull")?.text).toBe("0 mm: 7 N, 2 mm: 4 N, 6 mm: 2.6 N");
    expect(input("solenoid.current", "driver.onResistance")).toMatchObject({ text: "none", value: null });
  });

  test("another result says its value", () => {
    expect(input("hold.setting", "hold.required")).toMatchObject({
      kind: "result",
      unit: "s",
      value: computed.holdRequired,
    });
  });
});

test("keys of an animal are those of the one the result is of", () => {
  const family = compute(referenceDoor("20-family"));
  const names = explain(family, "push.energy", METRIC).inputs.map((input) => input.name);
  expect(names).toContain(`animals.${family.hardestPush}.speed`);
  const wide = compute(
    goodWith({
      animals: [
        { name: "Tall", shoulderHeight: "26 cm", chestWidth: "10 cm", bodyLength: "40 cm", mass: "4 kg" },
        { name: "Wide", shoulderHeight: "20 cm", chestWidth: "18 cm", bodyLength: "40 cm", mass: "9 kg" },
      ],
    }),
  );
  expect(
    ["fit.heightSpare", "fit.widthSpare", "fit.stepSpare", "push.limit"].map((name) =>
      decidingAnimal(name, wide),
    ),
  ).toEqual([0, 1, 1, 0]);
  expect(explain(wide, "fit.widthSpare", METRIC).inputs.map((input) => input.name)).toContain(
    "animals.1.chestWidth",
  );
});

test("an unknown name is refused by name", () => {
  const computed = compute(doorOf(GOOD));
  expect(() => explain(computed, "swing.settletime", METRIC)).toThrow(
    /must be one of .*swing\.settleTime.*; received "swing\.settletime"/,
  );
});
