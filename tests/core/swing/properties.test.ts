/** What must hold for any flap: random systems, the same every run by their seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { imbalance, type Plain, pairTable, ran as run, turns } from "./systems.ts";

const tables = [null, pairTable(), pairTable({ gap: 0.003 as never }), pairTable({ force: "repel" })];

/** A flap as fast-check prints it: its magnets by number. */
type Drawn = Omit<Partial<Plain>, "magnets"> & { magnets: number };

const ran = (drawn: Drawn, angle: number, speed = 0) =>
  run({ ...drawn, magnets: tables[drawn.magnets] }, angle, speed);

const flap: fc.Arbitrary<Drawn> = fc.record({
  inertia: fc.double({ min: 0.003, max: 0.3, noNaN: true }),
  firstMoment: fc.double({ min: 0.02, max: 0.6, noNaN: true }),
  hinge: fc.oneof(fc.constant(0), fc.double({ min: 1e-4, max: 0.05, noNaN: true })),
  viscous: fc.double({ min: 1e-3, max: 0.1, noNaN: true }),
  staticRatio: fc.double({ min: 1, max: 2, noNaN: true }),
  stop: fc.double({ min: 1.2, max: 2, noNaN: true }),
  restitution: fc.double({ min: 0, max: 0.8, noNaN: true }),
  seal: fc.oneof(fc.constant(0), fc.double({ min: 1e-4, max: 0.05, noNaN: true })),
  sealAngle: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
  damper: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 0.1, noNaN: true })),
  damperAngle: fc.double({ min: 0.05, max: 1, noNaN: true }),
  airDensity: fc.double({ min: 0, max: 1.3, noNaN: true }),
  swingFactor: fc.double({ min: 0, max: 3, noNaN: true }),
  wind: fc.oneof(fc.constant(0), fc.double({ min: -4, max: 4, noNaN: true })),
  pressure: fc.oneof(fc.constant(0), fc.double({ min: -5, max: 5, noNaN: true })),
  plumb: fc.oneof(fc.constant(0), fc.double({ min: -0.05, max: 0.05, noNaN: true })),
  magnets: fc.nat(tables.length - 1),
  capture: fc.record({
    centre: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
    half: fc.double({ min: 0.003, max: 0.05, noNaN: true }),
  }),
});
const letGo = fc.double({ min: 0.05, max: 1.19, noNaN: true });

describe("any flap", () => {
  test("its ledger closes to 1e-6, and its figures are numbers", () => {
    fc.assert(
      fc.property(flap, letGo, fc.double({ min: -3, max: 3, noNaN: true }), (changes, angle, speed) => {
        const { swing } = ran(changes, angle, speed);
        const scale = Math.max(1e-3, Math.abs(swing.ledger.initial));
        expect(Math.abs(imbalance(swing)) / scale).toBeLessThan(1e-6);
        expect(swing.status).not.toBe("work limit");
        for (const figure of [
          swing.settleTime,
          swing.restTime,
          swing.restAngle,
          ...Object.values(swing.ledger),
        ]) {
          expect(figure === null || Number.isFinite(figure)).toBe(true);
        }
        expect(swing.endTime).toBeLessThanOrEqual(600);
      }),
      { seed: 20261, numRuns: 80, endOnFailure: true },
    );
  });

  test("its mirror image gives the mirrored swing", () => {
    fc.assert(
      fc.property(flap, letGo, (changes, angle) => {
        const mirror = {
          ...changes,
          plumb: -(changes.plumb ?? 0),
          wind: -(changes.wind ?? 0),
          pressure: -(changes.pressure ?? 0),
          capture: { centre: -(changes.capture?.centre ?? 0), half: changes.capture?.half ?? 0.01 },
        };
        const one = ran(changes, angle);
        const other = ran(mirror, -angle);
        expect(other.swing.settleTime).toEqual(one.swing.settleTime);
        expect(other.swing.restTime).toEqual(one.swing.restTime);
        expect(other.swing.centrePasses).toBe(one.swing.centrePasses);
        if (one.swing.restAngle !== null) expect(other.swing.restAngle).toBeCloseTo(-one.swing.restAngle, 14);
      }),
      { seed: 20262, numRuns: 40, endOnFailure: true },
    );
  });

  test("more friction of any kind never leaves a larger n-th turning angle, without magnets", () => {
    const kinds = ["hinge", "viscous", "seal", "damper", "airDensity"] as const;
    const still = flap.map((f) => ({ ...f, magnets: 0, wind: 0, pressure: 0, plumb: 0 }));
    const kind = fc.constantFrom(...kinds);
    const more = fc.double({ min: 1.05, max: 3, noNaN: true });
    fc.assert(
      fc.property(still, kind, more, letGo, (changes, name, factor, angle) => {
        const less = turns(ran(changes, angle));
        const raised = {
          ...changes,
          [name]: (changes[name] ?? 0) * factor + (name === "airDensity" ? 0.1 : 1e-3),
        };
        const greater = turns(ran(raised, angle));
        const both = Math.min(less.length, greater.length, 40);
        for (let i = 0; i < both; i++) {
          expect(Math.abs(greater[i].angle)).toBeLessThanOrEqual(Math.abs(less[i].angle) + 1e-7);
        }
      }),
      { seed: 20263, numRuns: 40, endOnFailure: true },
    );
  });

  test("read at any moment the trace goes through its own rows and does not jump", () => {
    fc.assert(
      fc.property(flap, letGo, (changes, angle) => {
        const { trace, system, swing } = ran(changes, angle);
        const state = { time: 0, angle: 0, speed: 0 };
        for (let i = 0; i < Math.min(trace.count, 60); i++) {
          const duration = trace.endOf(i) - trace.times[i];
          trace.within(system, i, duration, state);
          expect(Math.abs(state.angle - trace.endAngleOf(i))).toBeLessThan(1e-7);
          trace.within(system, i, duration / 2, state);
          const [low, high] = [trace.startAngle(i), trace.endAngleOf(i)].sort((a, b) => a - b);
          expect(state.angle).toBeGreaterThan(low - 1e-9);
          expect(state.angle).toBeLessThan(high + 1e-9);
        }
        trace.at(system, swing.endTime + 1, state);
        expect(state.angle).toBe(trace.endAngle);
      }),
      { seed: 20264, numRuns: 40, endOnFailure: true },
    );
  });
});
