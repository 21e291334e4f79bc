import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { studyInputs } from "../../../core/study/inputs.ts";
import { spreadValue } from "../../../core/study/spread.ts";
import { referenceDoor } from "../doors.ts";
import { withTolerances } from "./doors.ts";

const DEGREE = Math.PI / 180;

/** Half of the ± 2 σ width, in the input's own unit. */
function halfWidths(door: Door): Record<string, number> {
  return Object.fromEntries(
    studyInputs(door).inputs.map(({ key, spread }) => [key, (spread.high - spread.low) / 2]),
  );
}

describe("the inputs a study spreads by itself", () => {
  const door = referenceDoor("20-family");
  const widths = halfWidths(door);

  test("are the model's list, three animals and the timer's parts included", () => {
    expect(Object.keys(widths)).toEqual([
      "hinge.frictionTorque",
      "hinge.viscousDamping",
      "flap.density",
      "latch.boltMass",
      "magnets.gap",
      "magnets.remanence",
      "latch.boltWidth",
      "latch.slotWidth",
      "latch.offset",
      "opening.outOfPlumb",
      "latch.springForce",
      "release.angle",
      "animals.0.speed",
      "animals.1.speed",
      "animals.2.speed",
      "air.swingFactor",
      "timer.resistor",
      "timer.capacitor",
    ]);
  });

  test("spread as wide as the model says", () => {
    expect(widths["hinge.frictionTorque"]).toBeCloseTo(0.4 * 2.5e-3, 12);
    expect(widths["hinge.viscousDamping"]).toBeCloseTo(0.5 * 1.5e-3, 12);
    expect(widths["flap.density"]).toBeCloseTo(0.05 * 1400, 9);
    expect(widths["magnets.gap"]).toBeCloseTo(0.5e-3, 12);
    expect(widths["magnets.remanence"]).toBeCloseTo(0.04 * 1.25, 12);
    expect(widths["latch.slotWidth"]).toBeCloseTo(0.2e-3, 12);
    expect(widths["latch.offset"]).toBeCloseTo(1e-3, 12);
    expect(widths["opening.outOfPlumb"]).toBeCloseTo(0.5 * DEGREE, 12);
    expect(widths["latch.springForce"]).toBeCloseTo(0.15 * 1.1, 12);
    expect(widths["release.angle"]).toBeCloseTo(0.1, 12);
    expect(widths["animals.1.speed"]).toBeCloseTo(0.3 * 1.1, 12);
    expect(widths["timer.resistor"]).toBeCloseTo(0.05, 12);
    expect(widths["timer.capacitor"]).toBeCloseTo(0.2, 12);
  });

  test("draw the air's swing factor evenly from 1 to 3", () => {
    const factor = studyInputs(door).inputs.find(({ key }) => key === "air.swingFactor");
    if (factor === undefined) throw new Error("no swing factor");
    expect(factor.spread.shape).toBe("uniform");
    expect([spreadValue(factor.spread, 1e-12), spreadValue(factor.spread, 0.5)]).toEqual([
      expect.closeTo(1, 9),
      expect.closeTo(2, 9),
    ]);
  });

  test("each say why", () => {
    for (const { reason, source } of studyInputs(door).inputs) {
      expect(reason.length).toBeGreaterThan(5);
      expect(["assumption", "maker"]).toContain(source);
    }
  });

  test("leave out what the door has not", () => {
    const keys = Object.keys(halfWidths(referenceDoor("36-no-timer")));
    expect(keys.some((key) => key.startsWith("timer."))).toBe(false);
    expect(keys).not.toContain("seal.frictionTorque");
    expect(keys).not.toContain("magnets.gap");
  });
});

describe("the file's tolerances", () => {
  const door = referenceDoor("20-family");

  test("replace a default, remove one, and add to them", () => {
    const changed = withTolerances(door, {
      "hinge.frictionTorque": { shape: "normal", twoSigma: 0.1, relative: true },
      "flap.density": { shape: "normal", twoSigma: 0, relative: true },
      "flap.height": { shape: "uniform", low: -1e-3, high: 1e-3, relative: false },
      "release.angle": { shape: "normal", twoSigma: 5 * DEGREE, relative: false },
    });
    const widths = halfWidths(changed);
    expect(widths["hinge.frictionTorque"]).toBeCloseTo(0.1 * 2.5e-3, 12);
    expect(widths["flap.density"]).toBeUndefined();
    expect(widths["flap.height"]).toBeCloseTo(1e-3, 12);
    expect(widths["release.angle"]).toBeCloseTo(5 * DEGREE, 12);
    const input = studyInputs(changed).inputs.find(({ key }) => key === "release.angle");
    expect(input?.target).toBe("let-go offset");
    expect(input?.source).toBe("file");
  });

  test("that cannot be used are named with the reason", () => {
    const none = { shape: "normal", twoSigma: 0.1, relative: true } as const;
    const { unused } = studyInputs(
      withTolerances(door, {
        "timer.resistorTolerance": none,
        "driver.onResistance": none,
        "flap.density": none,
      }),
    );
    expect(unused.map(({ key }) => key)).toEqual(["timer.resistorTolerance", "driver.onResistance"]);
  });

  test("without any physical value are faults", () => {
    const { faults } = studyInputs(
      withTolerances(door, { "flap.thickness": { shape: "uniform", low: -2, high: -1.5, relative: true } }),
    );
    expect(faults.map(({ path }) => path)).toEqual(["study.tolerances.flap.thickness"]);
  });
});
