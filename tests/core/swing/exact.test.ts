/** The swing against closed forms: the undamped period, dry friction, viscous damping, drag of still air. */
import { describe, expect, test } from "vitest";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import { bracketedRoot } from "../../../core/swing/rest.ts";
import { imbalance, PLAIN, ran, system, turns } from "./systems.ts";

const weight = PLAIN.firstMoment * STANDARD_GRAVITY;
const smallPeriod = 2 * Math.PI * Math.sqrt(PLAIN.inertia / weight);
const degrees = (d: number) => (d * Math.PI) / 180;

describe("undamped pendulum", () => {
  // T/T0 = 2 K(sin θ0/2)/π: Abramowitz and Stegun ch. 17, NIST DLMF ch. 19
  test.each([
    [30, 1.017409],
    [60, 1.073182],
    [90, 1.180341],
    [120, 1.372881],
    [150, 1.762204],
  ])("period from %i°", (angle, ratio) => {
    const found = turns(ran({}, degrees(angle)));
    for (let i = 1; i < 9; i += 2) {
      // the published figures have six decimals
      expect(Math.abs(found[i].time / ((i + 1) / 2) / smallPeriod - ratio)).toBeLessThan(0.6e-6);
      expect(found[i].angle).toBeCloseTo(degrees(angle), 7);
    }
  });
});

describe("dry friction alone", () => {
  const torque = 0.02;

  test("turning points by the energy's balance, exactly, at any amplitude", () => {
    const one = ran({ hinge: torque }, degrees(80));
    let from = degrees(80);
    for (const { angle } of turns(one).slice(0, -1)) {
      const to = Math.abs(angle);
      expect(weight * (Math.cos(to) - Math.cos(from))).toBeCloseTo(torque * (from + to), 8);
      from = to;
    }
  });

  test("small swings lose 4 τ/(S g) a cycle (Thomson, Theory of Vibration)", () => {
    const found = turns(ran({ hinge: torque / 10 }, 0.05)).map((t) => t.angle);
    for (let i = 0; i + 2 < found.length - 1; i++) {
      expect(Math.abs(found[i]) - Math.abs(found[i + 2])).toBeCloseTo((4 * torque) / 10 / weight, 5);
    }
  });

  test("it comes to rest inside the dead band, at a turning point", () => {
    const { swing } = ran({ hinge: torque, staticRatio: 1.3 }, 1);
    expect(swing.status).toBe("at rest");
    expect(Math.abs(Math.sin(swing.restAngle ?? 9) * weight)).toBeLessThanOrEqual(1.3 * torque);
  });

  test("let go inside the dead band it stays", () => {
    const { swing } = ran({ hinge: torque }, 0.9 * Math.asin(torque / weight));
    expect(swing.restTime).toBe(0);
    expect(swing.steps).toBe(0);
  });
});

describe("viscous damping alone", () => {
  test("logarithmic decrement 2πζ/√(1 − ζ²), small swings", () => {
    const damping = 0.01;
    const zeta = damping / (2 * Math.sqrt(PLAIN.inertia * weight));
    const found = turns(ran({ viscous: damping }, 1e-3)).map((t) => t.angle);
    const decrement = (2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta);
    for (let i = 0; i < 4; i++) expect(Math.log(found[i] / found[i + 2])).toBeCloseTo(decrement, 5);
  });

  test("it fades without ever resting, and the ledger puts all into viscous", () => {
    const { swing } = ran({ viscous: 0.02 }, 1);
    expect(swing.status).toBe("faded");
    expect(swing.restTime).toBeNull();
    expect(swing.ledger.viscous).toBeCloseTo(swing.ledger.initial, 8);
    expect(swing.settleTime).toBeGreaterThan(0);
  });

  test("overdamped, it creeps back without crossing the centre", () => {
    const { swing } = ran({ viscous: 0.8 }, 0.5);
    expect(swing.centrePasses).toBe(0);
    // small angles: θ ≈ A e^{λ t} in the slow mode, λ = (−c + √(c² − 4 I S g))/(2 I)
    const slow = (-0.8 + Math.sqrt(0.64 - 4 * PLAIN.inertia * weight)) / (2 * PLAIN.inertia);
    const run = ran({ viscous: 0.8, capture: { centre: 0, half: 0.001 } }, 0.5);
    const later = (run.swing.settleTime ?? 0) - (swing.settleTime ?? 0);
    expect(later).toBeCloseTo(Math.log(0.01 / 0.001) / -slow, 3);
  });
});

describe("still air alone", () => {
  test("turning points by the exact energy over angle", () => {
    const one = ran({ airDensity: 1.204 }, degrees(70));
    const a = (2 * one.system.air.stillDrag) / PLAIN.inertia;
    const b = (2 * weight) / PLAIN.inertia;
    // ω² falling from θ1 to θ2 < θ1: d(ω²)/dθ = a ω² − b sin θ, whose integral is
    const primitive = (t: number) => (Math.exp(-a * t) * (a * Math.sin(t) + Math.cos(t))) / (a * a + 1);
    const squared = (from: number, to: number) => b * Math.exp(a * to) * (primitive(to) - primitive(from));
    let from = degrees(70);
    for (const { angle } of turns(one).slice(0, 8)) {
      const to = bracketedRoot((t) => squared(from, t), -from, -0.2 * from);
      expect(Math.abs(angle)).toBeCloseTo(-to, 8);
      from = Math.abs(angle);
    }
  });

  test("small swings: 1/A grows by (8/3)(k/I) a cycle (Nelson and Olsson, Am. J. Phys. 54 (1986) 112)", () => {
    const one = ran({ airDensity: 1.204 }, 0.02);
    const found = turns(one).map((t) => 1 / Math.abs(t.angle));
    const growth = ((8 / 3) * one.system.air.stillDrag) / PLAIN.inertia;
    expect((found[9] - found[1]) / 4 / growth).toBeCloseTo(1, 2);
  });

  test("bounded: it is still moving at the limit, and says so", () => {
    const { swing } = ran({ airDensity: 1.204, capture: { centre: 0, half: 1e-6 } }, 0.5);
    expect(swing.status).toBe("time limit");
    expect(swing.endTime).toBe(600);
    expect(swing.settleTime).toBeNull();
    expect(Math.abs(imbalance(swing))).toBeLessThan(1e-6 * swing.ledger.initial);
  });
});

describe("stops", () => {
  test("each impact leaves e² of the kinetic energy", () => {
    const one = ran({ stop: 0.5, restitution: 0.5, viscous: 1e-9 }, 0, 8);
    const { swing } = one;
    expect(swing.ledger.stops).toBeGreaterThan(0.5 * swing.ledger.initial);
    expect(Math.abs(imbalance(swing))).toBeLessThan(1e-6 * swing.ledger.initial);
    const peak = Math.max(...turns(one).map((t) => Math.abs(t.angle)));
    expect(peak).toBeLessThanOrEqual(0.5);
  });

  test("pressed against a stop by the wind it rests there", () => {
    const { swing } = ran({ stop: 0.4, wind: 8, airDensity: 1.204, hinge: 0.002 }, 0.3);
    expect(swing.restAngle).toBe(0.4);
    expect(swing.settleTime).toBeNull();
  });
});

describe("small-angle limit of the magnets' well", () => {
  test("a flap that starts at rest exactly balanced has faded at once", () => {
    expect(ran({}, 0).swing.status).toBe("faded");
    expect(system().capture?.half).toBe(0.01);
  });
});
