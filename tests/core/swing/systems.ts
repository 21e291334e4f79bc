/** Equations of motion for the swing's tests: one plain flap, changed by what a test is about. */

import type { Magnets } from "../../../core/door/door.ts";
import { torqueTable } from "../../../core/parts/magnet-family.ts";
import type { TorqueTable } from "../../../core/parts/torque-table.ts";
import { si } from "../../../core/quantity/brands.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { type Swing, SwingRun } from "../../../core/swing/swing.ts";
import { type CaptureBand, type SwingSystem, swingSystem } from "../../../core/swing/system.ts";
import { Trace } from "../../../core/swing/trace.ts";

export interface Plain {
  inertia: number;
  firstMoment: number;
  hinge: number;
  viscous: number;
  staticRatio: number;
  stop: number;
  restitution: number;
  seal: number;
  sealAngle: number;
  damper: number;
  damperAngle: number;
  airDensity: number;
  swingFactor: number;
  wind: number;
  pressure: number;
  plumb: number;
  magnets: TorqueTable | null;
  capture: CaptureBand | null;
}

export const PLAIN: Plain = {
  inertia: 0.02,
  firstMoment: 0.08,
  hinge: 0,
  viscous: 0,
  staticRatio: 1,
  stop: 3,
  restitution: 0.3,
  seal: 0,
  sealAngle: 0.07,
  damper: 0,
  damperAngle: 0.3,
  airDensity: 0,
  swingFactor: 1,
  wind: 0,
  pressure: 0,
  plumb: 0,
  magnets: null,
  capture: { centre: 0, half: 0.01 },
};

/** A system of `PLAIN` with some values changed. */
export function system(changes: Partial<Plain> = {}): SwingSystem {
  const p = { ...PLAIN, ...changes };
  const door = {
    opening: { outOfPlumb: p.plumb },
    hinge: {
      frictionTorque: p.hinge,
      viscousDamping: p.viscous,
      staticRatio: p.staticRatio,
      stopAngle: p.stop,
      stopRestitution: p.restitution,
    },
    seal: { frictionTorque: p.seal, contactAngle: p.sealAngle },
    damper: { coefficient: p.damper, withinAngle: p.damperAngle },
    air: {
      density: p.airDensity,
      dragCoefficient: 1.18,
      swingFactor: p.swingFactor,
      windSpeed: p.wind,
      pressureDifference: p.pressure,
    },
  };
  const body = {
    plateMass: 0.4,
    mass: 0.4,
    firstMoment: p.firstMoment,
    inertia: p.inertia,
    reach: 0.37,
    hingeOffset: 0.01,
    width: 0.28,
    smallAnglePeriod: 1,
  };
  // Only these sections are read; the rest of a door has no part in a swing.
  return swingSystem(door as unknown as Parameters<typeof swingSystem>[0], body, p.magnets, p.capture);
}

/** One facing pair a side, 10 mm × 4 mm, 5 mm apart, 34 cm below the hinge. */
export const PAIR: Magnets = {
  arrangement: "jamb",
  sides: 1,
  perSide: 1,
  pitch: si(0.025),
  polarity: "like",
  force: "attract",
  diameter: si(0.01),
  thickness: si(0.004),
  remanence: si(1.2),
  gap: si(0.005),
  distanceFromHinge: si(0.34),
  temperature: si(20),
};

export function pairTable(changes: Partial<Magnets> = {}, stop = 3): TorqueTable {
  return torqueTable({ ...PAIR, ...changes }, stop);
}

export interface Ran {
  readonly swing: Swing;
  readonly trace: Trace;
  readonly system: SwingSystem;
}

export function ran(changes: Partial<Plain>, angle: number, speed = 0): Ran {
  const made = system(changes);
  const run = new SwingRun(new Motion(), new Trace());
  return { swing: run.run(made, angle, speed), trace: run.trace, system: made };
}

/** Angles and times at which the flap turned round, in order, the let-go not among them. */
export function turns({ trace }: Ran): { time: number; angle: number }[] {
  const found: { time: number; angle: number }[] = [];
  for (let i = 1; i < trace.count; i++) {
    if (trace.startSpeed(i) === 0) found.push({ time: trace.times[i], angle: trace.startAngle(i) });
  }
  return found;
}

/** How far the ledger is from closing, J. */
export function imbalance({ ledger }: Swing): number {
  const { initial, hinge, viscous, seal, air, stops, left } = ledger;
  return initial - (hinge + viscous + seal + air + stops + left);
}
