import { describe, expect, test } from "vitest";
import { potentialEnergy, staticEnergy, staticTorque, stripTorque } from "../../../core/swing/torque.ts";
import { pairTable, system } from "./systems.ts";

/** ∫ u|u| r dr by a fine midpoint rule: what the closed form must equal. */
function byStrips(scale: number, inner: number, outer: number, v: number, speed: number): number {
  const count = 20000;
  const dr = (outer - inner) / count;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const r = inner + (i + 0.5) * dr;
    const u = v - speed * r;
    sum += u * Math.abs(u) * r * dr;
  }
  return scale * sum;
}

describe("strip theory", () => {
  test.each([
    [3, 2],
    [3, 12],
    [-2, 7],
    [-2, -9],
    [0, 5],
    [1.5, 4.2],
  ])("wind %f m/s, %f rad/s", (wind, speed) => {
    const { air } = system({ wind, airDensity: 1.204 });
    for (const angle of [0, 0.7, 1.9]) {
      const expected = byStrips(air.scale, air.inner, air.outer, wind * Math.cos(angle), speed);
      expect(stripTorque(air, angle, speed)).toBeCloseTo(expected, 7);
    }
  });
});

describe("energies", () => {
  test("are minus the integral of their torques, wind, pressure, plumb and magnets included", () => {
    const made = system({ wind: 3, airDensity: 1.2, pressure: 4, plumb: 0.05, magnets: pairTable() });
    const h = 1e-5;
    for (const angle of [-2.2, -0.9, -0.1, -0.013, 0.004, 0.05, 0.3, 1.2, 2.5]) {
      const slope = (staticEnergy(made, angle + h) - staticEnergy(made, angle - h)) / (2 * h);
      expect(slope).toBeCloseTo(-staticTorque(made, angle), 5);
    }
    expect(potentialEnergy(made, 0)).toBe(0);
  });
});
