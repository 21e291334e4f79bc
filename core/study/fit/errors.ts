/** How well fitted values are known: covariance of a robust fit, correlations, and what the parameters' directions share. */
import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { type Fitted, HUBER } from "./least-squares.ts";

export interface Covariance {
  /** Standard errors, infinite where the data say nothing. */
  readonly errors: Float64Array;
  /** Correlations, size × size. */
  readonly correlations: Float64Array;
  /** Ratio of the largest to the smallest singular value of the Jacobian with columns of one length. */
  readonly condition: number;
  /** The direction that the data say least about, in columns of one length: squares add to 1. */
  readonly weakest: Float64Array;
  readonly freedom: number;
  /** Robust standard deviation of one residual; the noise given, where it was. */
  readonly sigma: number;
}

/** A share of the largest eigenvalue below this is rounding of the derivatives. */
const ROUNDING = 1e-13;

/**
 * Covariance of a fit: σ² (JᵀJ)⁻¹ with Huber's correction for the robust loss (Huber 1981, eq. 7.6.6 without K), times what
 * residuals that follow each other add. `sigma`: a noise known beforehand, instead of the residuals' own.
 */
export function covariance(fit: Fitted, size: number, sigma?: number): Covariance {
  const { jacobian, residuals } = fit;
  const count = residuals.length;
  const norms = columnNorms(jacobian, count, size);
  const scaled = Matrix.zeros(size, size);
  for (let row = 0; row < count; row++) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        const add = (jacobian[row * size + i] / norms[i]) * (jacobian[row * size + j] / norms[j]);
        scaled.set(i, j, scaled.get(i, j) + add);
      }
    }
  }
  const eigen = new EigenvalueDecomposition(scaled, { assumeSymmetric: true });
  const values = eigen.realEigenvalues;
  const vectors = eigen.eigenvectorMatrix;
  const largest = Math.max(...values);
  const kept = values.map((v) => Math.max(v, ROUNDING * largest));
  const freedom = Math.max(0, count - size);
  const noise = sigma === undefined ? noiseVariance(residuals, fit.spread, freedom) : sigma * sigma;
  const variance = noise * (sigma === undefined ? persistence(residuals, HUBER * fit.spread) : 1);
  const inverse = (i: number, j: number) =>
    kept.reduce((sum, v, k) => sum + (vectors.get(i, k) * vectors.get(j, k)) / v, 0);
  const errors = Float64Array.from(
    { length: size },
    (_, i) => Math.sqrt(variance * inverse(i, i)) / norms[i],
  );
  const correlations = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      correlations[i * size + j] = inverse(i, j) / Math.sqrt(inverse(i, i) * inverse(j, j));
    }
  }
  const least = values.indexOf(Math.min(...values));
  return {
    errors,
    correlations,
    condition: Math.sqrt(largest / Math.max(Math.min(...values), 0)),
    weakest: Float64Array.from({ length: size }, (_, i) => vectors.get(i, least)),
    freedom,
    sigma: Math.sqrt(noise),
  };
}

function columnNorms(jacobian: Float64Array, count: number, size: number): Float64Array {
  const norms = new Float64Array(size);
  for (let row = 0; row < count; row++) {
    for (let i = 0; i < size; i++) norms[i] += jacobian[row * size + i] ** 2;
  }
  return norms.map((sum) => Math.sqrt(sum) || Number.MIN_VALUE ** 0.5);
}

/** Variance that stands for σ² in the covariance of a robust fit: (Σψ²/(n − p))/(mean ψ′)². */
function noiseVariance(residuals: Float64Array, spread: number, freedom: number): number {
  if (freedom === 0) return Number.POSITIVE_INFINITY;
  const edge = HUBER * spread;
  let squares = 0;
  let inside = 0;
  for (const r of residuals) {
    const size = Math.abs(r);
    squares += Math.min(size, edge) ** 2;
    if (size <= edge) inside++;
  }
  const share = inside / residuals.length;
  return squares / freedom / (share * share);
}

/**
 * How many residuals count as one because neighbours err alike: 1 + 2 Σ ρ_k over the lags up to the first that is not
 * clearly positive; at least 1.
 */
function persistence(residuals: Float64Array, edge: number): number {
  const n = residuals.length;
  const cut = residuals.map((r) => Math.max(-edge, Math.min(edge, r)));
  const power = cut.reduce((sum, r) => sum + r * r, 0);
  if (power === 0) return 1;
  let sum = 1;
  for (let lag = 1; lag < n / 4; lag++) {
    let product = 0;
    for (let i = lag; i < n; i++) product += cut[i] * cut[i - lag];
    const correlation = product / power;
    if (correlation < 2 / Math.sqrt(n)) break;
    sum += 2 * correlation;
  }
  return sum;
}

/** Student's t whose two tails hold `tails` together, at ν degrees of freedom: from the beta quantile (Abramowitz & Stegun 26.7.1). */
export function studentQuantile(tails: number, freedom: number): number {
  if (freedom <= 0) return Number.POSITIVE_INFINITY;
  const x = betaQuantile(tails, freedom / 2, 0.5);
  return Math.sqrt(freedom * (1 / x - 1));
}
