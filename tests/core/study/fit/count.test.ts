// "Let go at 60°, 14 passes, still after 11.2 s": the friction that makes the door do so.
import { describe, expect, test } from "vitest";
import { flapBody } from "../../../../core/parts/flap.ts";
import { si } from "../../../../core/quantity/brands.ts";
import { compute } from "../../../../core/review/compute.ts";
import { fitSwing } from "../../../../core/study/fit/fit.ts";
import type { Count } from "../../../../core/study/fit/fit-types.ts";
import { SwingModel } from "../../../../core/study/fit/model.ts";
import { DEGREE, done, door, fittedValue, TRUTH } from "./helpers.ts";

const dry = door({
  hinge: { frictionTorque: "1 mN m", viscousDamping: "0 N m s/rad" },
  air: { swingFactor: 0 },
});
const counted = (of: ReturnType<typeof door>, count: Count) => fitSwing(of, { kind: "count", count });

/** Passes through the centre, and rest, of a swing with known values. */
function countOf(of: ReturnType<typeof door>, truth: typeof TRUTH) {
  const model = new SwingModel(of);
  model.run(truth, 1000);
  const passes = model.turnAngles
    .slice(1)
    .filter((a, i) => Math.sign(a) !== Math.sign(model.turnAngles[i])).length;
  return { passes, restTime: model.turnTimes[model.turnTimes.length - 1] };
}

describe("one count, one value", () => {
  test("dry friction alone, small angle: passes = A S g/(2 τ), to within half a pass (closed form)", () => {
    const weightMoment = flapBody(dry.flap, []).firstMoment * 9.80665;
    const angle = 6 * DEGREE;
    for (const passes of [5, 9, 14]) {
      const { value, error, low, high } = fittedValue(
        counted(dry, { releaseAngle: angle, passes }),
        "hinge.frictionTorque",
      );
      const wanted = (angle * weightMoment) / (2 * (passes + 0.5));
      expect(value / wanted).toBeCloseTo(1, 2);
      // Half a pass either way is uniform: 1/√12 of a pass.
      expect(error / (wanted / (passes + 0.5) / Math.sqrt(12))).toBeCloseTo(1, 1);
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
    }
  });

  test("what a swing with known friction counts gives it back, over a hundred frictions", () => {
    const bare = door();
    let inside = 0;
    for (let i = 0; i < 100; i++) {
      const truth = {
        ...TRUTH,
        "air.swingFactor": 1,
        "hinge.viscousDamping": 1e-3,
        "hinge.frictionTorque": 1e-3 + i * 4.1e-5,
      };
      const { passes, restTime } = countOf(bare, truth);
      const { low, high } = fittedValue(
        counted(bare, { releaseAngle: truth.release, passes, restTime }),
        "hinge.frictionTorque",
      );
      if (truth["hinge.frictionTorque"] >= low && truth["hinge.frictionTorque"] <= high) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(88);
  });

  test("the other values are refused and stay as in the file", () => {
    const fit = done(counted(door(), { releaseAngle: 60 * DEGREE, passes: 28, restTime: 13.6 }));
    expect(fit.values).toHaveLength(1);
    expect(fit.refused.map(({ key }) => key)).toContain("hinge.viscousDamping");
    expect(fit.says.join(" ")).toMatch(/A count tells one value/);
  });

  test("a time alone will do", () => {
    const truth = { ...TRUTH, "air.swingFactor": 1, "hinge.viscousDamping": 1e-3 };
    const { restTime } = countOf(door(), truth);
    const { value } = fittedValue(
      counted(door(), { releaseAngle: truth.release, restTime }),
      "hinge.frictionTorque",
    );
    expect(value / truth["hinge.frictionTorque"]).toBeCloseTo(1, 0);
  });
});

const latch = {
  boltWidth: "8 mm",
  slotWidth: "20 mm",
  distanceFromHinge: "27 cm",
  tipGap: "2 mm",
  engagement: "3 mm",
  edgeHalfWidth: "12 mm",
  boltMass: "18 g",
  springForce: "0.6 N",
};
const bolted = door({ latch, air: { swingFactor: 0 } });

/** The review's own swing of a door with known hinge values, let go at 50°. */
function reviewed(of: ReturnType<typeof door>, friction: number, damping: number) {
  const hinge = {
    ...of.hinge,
    frictionTorque: si<"N m">(friction),
    viscousDamping: si<"N m s/rad">(damping),
  };
  const release = { angle: si<"rad">(50 * DEGREE), speed: si<"rad/s">(0) };
  return { ...of, hinge, swing: compute({ ...of, hinge, release }).governing.swing };
}

describe("passes as the bench card and swing.centrePasses count them, into the bolt's play", () => {
  test.each([
    ["a slot in the middle", bolted, 0.95],
    ["a slot 1 mm off", door({ latch: { ...latch, offset: "1 mm" }, air: { swingFactor: 0 } }), 0.75],
  ])("give the friction back within its error: %s", (_, of, least) => {
    let inside = 0;
    const counts = new Set<number>();
    for (let i = 0; i < 60; i++) {
      const friction = 1e-3 + i * 5e-5;
      const { swing, ...swung } = reviewed(of, friction, 2e-3);
      counts.add(swing.centrePasses);
      const fit = counted(swung, { releaseAngle: 50 * DEGREE, passes: swing.centrePasses });
      const { low, high } = fittedValue(fit, "hinge.frictionTorque");
      if (friction >= low && friction <= high) inside++;
    }
    expect(counts.size).toBeGreaterThan(5);
    expect(inside).toBeGreaterThanOrEqual(least * 60);
  });

  test("and the time until still beside them tell viscous damping too", () => {
    let inside = 0;
    for (let i = 0; i < 20; i++) {
      const [friction, damping] = [1e-3 + 1e-4 * i, 3e-3 - 1e-4 * i];
      const { swing } = reviewed(bolted, friction, damping);
      const count = { releaseAngle: 50 * DEGREE, passes: swing.centrePasses, restTime: swing.restTime ?? 0 };
      const fit = counted(bolted, count);
      for (const [key, truth] of [
        ["hinge.frictionTorque", friction],
        ["hinge.viscousDamping", damping],
      ] as const) {
        const { low, high } = fittedValue(fit, key);
        if (truth >= low && truth <= high) inside++;
      }
    }
    expect(inside).toBeGreaterThanOrEqual(34);
  });

  test("are not the passes until still, which have a name of their own", () => {
    const { swing, ...swung } = reviewed(bolted, 2e-3, 2e-3);
    const model = new SwingModel(swung);
    const truth = {
      ...TRUTH,
      "air.swingFactor": 0,
      "hinge.viscousDamping": 2e-3,
      "hinge.frictionTorque": 2e-3,
    };
    const { passes: until } = countOf(swung, { ...truth, "opening.outOfPlumb": 0, release: 50 * DEGREE });
    expect(model.door.latch).not.toBeNull();
    expect(until).toBeGreaterThan(swing.centrePasses);
    const fit = counted(swung, { releaseAngle: 50 * DEGREE, passesUntilStill: until });
    const { low, high } = fittedValue(fit, "hinge.frictionTorque");
    expect(low).toBeLessThan(2e-3);
    expect(high).toBeGreaterThan(2e-3);
  });
});

test("with the settle time a second value is told: viscous damping beside dry friction, each within its error", () => {
  let inside = 0;
  let told = 0;
  for (let i = 0; i < 20; i++) {
    const [friction, damping] = [1e-3 + 1e-4 * i, 3e-3 - 1e-4 * i];
    const { swing } = reviewed(bolted, friction, damping);
    const fit = counted(bolted, {
      releaseAngle: 50 * DEGREE,
      restTime: swing.restTime as number,
      settleTime: swing.settleTime as number,
    });
    for (const [key, truth] of [
      ["hinge.frictionTorque", friction],
      ["hinge.viscousDamping", damping],
    ] as const) {
      const { low, high } = fittedValue(fit, key);
      told++;
      if (truth >= low && truth <= high) inside++;
    }
  }
  expect(told).toBe(40);
  expect(inside).toBeGreaterThanOrEqual(34);
});

describe("counts that cannot be", () => {
  test.each<[string, Count, RegExp]>([
    ["an angle alone", { releaseAngle: 1 }, /tells nothing/],
    ["no angle", { releaseAngle: 0, passes: 14 }, /above 0/],
    ["past the stop", { releaseAngle: 3, passes: 14 }, /within the stops/],
    ["half a pass", { releaseAngle: 1, passes: 14.5 }, /whole number/],
    [
      "more passes into the play than until still",
      { releaseAngle: 1, passes: 9, passesUntilStill: 7 },
      /no more passes/,
    ],
    ["no pass", { releaseAngle: 1, passes: 0 }, /whole number/],
    ["time runs back", { releaseAngle: 1, restTime: -1 }, /above 0 s/],
    ["settles after rest", { releaseAngle: 1, restTime: 4, settleTime: 5 }, /settle before it rests/],
    ["settles without a latch", { releaseAngle: 1, settleTime: 5 }, /latch/],
    [
      "passes and time that contradict",
      { releaseAngle: 60 * DEGREE, passes: 14, restTime: 40 },
      /No value fits/,
    ],
    [
      "more passes than the file's damping allows",
      { releaseAngle: 60 * DEGREE, passes: 900 },
      /No value fits/,
    ],
  ])("%s", (_, count, says) => {
    const fit = counted(door(), count);
    expect(fit.ok ? "" : fit.says).toMatch(says);
  });
});
