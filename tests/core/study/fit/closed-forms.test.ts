// What the textbooks say of a damped swing, fitted: Thomson, Theory of Vibration; Nelson and Olsson, Am. J. Phys. 54 (1986) 112.
import { describe, expect, test } from "vitest";
import { flapBody } from "../../../../core/parts/flap.ts";
import { fitSwing } from "../../../../core/study/fit/fit.ts";
import { airLoad } from "../../../../core/swing/system.ts";
import { DEGREE, done, door, every, fittedValue } from "./helpers.ts";

const bare = door();
const body = flapBody(bare.flap, []);
const weightMoment = body.firstMoment * 9.80665;
const natural = Math.sqrt(weightMoment / body.inertia);
// Small enough that a pendulum is a harmonic oscillator to 2·10⁻⁴.
const RELEASE = 3.5 * DEGREE;

function turnsOf(amplitude: (turn: number) => number, count: number) {
  const turn = Array.from({ length: count }, (_, i) => i);
  const angle = turn.map((i) => (i % 2 === 0 ? 1 : -1) * amplitude(i));
  return { kind: "turns", turns: { turn, angle, time: null } } as const;
}

describe("turning points", () => {
  test("dry friction alone: the amplitude falls by 4 τ/(S g) per swing, in a straight line", () => {
    const friction = 1e-3;
    const per = (2 * friction) / weightMoment;
    const fit = fitSwing(
      bare,
      turnsOf((i) => RELEASE - i * per, 10),
      {
        keys: ["hinge.frictionTorque", "hinge.viscousDamping"],
      },
    );
    expect(fittedValue(fit, "hinge.frictionTorque").value / friction).toBeCloseTo(1, 1);
    const still = fitSwing(
      door({ air: { swingFactor: 0 }, hinge: { frictionTorque: "0 N m", viscousDamping: "0 N m s/rad" } }),
      turnsOf((i) => RELEASE - i * per, 10),
    );
    expect(fittedValue(still, "hinge.frictionTorque").value / friction).toBeCloseTo(1, 3);
  });

  test("viscous damping alone: the amplitude falls by the same share each swing, logarithmic decrement 2πζ/√(1 − ζ²)", () => {
    const damping = 2e-3;
    const zeta = damping / (2 * body.inertia * natural);
    const decrement = (2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta);
    const fit = fitSwing(
      door({ air: { swingFactor: 0 } }),
      turnsOf((i) => RELEASE * Math.exp((-decrement * i) / 2), 24),
      { keys: ["hinge.frictionTorque", "hinge.viscousDamping"] },
    );
    expect(fittedValue(fit, "hinge.viscousDamping").value / damping).toBeCloseTo(1, 3);
    expect(fittedValue(fit, "hinge.frictionTorque").value / (0.01 * weightMoment)).toBeCloseTo(0, 3);
  });

  test("still air alone: 1/A grows by (8/3)(k/I) per swing", () => {
    const factor = 2.5;
    const still = airLoad(bare, body).stillDrag * factor;
    const frictionless = door({ hinge: { frictionTorque: "0 N m", viscousDamping: "0 N m s/rad" } });
    const fit = fitSwing(
      frictionless,
      turnsOf((i) => 1 / (1 / RELEASE + (i * (4 / 3) * still) / body.inertia), 30),
      { keys: ["air.swingFactor"] },
    );
    expect(fittedValue(fit, "air.swingFactor").value / factor).toBeCloseTo(1, 2);
  });
});

describe("traces", () => {
  test("a damped cosine: damping and no dry friction, clock, zero and let-go found", () => {
    const damping = 3e-3;
    const decay = damping / (2 * body.inertia);
    const frequency = Math.sqrt(natural * natural - decay * decay);
    const time = every(0.02, 14);
    const [start, zero] = [0.4, -0.05];
    // At 2.2° a pendulum's period is longer by θ²/16 = 9·10⁻⁵ than the cosine's, and less so as it swings on.
    const letGo = 2.2 * DEGREE;
    const angle = time.map((t) => {
      const since = Math.max(0, t - start);
      const phase = frequency * since;
      return (
        zero + letGo * Math.exp(-decay * since) * (Math.cos(phase) + (decay / frequency) * Math.sin(phase))
      );
    });
    const samples = { time: Float64Array.from(time), angle: Float64Array.from(angle) };
    const fit = done(
      fitSwing(
        door({ air: { swingFactor: 0 } }),
        { kind: "trace", samples },
        {
          keys: ["hinge.frictionTorque", "hinge.viscousDamping"],
        },
      ),
    );
    expect(Math.abs(fittedValue(fit, "hinge.viscousDamping").value / damping - 1)).toBeLessThan(0.02);
    expect(fittedValue(fit, "hinge.frictionTorque").value).toBeLessThan(2e-6);
    const own = Object.fromEntries(fit.measurement.map(({ name, value }) => [name, value]));
    expect(own.start).toBeCloseTo(start, 3);
    expect(own.zero).toBeCloseTo(zero, 5);
    expect(own.release / letGo).toBeCloseTo(1, 3);
    expect(own.pace).toBeCloseTo(1, 3);
  });
});
