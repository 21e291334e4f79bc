/** A stretch alone, against closed forms: the pendulum's period, Coulomb's and viscous damping. */
import { describe, expect, test } from "vitest";
import { wellEnergy } from "../../../core/swing/fields.ts";
import { Stretch } from "../../../core/swing/stretch.ts";
import { COARSE, type Forces, type SwingSystem, shaped } from "../../../core/swing/system.ts";
import { HALF_SWING } from "../../../core/swing/ways.ts";
import { type Plain, pairTable, system } from "./systems.ts";

const DEGREE = Math.PI / 180;
/** T/T0 of an undamped pendulum, 2K(sin θ0/2)/π (Abramowitz and Stegun, ch. 17). */
const PERIODS = [
  [30, 1.017409],
  [60, 1.073182],
  [90, 1.180341],
  [120, 1.372881],
] as const;

function coarse(changes: Partial<Plain>): SwingSystem {
  return shaped({ ...system(changes), tolerance: COARSE });
}

function forcesOf(of: SwingSystem, sign: number): Forces {
  return { sign, damping: of.damping[0], friction: -sign * of.friction[0] };
}

function smallPeriod({ inertia, weightMoment }: SwingSystem): number {
  return 2 * Math.PI * Math.sqrt(inertia / weightMoment);
}

describe("a pendulum without friction", () => {
  test.each(PERIODS)("let go at %d° it is at its lowest point after a quarter period", (degrees, ratio) => {
    const of = coarse({});
    const stretch = new Stretch();
    const from = degrees * DEGREE;
    const energy = wellEnergy(of, from);
    expect(stretch.go(of, forcesOf(of, -1), from, 0, energy, 0, 0)).toBe(true);
    expect((4 * stretch.time) / smallPeriod(of)).toBeCloseTo(ratio, 6);
    expect(stretch.speed).toBeCloseTo(-Math.sqrt((2 * energy) / of.inertia), 12);
  });

  test.each(PERIODS)("let go at %d° it is on the other side after half a period", (degrees, ratio) => {
    const of = coarse({});
    const stretch = new Stretch();
    const from = degrees * DEGREE;
    const found = stretch.go(of, forcesOf(of, -1), from, 0, wellEnergy(of, from), -0.9 * from, HALF_SWING);
    expect(found).toBe(true);
    expect(stretch.angle).toBeCloseTo(-from, 6);
    expect((2 * stretch.time) / smallPeriod(of)).toBeCloseTo(ratio, 5);
  });

  test("moving it turns where its energy is used up", () => {
    const of = coarse({});
    const stretch = new Stretch();
    const speed = 3;
    const energy = 0.5 * of.inertia * speed * speed;
    const top = Math.acos(1 - energy / of.weightMoment);
    expect(stretch.go(of, forcesOf(of, 1), 0, speed, energy, 0.8 * top, 1)).toBe(true);
    expect(stretch.angle).toBeCloseTo(top, 7);
    expect(stretch.speed).toBe(0);
  });
});

describe("what damps", () => {
  test("dry friction takes friction times way, to where the energies meet", () => {
    const of = coarse({ hinge: 0.01 });
    const stretch = new Stretch();
    const found = stretch.go(of, forcesOf(of, -1), 0.5, 0, wellEnergy(of, 0.5), -0.4, HALF_SWING);
    expect(found).toBe(true);
    const left = wellEnergy(of, 0.5) - wellEnergy(of, stretch.angle);
    expect(left).toBeCloseTo(0.01 * (0.5 - stretch.angle), 9);
    expect(stretch.viscous).toBeCloseTo(0, 15);
  });

  test("viscous damping of a small swing: logarithmic decrement and slower period (Thomson, ch. 2)", () => {
    const of = coarse({ viscous: 0.02 });
    const stretch = new Stretch();
    const from = 1e-3;
    const found = stretch.go(of, forcesOf(of, -1), from, 0, wellEnergy(of, from), -0.9 * from, HALF_SWING);
    expect(found).toBe(true);
    const zeta = 0.02 / (2 * Math.sqrt(of.inertia * of.weightMoment));
    const damped = Math.sqrt(1 - zeta * zeta);
    expect(stretch.angle / from).toBeCloseTo(-Math.exp((-Math.PI * zeta) / damped), 6);
    expect((2 * stretch.time * damped) / smallPeriod(of)).toBeCloseTo(1, 5);
    expect(stretch.viscous).toBeCloseTo(wellEnergy(of, from) - wellEnergy(of, stretch.angle), 10);
  });

  test("still air: a fast flap's speed falls as exp(−kθ/I)", () => {
    const of = coarse({ airDensity: 1.204 });
    const stretch = new Stretch();
    const speed = 40;
    const energy = 0.5 * of.inertia * speed * speed;
    expect(stretch.go(of, forcesOf(of, 1), -0.2, speed, energy + wellEnergy(of, -0.2), 0.2, 0.5)).toBe(true);
    // Fast, so that gravity's part of the energy is below a hundredth of it, and symmetric, so that it cancels to first order.
    const expected = speed * Math.exp((-of.air.stillDrag * 0.4) / of.inertia);
    expect(stretch.speed / expected).toBeCloseTo(1, 4);
    expect(stretch.viscous).toBe(0);
  });
});

describe("what a stretch refuses", () => {
  test("an end that the energy does not reach", () => {
    const of = coarse({});
    const stretch = new Stretch();
    expect(stretch.go(of, forcesOf(of, 1), 0, 1, 0.5 * of.inertia, 2, 0.5)).toBe(false);
  });

  test("a half swing that a flap overdamped never makes", () => {
    const of = coarse({ viscous: 1 });
    const stretch = new Stretch();
    expect(stretch.go(of, forcesOf(of, -1), 0.5, 0, wellEnergy(of, 0.5), -0.4, HALF_SWING)).toBe(false);
  });

  test("smoothness it does not have is told: a deep well passed slowly is rough, a smooth arc is not", () => {
    const of = coarse({ magnets: pairTable() });
    const stretch = new Stretch();
    const slow = 0.3;
    const energy = wellEnergy(of, -0.2) + 0.5 * of.inertia * slow * slow;
    expect(stretch.go(of, forcesOf(of, 1), -0.2, slow, energy, 0.19, 0.5)).toBe(true);
    expect(stretch.rough).toBeGreaterThan(1e-3);
    const plain = coarse({});
    expect(stretch.go(plain, forcesOf(plain, -1), 1, 0, wellEnergy(plain, 1), 0.2, 0)).toBe(true);
    expect(stretch.rough).toBeLessThan(1e-5);
  });
});
