import fc from "fast-check";
import { expect, test } from "vitest";
import { pressureMoment, VENT_ANGLE, ventedTorque } from "../../../core/parts/pressure.ts";

test("the closed flap's torque is that of the pressure on its plate about the hinge", () => {
  // ∫_o^b Δp W r dr in 10 000 strips
  const [n, o, b] = [10_000, 0.02, 0.4];
  const dr = (b - o) / n;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 2 * 0.3 * (o + (i + 0.5) * dr) * dr;
  expect(pressureMoment(2, 0.3, b, o)).toBeCloseTo(sum, 12);
});

test("it vents in a straight line by 10° either way", () => {
  expect((VENT_ANGLE * 180) / Math.PI).toBeCloseTo(10, 14);
  expect(ventedTorque(0.05, 0)).toBe(0.05);
  expect(ventedTorque(0.05, -VENT_ANGLE / 2)).toBeCloseTo(0.025, 15);
  expect(ventedTorque(0.05, VENT_ANGLE * 1.5)).toBe(0);
  const angle = fc.double({ min: -1.5, max: 1.5, noNaN: true });
  fc.assert(fc.property(angle, (a) => ventedTorque(0.05, a) === ventedTorque(0.05, -a)));
});
