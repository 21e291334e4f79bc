import { expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import { staticTorque } from "../../../core/swing/torque.ts";
import { torqueCurve } from "../../../core/swing/torque-curve.ts";
import { referenceDoor } from "../doors.ts";

function systemOf(name: string) {
  return compute(referenceDoor(name)).system;
}

test.each(["04-jamb-two-like", "10-wind-out", "12-pressure"])(
  "%s: gravity, magnets and air make up the whole torque on a flap at rest",
  (name) => {
    const system = systemOf(name);
    const curve = torqueCurve(system);
    curve.angle.forEach((angle, i) => {
      expect(curve.gravity[i] + curve.magnets[i] + curve.air[i]).toBeCloseTo(staticTorque(system, angle), 12);
    });
  },
);

test("from stop to stop, rising, with the centre itself, denser there", () => {
  const system = systemOf("04-jamb-two-like");
  const { angle, gravity, friction } = torqueCurve(system, 101);
  expect([angle[0], angle[50], angle[100]]).toEqual([-system.stopAngle, 0, system.stopAngle]);
  for (let i = 1; i < 101; i++) expect(angle[i]).toBeGreaterThan(angle[i - 1]);
  expect(angle[51] - angle[50]).toBeLessThan((angle[100] - angle[99]) / 5);
  expect(gravity[50]).toBeCloseTo(0, 15);
  expect(Math.min(...friction)).toBeGreaterThan(0);
});
