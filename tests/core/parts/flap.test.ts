import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Flap } from "../../../core/door/door.ts";
import {
  flapBody,
  plateInertia,
  plateMass,
  STANDARD_GRAVITY,
  smallAnglePeriod,
} from "../../../core/parts/flap.ts";
import { si } from "../../../core/quantity/brands.ts";

function flap(over: Partial<Record<"width" | "height" | "thickness" | "density" | "offset", number>>): Flap {
  return {
    width: si(over.width ?? 0.3),
    height: si(over.height ?? 0.4),
    thickness: si(over.thickness ?? 0.004),
    material: "",
    density: si(over.density ?? 1200),
    hingeOffset: si(over.offset ?? 0),
    bottomClearance: si(0.005),
    extraMasses: [],
  };
}

describe("a plate hung from its top edge", () => {
  // A thin rod or plate about its end: I = m H²/3, T0 = 2π √(2H/(3g)) (Halliday, Resnick and Walker,
  // Fundamentals of Physics, ch. 15, sample problem of the metre stick: T = 1.64 s).
  test("swings like the textbook's metre stick, 1.64 s", () => {
    const body = flapBody(flap({ height: 1, thickness: 1e-6 }), []);
    expect(body.smallAnglePeriod).toBeCloseTo(2 * Math.PI * Math.sqrt(2 / (3 * STANDARD_GRAVITY)), 10);
    expect(body.smallAnglePeriod.toFixed(2)).toBe("1.64");
    expect(body.inertia).toBeCloseTo(body.plateMass / 3, 12);
  });

  test("weighs its volume", () => {
    expect(plateMass(1200, 0.3, 0.4, 0.004)).toBeCloseTo(0.576, 12);
  });

  test("has about an axis through its centre the plate's own inertia, thickness included", () => {
    expect(plateInertia(12, 3, 4, 0)).toBeCloseTo(25, 12);
  });

  test("adds the hinge offset to every distance", () => {
    const body = flapBody(flap({ offset: 0.02 }), []);
    expect(body.reach).toBeCloseTo(0.42, 12);
    expect(body.firstMoment).toBeCloseTo(0.576 * 0.22, 12);
    expect(body.inertia).toBeCloseTo(0.576 * ((0.16 + 0.000016) / 12 + 0.22 ** 2), 12);
    expect(body.hingeOffset).toBe(0.02);
    expect(body.width).toBe(0.3);
  });
});

describe("masses on the flap", () => {
  const magnets = [
    { mass: 0.003, distance: 0.39 },
    { mass: 0.003, distance: 0.365 },
  ];

  test("count the file's and the magnets' alike, and the plate stays bare", () => {
    const strike = { name: "strike", mass: si<"kg">(0.05), distanceFromHinge: si<"m">(0.4) };
    const bare = flapBody(flap({}), []);
    const body = flapBody({ ...flap({}), extraMasses: [strike] }, magnets);
    expect(body.plateMass).toBe(bare.mass);
    expect(body.mass - bare.mass).toBeCloseTo(0.056, 12);
    expect(body.firstMoment - bare.firstMoment).toBeCloseTo(0.05 * 0.4 + 0.003 * (0.39 + 0.365), 12);
    expect(body.inertia - bare.inertia).toBeCloseTo(0.05 * 0.16 + 0.003 * (0.39 ** 2 + 0.365 ** 2), 12);
  });

  test("one at the plate's own simple-pendulum length leaves the period as it is", () => {
    const bare = flapBody(flap({}), []);
    const length = bare.inertia / bare.firstMoment;
    const body = flapBody(flap({}), [{ mass: 1, distance: length }]);
    expect(body.smallAnglePeriod).toBeCloseTo(bare.smallAnglePeriod, 12);
  });
});

test("the period does not know the density or the width, and grows with the height", () => {
  const size = fc.double({ min: 0.1, max: 1, noNaN: true });
  fc.assert(
    fc.property(size, size, size, (height, width, density) => {
      const one = flapBody(flap({ height, width, density: 500 + 2000 * density }), []);
      const other = flapBody(flap({ height }), []);
      const taller = flapBody(flap({ height: height * 1.01 }), []);
      expect(one.smallAnglePeriod).toBeCloseTo(other.smallAnglePeriod, 12);
      expect(taller.smallAnglePeriod).toBeGreaterThan(one.smallAnglePeriod);
    }),
  );
});

test("a simple pendulum of 1 m swings in 2.006 s", () => {
  expect(smallAnglePeriod(1, 1)).toBeCloseTo(2.00641, 5);
});
