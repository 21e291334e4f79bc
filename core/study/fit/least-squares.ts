/**
 * Least squares with limits and a robust loss: Levenberg and Marquardt's method (Marquardt, J. SIAM 11 (1963) 431) on
 * residuals weighted by Huber's rule (Huber, Robust Statistics, 1981, ch. 7), limits kept by an active set.
 */
import { CholeskyDecomposition, Matrix } from "ml-matrix";

/** Residuals as a function of parameters. Rows of the Jacobian are residuals, `size` numbers each. */
export interface Problem {
  /** Number of residuals and of parameters. */
  readonly count: number;
  readonly size: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Typical sizes of the parameters. */
  readonly scale: Float64Array;
  /** Model less measurement at `p`, into `out`. */
  residuals(p: Float64Array, out: Float64Array): void;
  /** Their derivatives at `p`, where the residuals are `r`. */
  jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void;
}

export interface Fitted {
  readonly p: Float64Array;
  readonly residuals: Float64Array;
  /** At `p`. */
  readonly jacobian: Float64Array;
  /** Scale of the residuals that the robust weights used. */
  readonly spread: number;
  /** Robust cost in units of the residuals' square. */
  readonly cost: number;
  readonly converged: boolean;
  readonly iterations: number;
}

/** Huber's constant: 95 % efficient where the noise is normal. */
export const HUBER = 1.345;
/** Median absolute deviation to standard deviation of a normal distribution: 1/Φ⁻¹(3/4). */
const MAD_TO_SIGMA = 1.4826;

/** Robust standard deviation of residuals about 0: from their median size. */
export function robustSpread(residuals: Float64Array): number {
  const sizes = residuals.map(Math.abs).sort();
  const { length } = sizes;
  const middle = length >> 1;
  const median = length % 2 === 1 ? sizes[middle] : (sizes[middle - 1] + sizes[middle]) / 2;
  return MAD_TO_SIGMA * median;
}

/** Σ ρ(r) with Huber's ρ: r²/2 up to k s, then straight. */
function hubersCost(residuals: Float64Array, spread: number): number {
  const edge = HUBER * spread;
  let sum = 0;
  for (const r of residuals) {
    const size = Math.abs(r);
    sum += size <= edge ? 0.5 * r * r : edge * (size - 0.5 * edge);
  }
  return sum;
}

export interface Options {
  /** Fixed scale of the residuals; without it the median size of the residuals gives it, anew each round. */
  readonly spread?: number;
  readonly rounds?: number;
  readonly iterations?: number;
  /** Ends where a step is below this many typical sizes. */
  readonly tolerance?: number;
}

/** A residual spread below this share of the largest residual at the start is rounding: keeps an exact fit going. */
const LEAST_SPREAD = 1e-9;

/** Minimises the robust cost from `start`. */
export function fitted(problem: Problem, start: Float64Array, options: Options = {}): Fitted {
  const { rounds = options.spread === undefined ? 3 : 1 } = options;
  const residuals = new Float64Array(problem.count);
  problem.residuals(start, residuals);
  const least = LEAST_SPREAD * Math.max(1e-300, ...residuals.map(Math.abs));
  let spread = options.spread ?? Math.max(least, robustSpread(residuals));
  let result = descend(problem, start, spread, options);
  let iterations = result.iterations;
  for (let round = 1; round < rounds; round++) {
    const next = Math.max(least, robustSpread(result.residuals));
    if (Math.abs(next - spread) < 0.01 * spread) break;
    spread = next;
    result = descend(problem, result.p, spread, options);
    iterations += result.iterations;
  }
  return { ...result, spread, iterations };
}

/** One descent with the weights' scale held. */
function descend(problem: Problem, start: Float64Array, spread: number, options: Options): Fitted {
  const { count, size, scale } = problem;
  const { iterations = 30, tolerance = 1e-6 } = options;
  const jacobian = new Float64Array(count * size);
  let p: Float64Array = Float64Array.from(start, (x, i) =>
    Math.max(problem.lower[i], Math.min(problem.upper[i], x)),
  );
  let r: Float64Array = new Float64Array(count);
  problem.residuals(p, r);
  let cost = hubersCost(r, spread);
  let damping = 1e-3;
  let converged = false;
  let done = 0;
  while (done < iterations && !converged) {
    done++;
    problem.jacobian(p, r, jacobian);
    const normal = normalEquations(problem, jacobian, r, spread);
    let moved = false;
    for (let tries = 0; tries < 8 && !moved; tries++) {
      const trial = boundedStep(problem, p, normal, damping);
      const trialResiduals = new Float64Array(count);
      problem.residuals(trial.p, trialResiduals);
      const trialCost = hubersCost(trialResiduals, spread);
      const far = Math.max(...trial.step.map((s, i) => Math.abs(s) / scale[i]));
      if (trialCost <= cost) {
        moved = true;
        converged = far < tolerance || cost - trialCost < 1e-9 * cost;
        [p, r, cost] = [trial.p, trialResiduals, trialCost];
        damping = Math.max(1e-12, damping / 8);
      } else {
        if (far < tolerance) break;
        damping *= 6;
      }
    }
    if (!moved) converged = true;
  }
  problem.jacobian(p, r, jacobian);
  return { p, residuals: r, jacobian, spread, cost, converged, iterations: done };
}

interface Normal {
  /** JᵀWJ, row by row, and JᵀWr. */
  readonly matrix: Float64Array;
  readonly gradient: Float64Array;
}

function normalEquations(
  { count, size }: Problem,
  jacobian: Float64Array,
  r: Float64Array,
  spread: number,
): Normal {
  const matrix = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  const edge = HUBER * spread;
  for (let row = 0; row < count; row++) {
    const at = row * size;
    const weight = Math.abs(r[row]) <= edge ? 1 : edge / Math.abs(r[row]);
    for (let i = 0; i < size; i++) {
      const w = weight * jacobian[at + i];
      gradient[i] += w * r[row];
      for (let j = 0; j <= i; j++) matrix[i * size + j] += w * jacobian[at + j];
    }
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) matrix[j * size + i] = matrix[i * size + j];
  return { matrix, gradient };
}

/** The damped step from `p`, limits kept: a parameter at a limit and pushed past it takes no part. */
function boundedStep(
  { size, lower, upper }: Problem,
  p: Float64Array,
  { matrix, gradient }: Normal,
  damping: number,
): { p: Float64Array; step: Float64Array } {
  const free = Array.from({ length: size }, (_, i) => i).filter(
    (i) => !((p[i] <= lower[i] && gradient[i] > 0) || (p[i] >= upper[i] && gradient[i] < 0)),
  );
  const step = new Float64Array(size);
  let moving = free;
  // A step over a limit ends at it, and the others are worked out again without it.
  for (let pass = 0; pass <= size && moving.length > 0; pass++) {
    const solved = solve(matrix, gradient, size, moving, step, damping);
    moving.forEach((i, k) => {
      step[i] = solved[k];
    });
    const over = moving.filter((i) => p[i] + step[i] < lower[i] || p[i] + step[i] > upper[i]);
    if (over.length === 0) break;
    for (const i of over) step[i] = Math.max(lower[i], Math.min(upper[i], p[i] + step[i])) - p[i];
    moving = moving.filter((i) => !over.includes(i));
  }
  return { p: p.map((x, i) => Math.max(lower[i], Math.min(upper[i], x + step[i]))), step };
}

/** Steps of the `moving` parameters, the others' `step` being given. */
function solve(
  matrix: Float64Array,
  gradient: Float64Array,
  size: number,
  moving: readonly number[],
  step: Float64Array,
  damping: number,
): number[] {
  const still = Array.from({ length: size }, (_, i) => i).filter((i) => !moving.includes(i));
  const norm = moving.map((i) => Math.sqrt(matrix[i * size + i]) || 1);
  const a = Matrix.zeros(moving.length, moving.length);
  const b = Matrix.zeros(moving.length, 1);
  moving.forEach((i, k) => {
    moving.forEach((j, l) => {
      a.set(k, l, matrix[i * size + j] / (norm[k] * norm[l]) + (k === l ? damping : 0));
    });
    let right = -gradient[i];
    for (const j of still) right -= matrix[i * size + j] * step[j];
    b.set(k, 0, right / norm[k]);
  });
  const solved = new CholeskyDecomposition(a).solve(b).to1DArray();
  return solved.map((x, k) => x / norm[k]);
}
