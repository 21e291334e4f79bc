import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  axialPull,
  fluxIndex,
  greatestFaceField,
  lateralEnergy,
  lateralStiffness,
  type MagnetPair,
  MU0,
  normalField,
  onAxisField,
  remanenceAt,
} from "../../../core/parts/magnet.ts";
import { discAxialField, discRadialField } from "../../../core/parts/magnet-disc.ts";
import { besselj0, besselj1, hankel, hankelAxialPull, hankelEnergy, hankelLateralPull } from "./hankel.ts";

const PAIR: MagnetPair = { radius: 0.005, thickness: 0.005, gap: 0.003 };

/** Radius 1 to 20 mm, thickness and gap in proportion: squat to long, near to far. */
const pairs = fc
  .tuple(
    fc.double({ min: 0.001, max: 0.02, noNaN: true }),
    fc.double({ min: 0.1, max: 4, noNaN: true }),
    fc.double({ min: 0.05, max: 5, noNaN: true }),
  )
  .map(([radius, thick, apart]) => ({ radius, thickness: thick * radius, gap: apart * radius }));

function relative(value: number, truth: number): number {
  return Math.abs(value / truth - 1);
}

describe("one disc", () => {
  // Model page, checks: cylinder R = 5 mm, L = 5 mm, Br = 1.32 T.
  test.each([
    [0, 0.46669],
    [0.005, 0.123631],
    [0.01, 0.035809],
  ])("has the published field on its axis at %f m", (height, field) => {
    expect(onAxisField(1.32, 0.005, 0.005, height)).toBeCloseTo(field, 6);
    expect(normalField(1.32, 0.005, 0.005, 0, height)).toBeCloseTo(field, 6);
  });

  test("loses 0.11 % of its remanence per kelvin, and never turns round", () => {
    expect(remanenceAt(1.3, 20)).toBe(1.3);
    expect(remanenceAt(1.3, 60)).toBeCloseTo(1.3 * 0.956, 12);
    expect(remanenceAt(1.3, 2000)).toBe(0);
  });

  // E = 2π R ∫ J1(qR) J0|1(qρ) e^(−q|z|) dq, on both sides of the rim's cylinder and of the plane.
  test.each([
    [0, 0.001],
    [0.0049, 0.001],
    [0.005, 0.001],
    [0.005000001, 0.001],
    [0.007, 0.0005],
    [0.004, -0.002],
    [0.02, -0.003],
    [0.3, 0.01],
  ])("has the field of its Hankel integral off the axis at ρ = %f m, z = %f m", (rho, z) => {
    const radius = 0.005;
    const height = Math.abs(z);
    const part = (bessel: (x: number) => number) =>
      2 *
      Math.PI *
      radius *
      hankel((q) => besselj1(q * radius) * bessel(q * rho) * Math.exp(-q * height), height, radius + rho);
    expect(discAxialField(radius, rho, z)).toBeCloseTo(Math.sign(z) * part(besselj0), 11);
    expect(discRadialField(radius, rho, z)).toBeCloseTo(part(besselj1), 11);
  });

  test("has a field without sources away from it: the divergence is 0", () => {
    const h = 1e-6;
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.03, noNaN: true }),
        fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        (rho, z) => {
          const outwards = (r: number) => r * discRadialField(0.005, r, z);
          const along = (at: number) => discAxialField(0.005, rho, at);
          const radial = (outwards(rho + h) - outwards(rho - h)) / (2 * h * rho);
          const axial = (along(z + h) - along(z - h)) / (2 * h);
          expect(Math.abs(radial + axial)).toBeLessThan(1e-4 / Math.hypot(rho, z));
        },
      ),
    );
  });
});

describe("the flux index", () => {
  test("takes a squat disc's ridge near the rim, not its axis", () => {
    const greatest = greatestFaceField(1.3, 0.01, 0.003);
    expect(greatest).toBeGreaterThan(1.3 * normalField(1.3, 0.01, 0.003, 0, 0.38e-3));
    const looked = Array.from({ length: 5001 }, (_, i) =>
      normalField(1.3, 0.01, 0.003, (i / 5000) * 0.01, 0.38e-3),
    );
    expect(relative(greatest, Math.max(...looked))).toBeLessThan(1e-6);
    expect(greatest).toBeGreaterThanOrEqual(Math.max(...looked));
  });

  test("is (kG)² mm² of that field", () => {
    const field = greatestFaceField(1.3, 0.002, 0.004);
    expect(fluxIndex(1.3, 0.004, 0.004)).toBeCloseTo((10 * field) ** 2 * Math.PI * 4, 9);
  });

  test("of a long thin rod is that of its axis", () => {
    const axis = onAxisField(1.3, 0.0005, 0.02, 0.38e-3);
    expect(relative(greatestFaceField(1.3, 0.0005, 0.02), axis)).toBeLessThan(1e-9);
  });
});

describe("two discs with parallel axes", () => {
  test("have the energy and the pull of the model's Hankel integral", () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0.01, max: 6, noNaN: true }), (pair, aside) => {
        const offset = aside * pair.radius;
        const energyScale = Math.abs(hankelEnergy(pair, 0));
        const energyError = lateralEnergy(pair, 1, offset) - hankelEnergy(pair, offset);
        expect(Math.abs(energyError)).toBeLessThan(1e-10 * energyScale);
        const pull = offset * lateralStiffness(pair, offset);
        const pullError = pull - hankelLateralPull(pair, offset);
        expect(Math.abs(pullError)).toBeLessThan((1e-10 * energyScale) / Math.min(pair.radius, pair.gap));
        expect(relative(axialPull(pair, 1), hankelAxialPull(pair))).toBeLessThan(1e-10);
      }),
      { numRuns: 60 },
    );
  });

  // The truth itself: halving the panels' width must not move it, and coarser panels must be worse.
  test("rest on a Hankel integral that has converged", () => {
    const f = (q: number) =>
      besselj1(q * 0.02) *
      besselj1(q * 0.005) ** 2 *
      Math.expm1(-q * 0.005) ** 2 *
      Math.exp(-q * 0.003) *
      (1 / q);
    const at = (finer: number) => hankel(f, 0.003, 0.03, finer);
    const errors = [0.03, 0.06, 0.12, 1].map((finer) => Math.abs(at(finer) / at(3) - 1));
    expect(errors[0]).toBeGreaterThan(errors[1]);
    expect(errors[1]).toBeGreaterThan(errors[2]);
    expect(errors[3]).toBeLessThan(1e-13);
  });

  test("keep converging down to a hundredth of a radius", () => {
    for (const closeness of [1, 3, 10, 30, 100]) {
      const pair = { ...PAIR, gap: PAIR.radius / closeness };
      for (const offset of [0.2 * pair.gap, pair.radius, 2 * pair.radius, 2 * pair.radius + pair.gap]) {
        const truth = hankelLateralPull(pair, offset);
        expect(relative(offset * lateralStiffness(pair, offset), truth)).toBeLessThan(1e-9);
      }
    }
  });

  test("pull like dipoles when far apart: 3 μ0 m²/(2π z⁴)", () => {
    const moment = (1.3 * Math.PI * PAIR.radius ** 2 * PAIR.thickness) / MU0;
    for (const times of [30, 60, 120]) {
      const gap = times * PAIR.radius;
      const centres = gap + PAIR.thickness;
      const dipoles = (3 * MU0 * moment ** 2) / (2 * Math.PI * centres ** 4);
      expect(relative(axialPull({ ...PAIR, gap }, 1.3), dipoles)).toBeLessThan(5 / times ** 2);
    }
  });

  test("pull along the axis as their energy falls with the gap", () => {
    const energy = (gap: number) => lateralEnergy({ ...PAIR, gap }, 1.3, 0);
    const h = 1e-5;
    const slope =
      (8 * (energy(PAIR.gap + h) - energy(PAIR.gap - h)) -
        (energy(PAIR.gap + 2 * h) - energy(PAIR.gap - 2 * h))) /
      (12 * h);
    expect(relative(axialPull(PAIR, 1.3), slope)).toBeLessThan(1e-8);
  });

  test("pull sideways as their energy falls with the offset", () => {
    const h = 1e-5;
    for (const offset of [0.002, 0.006, 0.012, 0.02]) {
      const energy = (s: number) => lateralEnergy(PAIR, 1, s);
      const near = energy(offset + h) - energy(offset - h);
      const far = energy(offset + 2 * h) - energy(offset - 2 * h);
      expect(offset * lateralStiffness(PAIR, offset)).toBeCloseTo((8 * near - far) / (12 * h), 6);
    }
  });

  test("have, at every size, energies as the cube and forces as the square", () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0.1, max: 10, noNaN: true }), (pair, k) => {
        const scaled = { radius: k * pair.radius, thickness: k * pair.thickness, gap: k * pair.gap };
        const offset = 1.3 * pair.radius;
        const energy = lateralEnergy(pair, 1, offset);
        expect(Math.abs(lateralEnergy(scaled, 1, k * offset) - k ** 3 * energy)).toBeLessThan(
          1e-10 * k ** 3 * Math.abs(hankelEnergy(pair, 0)),
        );
        expect(relative(axialPull(scaled, 1), k ** 2 * axialPull(pair, 1))).toBeLessThan(1e-11);
      }),
      { numRuns: 30 },
    );
  });
});
