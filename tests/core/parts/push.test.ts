import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import {
  dryFriction,
  hardestPush,
  push,
  pushRange,
  pushTorque,
  type Resistance,
} from "../../../core/parts/push.ts";
import { si } from "../../../core/quantity/brands.ts";
import { body, hinge, dog as plainDog, seal } from "./plain-parts.ts";

const still: Resistance = { body, hinge, seal, outOfPlumb: 0, magnetTorque: () => 0 };
const dog = { ...plainDog, pushHeight: si<"m">(0.4) };
const SG = 0.12 * STANDARD_GRAVITY;

describe("the push force", () => {
  test("of a plain flap is greatest at the end of the push: S g sin θ and the friction over the lever", () => {
    // hinge 0.6, push at 0.4: lever 0.2, range to acos(0.2/0.4) = 60°, before the let-go at 80°
    const one = push(dog, still, 0.6, (80 * Math.PI) / 180);
    expect(one.angle).toBeCloseTo(Math.PI / 3, 12);
    expect(one.force).toBeCloseTo((SG * Math.sin(Math.PI / 3) + 0.015) / 0.2, 12);
    expect(one.limit).toBe(14.7);
  });

  test("ends at the let-go where that comes first, and at 0 where the push is below the edge", () => {
    expect(push(dog, still, 0.6, 0.5).angle).toBe(0.5);
    expect(pushRange(1, 0.5, 0.4)).toBe(0);
    expect(push({ ...dog, pushHeight: si(0.1) }, still, 0.6, 1)).toMatchObject({
      angle: 0,
      force: 0.015 / 0.5,
    });
  });

  test("works against a frame out of plumb either way", () => {
    const out = push(dog, { ...still, outOfPlumb: 0.02 }, 0.6, 0.5).force;
    expect(out).toBe(push(dog, { ...still, outOfPlumb: -0.02 }, 0.6, 0.5).force);
    expect(out).toBeCloseTo((SG * Math.sin(0.52) + 0.015) / 0.2, 12);
  });

  test("counts the seal up to the end of its contact, with the static ratio", () => {
    const sealed = { ...still, seal: { ...seal, frictionTorque: si<"N m">(1) } };
    const one = push(dog, sealed, 0.6, 0.5);
    expect(one.angle).toBe(0.07);
    expect(one.force).toBeCloseTo((SG * Math.sin(0.07) + 1.5 * 1.01) / 0.2, 12);
    expect(dryFriction(0.01, 1, 0.07, -0.07)).toBe(1.01);
    expect(dryFriction(0.01, 1, 0.07, 0.0700001)).toBe(0.01);
  });

  test("meets the peak of the magnets exactly", () => {
    // τ_mag = −A θ/w e^(1/2 − θ²/(2w²)): its peak A lies at θ = w.
    const well = (a: number, w: number) => (t: number) => ((-a * t) / w) * Math.exp(0.5 - (t / w) ** 2 / 2);
    const strong = { ...still, body: { ...body, firstMoment: 0 }, magnetTorque: well(0.3, 0.011) };
    const one = push(dog, strong, 0.6, 1.2);
    expect(one.force).toBeCloseTo((0.3 + 0.015) / 0.2, 13);
    expect(one.angle).toBeCloseTo(0.011, 8);
  });

  test("does not exist where the hinge is not above the push", () => {
    expect(push(dog, still, 0.4, 1)).toEqual({ force: null, angle: null, limit: 14.7, energy: null });
    expect(push(dog, still, 0.3, 1).force).toBeNull();
  });
});

test("a walking animal also puts in ½ I ω² with ω = speed/lever", () => {
  expect(push(dog, still, 0.6, 1).energy).toBeCloseTo(0.5 * 0.032 * 4 ** 2, 12);
});

describe("the animal the door is judged by", () => {
  const one = (force: number | null, limit: number) => ({ force, angle: 0, limit, energy: 0 });

  test("has the least to spare, the first of equals", () => {
    expect(hardestPush([one(5, 10), one(3, 4), one(4, 5)])).toBe(1);
  });

  test("is one that can't push at all before any that can", () => {
    expect(hardestPush([one(50, 10), one(null, 40), one(null, 4)])).toBe(1);
  });
});

test("no angle of the push asks more than the force found, and more friction never asks less", () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const torque = fc.double({ min: 0, max: 0.5, noNaN: true });
  fc.assert(
    fc.property(share, torque, torque, share, (at, sealTorque, magnets, contact) => {
      const magnetTorque = (t: number) => -magnets * (t / 0.02) * Math.exp(0.5 - (t / 0.02) ** 2 / 2);
      const sealed = { ...seal, frictionTorque: si<"N m">(sealTorque), contactAngle: si<"rad">(contact) };
      const resistance = { ...still, seal: sealed, magnetTorque };
      const end = pushRange(1, 0.2, 0.4);
      const found = push(dog, resistance, 0.6, 1).force ?? Number.NaN;
      expect(found).toBeGreaterThanOrEqual(pushTorque(resistance, at * end) / 0.2 - 1e-9);
      const more = { ...resistance, hinge: { ...hinge, frictionTorque: si<"N m">(0.02) } };
      expect(push(dog, more, 0.6, 1).force).toBeGreaterThan(found);
    }),
  );
});
