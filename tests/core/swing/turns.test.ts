/** Turning points, periods and decrements against closed forms of the damped pendulum. */
import { describe, expect, test } from "vitest";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import { type SampledTrace, sampleTrace } from "../../../core/swing/trace.ts";
import { swingMeasures, turningPoints } from "../../../core/swing/turns.ts";
import { PLAIN, type Plain, ran, turns } from "./systems.ts";

const weight = PLAIN.firstMoment * STANDARD_GRAVITY;
const natural = Math.sqrt(weight / PLAIN.inertia);

function sampled(changes: Partial<Plain>, angle: number, end: number): SampledTrace {
  const { trace, system } = ran(changes, angle);
  return sampleTrace(trace, system, Math.min(end, trace.endTime), 1 / 240);
}

describe("turning points", () => {
  test("are the integrator's own", () => {
    const one = ran({ hinge: 0.004, viscous: 0.003 }, 1.2);
    const found = turningPoints(sampleTrace(one.trace, one.system, one.trace.endTime, 1 / 240)).slice(1);
    const exact = turns(one);
    for (const [i, turn] of found.entries()) {
      // Dry friction bends the speed at a turning point, the more the nearer the flap is to rest: within half a sample.
      expect(Math.abs(turn.time - exact[i].time)).toBeLessThan(Math.abs(turn.angle) > 0.2 ? 5e-5 : 0.5 / 240);
      expect(turn.angle).toBeCloseTo(exact[i].angle, 6);
    }
    expect(exact.length - found.length).toBeLessThanOrEqual(1);
  });

  test("begin with a let-go at rest, and with nothing after a kick", () => {
    expect(turningPoints(sampled({}, 0.4, 0.05))).toEqual([{ time: 0, angle: 0.4 }]);
    const { trace, system } = ran({}, 0.1, 2);
    expect(turningPoints(sampleTrace(trace, system, 0.05, 1 / 240))).toEqual([]);
  });

  test("a flap that never moves turns once", () => {
    const still = { time: Float64Array.of(0, 1), angle: Float64Array.of(0, 0), speed: Float64Array.of(0, 0) };
    expect(turningPoints(still)).toEqual([{ time: 0, angle: 0 }]);
    expect(swingMeasures(turningPoints(still))).toEqual([]);
  });
});

describe("swing by swing", () => {
  test.each([
    [30, 1.017409],
    [90, 1.180341],
    [150, 1.762204],
  ])("undamped from %i°: the exact period, no decrement (DLMF ch. 19)", (angle, ratio) => {
    const measures = swingMeasures(turningPoints(sampled({}, (angle * Math.PI) / 180, 12)));
    expect(measures.length).toBeGreaterThan(4);
    for (const { period, decrement, amplitude } of measures) {
      expect((period * natural) / (2 * Math.PI)).toBeCloseTo(ratio, 4);
      expect(decrement).toBeCloseTo(0, 6);
      expect(amplitude).toBeCloseTo((angle * Math.PI) / 180, 6);
    }
  });

  test("viscous: 2πζ/√(1 − ζ²), about any angle the flap hangs at", () => {
    const viscous = 0.012;
    const zeta = viscous / (2 * PLAIN.inertia * natural);
    const exact = (2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta);
    for (const plumb of [0, 0.03]) {
      const measures = swingMeasures(turningPoints(sampled({ viscous, plumb }, plumb + 0.01, 6)));
      expect(measures.length).toBeGreaterThan(4);
      for (const { decrement } of measures.slice(0, 5)) expect(decrement).toBeCloseTo(exact, 4);
    }
  });

  test("dry friction: 4 τ/(S g) a swing (Thomson)", () => {
    const hinge = 0.002;
    const measures = swingMeasures(turningPoints(sampled({ hinge }, 0.06, 30)));
    expect(measures.length).toBeGreaterThan(2);
    for (const { loss } of measures.slice(0, -1)) expect(loss).toBeCloseTo((4 * hinge) / weight, 5);
  });

  test("still air: 1/A grows evenly (Nelson and Olsson)", () => {
    const inverse = swingMeasures(turningPoints(sampled({ airDensity: 1.2 }, 0.2, 20))).map(
      (m) => 1 / m.amplitude,
    );
    const growth = inverse.slice(2).map((value, i) => value - inverse[i]);
    for (const value of growth) expect(value / growth[0]).toBeCloseTo(1, 1);
  });
});
