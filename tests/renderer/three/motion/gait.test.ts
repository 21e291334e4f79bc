import { describe, expect, test } from "vitest";
import { animalBody, type Limb } from "../../../../renderer/three/motion/animal-body.ts";
import { newGait, poseGait, type Step } from "../../../../renderer/three/motion/gait.ts";
import { DOORS } from "../doors.ts";

const animals = [
  ...new Map([...DOORS.values()].flatMap((d) => d.animals).map((a) => [JSON.stringify(a), a])).values(),
];

/** Foot of a limb, along the path and above the floor, from the angles: forward kinematics of two links. */
function foot(limb: Limb, nose: number, upper: number, lower: number): { at: number; height: number } {
  return {
    at: nose + limb.z + limb.upper * Math.sin(upper) + limb.lower * Math.sin(lower),
    height: limb.y - limb.upper * Math.cos(upper) - limb.lower * Math.cos(lower) - limb.radius * 0.9,
  };
}

function feetAt(body: ReturnType<typeof animalBody>, step: Step, nose: number) {
  const gait = newGait(body);
  poseGait(body, step, nose, gait);
  return body.limbs.map((limb, i) => foot(limb, nose, gait.angles[2 * i], gait.angles[2 * i + 1]));
}

const flat: Step = { half: 0.07, height: 0 };

describe.each(animals.map((animal) => [animal.name, animal] as const))("%s", (_name, animal) => {
  const body = animalBody(animal);

  test("is as long, as high and as wide as stated", () => {
    expect(body.torso.height + body.torso.halfDepth).toBeCloseTo(animal.shoulderHeight, 12);
    expect(body.torso.halfWidth * 2).toBeCloseTo(animal.chestWidth, 12);
    expect(-body.torso.back).toBeCloseTo(animal.bodyLength, 12);
    expect(body.head.y + body.head.radius).toBeLessThanOrEqual(animal.shoulderHeight);
    expect(body.torso.front).toBeGreaterThan(body.torso.back);
  });

  test("has at least two feet on level ground, and those stay where they are", () => {
    const near = 1e-4;
    for (let nose = 3; nose < 3 + 2 * body.stride; nose += body.stride / 37) {
      const now = feetAt(body, flat, nose);
      const next = feetAt(body, flat, nose + near);
      const down = now.map((f, i) => ({ f, i })).filter(({ f }) => f.height < 2e-3);
      expect(down.length).toBeGreaterThanOrEqual(2);
      const sliding = down.filter(
        ({ f, i }) => Math.abs(next[i].at - f.at) > near * 0.2 && next[i].height < 1e-3,
      );
      expect(sliding.length).toBeLessThanOrEqual(1);
    }
  });

  test("moves its legs without a jump", () => {
    const before = newGait(body);
    const after = newGait(body);
    for (let nose = -0.5; nose < 1; nose += 0.003) {
      poseGait(body, flat, nose, before);
      poseGait(body, flat, nose + 1e-6, after);
      for (let i = 0; i < before.angles.length; i++) {
        expect(Math.abs(after.angles[i] - before.angles[i])).toBeLessThan(1e-3);
      }
    }
  });
});

test("feet go over the sill, not through it", () => {
  const [animal] = animals;
  const body = animalBody(animal);
  const step: Step = { half: 0.07, height: 0.08 };
  for (let nose = -0.4; nose < 1.2; nose += 0.004) {
    for (const { at, height } of feetAt(body, step, nose)) {
      if (Math.abs(at) < step.half * 0.9) expect(height).toBeGreaterThan(step.height - 0.004);
    }
  }
});

test("the pose is that of the place alone: it is the same on the way back", () => {
  const body = animalBody(animals[0]);
  const gait = newGait(body);
  poseGait(body, flat, 0.37, gait);
  const first = [...gait.angles];
  poseGait(body, flat, 0.9, gait);
  poseGait(body, flat, 0.37, gait);
  expect([...gait.angles]).toEqual(first);
});
