import fc from "fast-check";
import { expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { formatQuantity } from "../../../core/quantity/format.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { fitSwing } from "../../../core/study/fit/fit.ts";
import { inUnits } from "../../../renderer/trial/fit-words.ts";
import { exampleText } from "../example.ts";

test("metric sentences stay as they are", () => {
  const sentence = "It stays at 4 mN m s/rad, as in the file.";
  expect(inUnits(sentence, "metric")).toBe(sentence);
});

test.each([
  // 1 ozf in is 7.0615518 mN m, 1 lbf in 112.98483 mN m (NIST SP 811, appendix B.8).
  ["It stays at 7.06 mN m, as in the file.", "It stays at 1 ozf in, as in the file."],
  ["takes 0.113 N m of friction", "takes 1 lbf in of friction"],
  ["with hinge.viscousDamping 14.1 mN m s/rad and more", "with hinge.viscousDamping 2 ozf in s/rad and more"],
  ["0 N m to 7.06 mN m", "0 ozf in to 1 ozf in"],
])("%s", (metric, inch) => {
  expect(inUnits(metric, "inch")).toBe(inch);
});

test("what is no torque and no damping is left alone", () => {
  for (const sentence of [
    "within 0.35° of 120 readings",
    "after 11.2 s",
    "by 1.4 %",
    "for 5 N m/rad",
    "a mass of 3 N",
  ])
    expect(inUnits(sentence, "inch")).toBe(sentence);
});

test("any torque and damping that core writes is written as the display does, to the digits it had", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-5, max: 5, noNaN: true }),
      fc.constantFrom("torque" as const, "angularDamping" as const),
      (value, dimension) => {
        const metric = formatQuantity(value, dimension, "metric", 3);
        const read = parseQuantity(metric, dimension);
        if (!read.ok) throw new Error(metric);
        const shown = inUnits(`a ${metric} b`, "inch").slice(2, -2);
        const back = parseQuantity(shown, dimension);
        if (!back.ok) throw new Error(`"${metric}" became "${shown}"`);
        expect(shown).toMatch(/(ozf|lbf) in/);
        // Two digits at least: within a twentieth.
        expect(Math.abs(back.value / read.value - 1)).toBeLessThan(0.051);
      },
    ),
  );
});

test("no sentence of a fit speaks newton metres to a person with inches", () => {
  const read = readDoor(exampleText("medium-dog"));
  if (!read.ok) throw new Error("the example does not read");
  const counts = [
    { releaseAngle: 1, restTime: 6, settleTime: 4 },
    { releaseAngle: 1, passes: 3, restTime: 60 },
    { releaseAngle: 1, restTime: 6, restAngle: 0.1 },
  ];
  const sentences = counts.flatMap((count) => {
    const fit = fitSwing(read.door, { kind: "count", count });
    return fit.ok ? [...fit.says, ...fit.refused.map(({ says }) => says)] : [fit.says];
  });
  expect(sentences.some((sentence) => /N m/.test(sentence))).toBe(true);
  for (const sentence of sentences) expect(inUnits(sentence, "inch")).not.toMatch(/\bm?N m\b/);
});
