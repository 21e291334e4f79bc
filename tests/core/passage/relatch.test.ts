/** The relatch rule against a plain simulation of it in steps of ten microseconds, and its cases one by one. */
import { describe, expect, test } from "vitest";
import type { LatchMechanics } from "../../../core/parts/latch.ts";
import { latchMechanics } from "../../../core/parts/latch.ts";
import { type Relatch, relatch, rideSystem } from "../../../core/passage/relatch.ts";
import { si } from "../../../core/quantity/brands.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { frictionAt, type SwingSystem } from "../../../core/swing/system.ts";
import { motionDrag, staticTorque } from "../../../core/swing/torque.ts";
import { type Plain, pairTable, ran } from "../swing/systems.ts";

const LATCH = latchMechanics({
  boltWidth: si(0.008),
  slotWidth: si(0.02),
  distanceFromHinge: si(0.37),
  tipGap: si(0.003),
  engagement: si(0.004),
  edgeHalfWidth: si(0.02),
  boltMass: si(0.02),
  springForce: si(1.2),
  frictionCoefficient: si(0.2),
  guideFactor: si(2),
  sideLoad: si(0),
  offset: si(0.001),
  boltPoints: "up",
});

/** The rule of the model, section 4, word by word, stepped by the midpoint rule: slow and independent. */
function stepped(
  free: SwingSystem,
  latch: LatchMechanics,
  start: { time: number; angle: number; speed: number },
): string {
  const dt = 1e-5;
  let { time, angle, speed } = start;
  const away = () => Math.abs(angle - latch.centre);
  if (away() > latch.block) return "shut out";
  let deadline = away() <= latch.capture ? time + latch.toEngagement - latch.toMouth : Number.NaN;
  for (let i = 0; i < 6e6; i++) {
    if (away() > latch.block) return "shut out";
    const inside = away() <= latch.capture;
    if (!inside) deadline = Number.NaN;
    else if (Number.isNaN(deadline)) deadline = time + latch.again;
    if (inside && time >= deadline) return "caught";
    const friction = frictionAt(free, angle) + (inside ? 0 : latch.rideTorque);
    const still = staticTorque(free, angle);
    if (speed === 0 && Math.abs(still) <= free.staticRatio * friction) return inside ? "caught" : "stuck";
    const sign = speed === 0 ? Math.sign(still) : Math.sign(speed);
    const slope = (a: number, w: number) =>
      (staticTorque(free, a) + motionDrag(free.air, a, w) - free.damping[0] * w - friction * sign) /
      free.inertia;
    const half = speed + (dt / 2) * slope(angle, speed);
    const next = speed + dt * slope(angle + (dt / 2) * speed, half);
    angle += dt * half;
    speed = next * sign < 0 && speed !== 0 ? 0 : next;
    time += dt;
  }
  return "never";
}

const FLAPS: [string, Partial<Plain>][] = [
  ["a stiff hinge", { hinge: 0.02, staticRatio: 1.3, viscous: 0.01, airDensity: 1.2 }],
  ["magnets", { hinge: 0.008, viscous: 0.006, airDensity: 1.2, magnets: pairTable() }],
];

function relatched(changes: Partial<Plain>, angle: number, hold: number): Relatch & { plain: string } {
  const one = ran({ ...changes, capture: { centre: LATCH.centre, half: LATCH.capture } }, angle);
  const state = { time: 0, angle: 0, speed: 0 };
  const outcome = relatch(
    rideSystem(one.system, LATCH),
    one.system,
    one.trace,
    hold,
    0.002,
    new Motion(),
    state,
  );
  const mouth = hold + 0.002 + LATCH.toMouth;
  const plain =
    hold < 0 ? "under the animal" : stepped(one.system, LATCH, { ...one.trace.at(one.system, mouth, state) });
  return { ...outcome, plain };
}

describe("the relatch", () => {
  test.each(FLAPS)(
    "agrees with the plain simulation at many holds: %s",
    (_name, changes) => {
      const seen = new Set<string>();
      let differ = 0;
      const count = 120;
      for (let i = 0; i < count; i++) {
        const { outcome, plain } = relatched(changes, 0.8, 0.05 + i * 0.0613);
        seen.add(outcome);
        if (outcome !== plain) differ++;
      }
      // within a step of an edge the plain simulation may fall to either side
      expect(differ).toBeLessThanOrEqual(1);
      expect(seen.has("caught") && seen.has("shut out")).toBe(true);
    },
    120_000,
  );

  test("a hold that ends before let-go is a failure of its own", () => {
    const { outcome, time } = relatched(FLAPS[0][1], 0.8, -0.5);
    expect(outcome).toBe("under the animal");
    expect(time).toBeCloseTo(-0.498, 12);
  });

  test("a flap at rest in the slot is caught when the bolt has reached least engagement", () => {
    const { outcome, time, energy } = relatched({ ...FLAPS[1][1] }, 0.8, 60);
    expect(outcome).toBe("caught");
    expect(time).toBeCloseTo(60.002 + LATCH.toEngagement, 12);
    expect(energy).toBe(0);
  });

  test("a flap held off the slot by friction is stuck", () => {
    const stiff = { hinge: 0.2, staticRatio: 1, viscous: 0.2 };
    const one = ran({ ...stiff, capture: { centre: LATCH.centre, half: LATCH.capture } }, 0.04);
    expect(one.swing.restTime).toBe(0);
    expect(relatched(stiff, 0.04, 1).outcome).toBe("stuck");
    expect(relatched(stiff, 0.4, 0.1).outcome).toBe("shut out");
  });
});
