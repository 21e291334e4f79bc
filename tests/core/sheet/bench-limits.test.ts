/** The bench's limits: against the nominal door, against what is known of the samples, and against each other. */
import { describe, expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import { benchLimits, handAngle } from "../../../core/sheet/bench-limits.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { SwingRun } from "../../../core/swing/swing.ts";
import { Trace } from "../../../core/swing/trace.ts";
import { exampleJson } from "../doors.ts";
import { drawnOf, variant } from "./sample.ts";

const computedOf = (json: unknown) => compute(drawnOf(json).door);

/** Every tolerance of the door at nothing: all samples are the door itself. */
const NONE = Object.fromEntries(
  [
    "hinge.frictionTorque",
    "seal.frictionTorque",
    "hinge.viscousDamping",
    "damper.coefficient",
    "flap.density",
    "flap.extraMasses.0.mass",
    "latch.boltMass",
    "magnets.remanence",
    "latch.springForce",
    "release.angle",
    "animals.0.speed",
  ].map((key) => [key, "0 %"]),
);
const STILL = {
  ...NONE,
  "magnets.gap": "0 mm",
  "latch.boltWidth": "0 mm",
  "latch.slotWidth": "0 mm",
  "latch.offset": "0 mm",
  "opening.outOfPlumb": "0 deg",
  "air.swingFactor": { low: 0, high: 0, shape: "uniform" },
};

describe("hand's angle", () => {
  const degree = Math.PI / 180;
  test("60°, or the greatest whole step of 5° that stays 5° short of the stops", () => {
    expect(handAngle(100 * degree)).toBeCloseTo(60 * degree, 12);
    expect(handAngle(60 * degree)).toBeCloseTo(55 * degree, 12);
    expect(handAngle(48 * degree)).toBeCloseTo(40 * degree, 12);
    expect(handAngle(6 * degree)).toBeCloseTo(3 * degree, 12);
  });
});

describe("limits", () => {
  const dog = computedOf(exampleJson("medium-dog"));

  test("the nominal swing is the computed door's own, let go at that angle", () => {
    const limits = benchLimits(dog, 5);
    const swing = new SwingRun(new Motion(), new Trace()).run(dog.system, limits.letGo, 0);
    expect(limits.nominal).toEqual({
      settle: swing.settleTime,
      still: swing.restTime,
      passes: swing.centrePasses,
    });
  });

  test("without any tolerance every sample is the door itself", () => {
    const computed = computedOf(variant({ study: { tolerances: STILL } }));
    const { nominal, sampled } = benchLimits(computed, 10);
    for (const share of ["p5", "p50", "p95"] as const) {
      // The study's magnet tables are interpolated between gaps; the review's is integrated at its own.
      expect(sampled?.settle[share] ?? 0).toBeCloseTo(nominal.settle ?? 0, 3);
      expect(sampled?.still[share] ?? 0).toBeCloseTo(nominal.still ?? 0, 3);
      expect(sampled?.passes[share]).toBe(nominal.passes);
      const force = computed.pushes[computed.hardestPush].force ?? 0;
      expect(Math.abs((sampled?.push[share] ?? 0) / force - 1)).toBeLessThan(1e-4);
      expect(sampled?.pullIn?.[share] ?? 0).toBeCloseTo(computed.solenoid?.pullInVoltage ?? 0, 9);
    }
    expect([sampled?.restsOutside, sampled?.cannotWork, sampled?.pullsAtLowEnd]).toEqual([0, 0, 1]);
  });

  test("the nominal door lies within the limits of its samples, and the limits in order", () => {
    const { nominal, sampled } = benchLimits(dog, 150);
    for (const [spread, value] of [
      [sampled?.passes, nominal.passes],
      [sampled?.settle, nominal.settle],
      [sampled?.still, nominal.still],
      [sampled?.push, dog.pushes[0].force],
      [sampled?.pullIn, dog.solenoid?.pullInVoltage],
    ] as const) {
      const [low, middle, high] = [
        spread?.p5 ?? Number.NaN,
        spread?.p50 ?? Number.NaN,
        spread?.p95 ?? Number.NaN,
      ];
      expect(low < middle && middle < high).toBe(true);
      expect((value ?? Number.NaN) > low && (value ?? Number.NaN) < high).toBe(true);
    }
  });

  test("pull-in spreads as the root of the spring's force: ± 15 % of force give ± 7.5 % of voltage, nearly", () => {
    const only = { ...STILL, "latch.springForce": "15 %" };
    const computed = computedOf(variant({ latch: { sideLoad: "0 N" }, study: { tolerances: only } }));
    const { sampled } = benchLimits(computed, 400);
    const nominal = computed.solenoid?.pullInVoltage ?? Number.NaN;
    // 5 and 95 % of a normal distribution are 1.645 σ off, and ± 15 % are 2 σ.
    const net = 0.9 - 0.02 * 9.80665;
    const expected = (share: number) => nominal * Math.sqrt((net + share * (1.645 / 2) * 0.15 * 0.9) / net);
    // Of 400 samples the 5 % quantile has a standard error of 0.11 σ, here 0.5 % of the voltage: four of them.
    expect(Math.abs((sampled?.pullIn?.p5 ?? 0) / expected(-1) - 1)).toBeLessThan(0.02);
    expect(Math.abs((sampled?.pullIn?.p95 ?? 0) / expected(1) - 1)).toBeLessThan(0.02);
  });

  test("the same seed gives the same limits, another seed others", () => {
    expect(benchLimits(dog, 30)).toEqual(benchLimits(dog, 30));
    expect(benchLimits(dog, 30, 2).sampled).not.toEqual(benchLimits(dog, 30, 1).sampled);
  });

  test("a door that rests outside says how often; one without a latch has no limits", () => {
    const never = benchLimits(computedOf(exampleJson("never-latches")), 60);
    expect(never.sampled?.restsOutside).toBeGreaterThan(0.3);
    expect(never.sampled?.settle.p95).toBeNull();
    const bare = computedOf(variant({ latch: null, solenoid: null, driver: null, supply: null }));
    expect(benchLimits(bare, 10).sampled).toBeNull();
  });
});
