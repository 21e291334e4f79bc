/** The two public ODE libraries of the npm registry as integrators of a swing. */
import { createRequire } from "node:module";
import { all, create } from "mathjs";
import type { Derivative, PeerIntegrator } from "./peer-swing.ts";

/** Far beyond any piece: the caller stops it. */
const FAR = 1000;

interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  denseOutput: boolean;
  maxSteps: number;
  initialStepSize: number;
  solve(
    f: Derivative,
    from: number,
    y: number[],
    to: number,
    each: (
      n: number,
      a: number,
      b: number,
      y: number[],
      at: (component: number, t: number) => number,
    ) => boolean,
  ): unknown;
}

const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (size: number) => OdexSolver };

/** odex (Hairer and Wanner's extrapolation code) with its own dense output. */
export function odexAt(tolerance: number): PeerIntegrator {
  return (f, t, y, stop) => {
    const solver = new Solver(2);
    solver.absoluteTolerance = tolerance;
    solver.relativeTolerance = tolerance;
    solver.denseOutput = true;
    solver.maxSteps = 1e6;
    solver.solve(f, t, y, t + FAR, (n, from, to, _y, at) => {
      if (n === 1) return true;
      return !stop({ from, to, at: (time) => [at(0, time), at(1, time)] });
    });
  };
}

const math = create(all, {}) as unknown as {
  solveODE(
    f: Derivative,
    span: [number, number],
    start: number[],
    options: { method: string; tol: number },
  ): { t: number[]; y: number[][] };
};

/**
 * mathjs solveODE (Runge–Kutta 4(5)). It has no events and no dense output: it is asked for short stretches, and inside the
 * one that hides an event again from that stretch's start, as often as the search needs.
 */
export function mathjsAt(tolerance: number, stretch: number): PeerIntegrator {
  const carry = (f: Derivative, t: number, y: number[], to: number): number[] => {
    if (to === t) return y;
    const solved = math.solveODE(f, [t, to], y, { method: "RK45", tol: tolerance });
    return solved.y[solved.y.length - 1];
  };
  return (f, start, first, stop) => {
    let [t, y] = [start, first];
    for (let i = 0; i < 1e5; i++) {
      const [from, base] = [t, y];
      const to = from + stretch;
      const end = carry(f, from, base, to);
      const at = (time: number) =>
        (time === to ? end : carry(f, from, base, time)) as unknown as readonly [number, number];
      if (stop({ from, to, at })) return;
      [t, y] = [to, end];
    }
  };
}
