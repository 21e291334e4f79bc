/** The swing against two public ODE libraries on smooth stretches: between the let-go and the first turning point. */
import { createRequire } from "node:module";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import { acceleration } from "../../../core/swing/fields.ts";
import { type Plain, pairTable, type Ran, ran, turns } from "./systems.ts";

/** odex; its types are TypeScript source that stricter settings refuse. */
const { Solver } = createRequire(import.meta.url)("odex") as {
  Solver: new (
    size: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    maxSteps: number;
    solve(f: (x: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[] };
  };
};

type Derivative = (t: number, y: number[]) => number[];

function byOdex(f: Derivative, end: number): number[] {
  const solver = new Solver(2);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-11;
  solver.maxSteps = 1e6;
  return solver.solve(f, 0, [1, 0], end).y;
}

/** mathjs' own solver; its published types leave it out. */
const math = create(all, {}) as unknown as {
  solveODE(
    f: Derivative,
    span: [number, number],
    start: number[],
    options: { method: string; tol: number; maxStep: number },
  ): { t: number[]; y: number[][] };
};

const CASES: [string, Partial<Plain>][] = [
  ["dry friction and still air", { hinge: 0.01, airDensity: 1.204 }],
  ["viscous damping", { viscous: 0.02 }],
  ["out of plumb in a wind with a swing factor", { plumb: 0.03, wind: 2, airDensity: 1.204, swingFactor: 2 }],
  ["magnets", { hinge: 0.004, viscous: 0.003, magnets: pairTable() }],
];

/** Right side of the first half swing, sign of friction fixed. */
function firstHalf({ system }: Ran): Derivative {
  const forces = { sign: -1, damping: system.damping[0], friction: system.friction[0] };
  return (_t, [angle, speed]) => [speed, acceleration(system, forces, angle, speed)];
}

describe("the first half swing", () => {
  test.each(CASES)("against odex: %s", (_name, changes) => {
    const one = ran(changes, 1);
    const end = turns(one)[0].time;
    const state = { time: 0, angle: 0, speed: 0 };
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.95]) {
      const [angle, speed] = byOdex(firstHalf(one), share * end);
      one.trace.at(one.system, share * end, state);
      expect(state.angle).toBeCloseTo(angle, 6);
      expect(state.speed).toBeCloseTo(speed, 5);
    }
    expect(byOdex(firstHalf(one), end)[1]).toBeCloseTo(0, 5);
  });

  test.each(CASES)("against mathjs solveODE: %s", (_name, changes) => {
    const one = ran(changes, 1);
    const f = firstHalf(one);
    const end = 0.6 * turns(one)[0].time;
    const { t, y } = math.solveODE((time: number, now: number[]) => f(time, now), [0, end], [1, 0], {
      method: "RK45",
      tol: 1e-9,
      maxStep: end / 20,
    });
    const state = { time: 0, angle: 0, speed: 0 };
    one.trace.at(one.system, t[t.length - 1], state);
    expect(state.angle).toBeCloseTo(y[y.length - 1][0], 5);
    expect(state.speed).toBeCloseTo(y[y.length - 1][1], 4);
  });
});
