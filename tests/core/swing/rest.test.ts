import { describe, expect, test } from "vitest";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import { deadBand, nearestRestSet, restSets, setsOutside } from "../../../core/swing/rest.ts";
import { staticTorque } from "../../../core/swing/torque.ts";
import { PLAIN, pairTable, ran, system } from "./systems.ts";

const weight = PLAIN.firstMoment * STANDARD_GRAVITY;

describe("rest positions", () => {
  test("gravity and a hinge: |sin θ| ≤ k_s τ/(S g), hanging and, far up, standing", () => {
    const sets = restSets(system({ hinge: 0.05, staticRatio: 1.5, stop: 3.1 }));
    const half = Math.asin((1.5 * 0.05) / weight);
    expect(sets).toHaveLength(3);
    expect(sets[1].low).toBeCloseTo(-half, 13);
    expect(sets[1].high).toBeCloseTo(half, 13);
    expect(sets[2].low).toBeCloseTo(Math.PI - half, 12);
    expect(deadBand(sets, 0)).toBeCloseTo(half, 13);
  });

  test("the seal's edge ends the set where friction would hold further", () => {
    const edge = 0.02;
    const sets = restSets(system({ hinge: 0.002, seal: 0.03, sealAngle: edge }));
    expect(nearestRestSet(sets, 0).high).toBe(edge);
  });

  test("without dry friction: the balance point, out of plumb", () => {
    const sets = restSets(system({ plumb: 0.02 }));
    expect(sets).toHaveLength(1);
    expect(sets[0].low).toBeCloseTo(0.02, 13);
    expect(deadBand(sets, 0.005)).toBeCloseTo(0.015, 13);
  });

  test("magnets shrink the dead band; where friction beats gravity beyond their reach there is a second set", () => {
    const hinge = 0.03;
    const plain = deadBand(restSets(system({ hinge })), 0);
    const sets = restSets(system({ hinge, magnets: pairTable({ gap: 0.003 as never }) }));
    expect(deadBand(sets, 0)).toBeLessThan(plain / 10);
    const strong = restSets(system({ hinge: 0.1, magnets: pairTable({ gap: 0.003 as never }) }));
    expect(strong.length).toBeGreaterThan(1);
    expect(setsOutside(strong, 0, 0.01).length).toBeGreaterThan(0);
  });

  test("every end of a set is where holding ends, and inside it holds", () => {
    for (const hinge of [0.005, 0.05, 0.2]) {
      const made = system({ hinge, seal: 0.02, sealAngle: 0.05, plumb: 0.01, magnets: pairTable() });
      for (const { low, high } of restSets(made)) {
        const middle = (low + high) / 2;
        const hold = (a: number) => (Math.abs(a) <= 0.05 ? hinge + 0.02 : hinge);
        expect(Math.abs(staticTorque(made, middle))).toBeLessThanOrEqual(hold(middle));
        for (const [end, out] of [
          [low, low - 1e-7],
          [high, high + 1e-7],
        ]) {
          if (Math.abs(end) === PLAIN.stop) continue;
          expect(Math.abs(staticTorque(made, end))).toBeLessThanOrEqual(hold(end) * (1 + 1e-9));
          expect(Math.abs(staticTorque(made, out))).toBeGreaterThan(hold(out) * (1 - 1e-9));
        }
      }
    }
  });

  test("wherever a swing ends, it ends in one of the sets", () => {
    for (let i = 0; i < 40; i++) {
      const changes = { hinge: 0.004 + 0.002 * i, seal: 0.01, plumb: 0.002 * (i % 5), magnets: pairTable() };
      const { swing, system: made } = ran(changes, 0.3 + 0.02 * i);
      const angle = swing.restAngle ?? Number.NaN;
      expect(restSets(made).some((s) => angle >= s.low - 1e-9 && angle <= s.high + 1e-9)).toBe(true);
    }
  });
});
