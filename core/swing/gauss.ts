/**
 * Gauss–Legendre points on [0, 1] and what collocation needs of them: weights of the integral over the whole, integrals up
 * to each point, and the Legendre coefficients of the polynomial through values at the points (Abramowitz and Stegun
 * 25.4.30 and ch. 22). Made once by the textbook formulas, not copied from a table.
 */

/** Points of a stretch: the integral over the whole is exact for polynomials of degree 2·10 − 1. */
export const POINTS = 10;

/** Legendre's P_0…P_degree at z, by their three-term recurrence (22.7.10). */
function legendre(degree: number, z: number): number[] {
  const values = [1, z];
  for (let k = 2; k <= degree; k++) {
    values.push(((2 * k - 1) * z * values[k - 1] - (k - 1) * values[k - 2]) / k);
  }
  return values;
}

/** Derivative of P_degree at |z| < 1 (22.8.5). */
function legendreSlope(degree: number, z: number): number {
  const p = legendre(degree, z);
  return (degree * (z * p[degree] - p[degree - 1])) / (z * z - 1);
}

/** Root number `i` of P_POINTS, the greatest first: Newton's method from the asymptotic guess (22.16.6). */
function legendreRoot(i: number): number {
  let z = Math.cos((Math.PI * (i + 0.75)) / (POINTS + 0.5));
  for (let step = 0; step < 8; step++) z -= legendre(POINTS, z)[POINTS] / legendreSlope(POINTS, z);
  return z;
}

const ROOTS = Array.from({ length: POINTS }, (_, i) => -legendreRoot(i));

/** Points in rising order. */
export const POINT = Float64Array.from(ROOTS, (z) => (1 + z) / 2);
/** Weights of the integral from 0 to 1. */
export const WEIGHT = Float64Array.from(ROOTS, (z) => 1 / ((1 - z * z) * legendreSlope(POINTS, z) ** 2));

/** Integrals of P_0…P_(POINTS−1), as functions of 2u − 1, from 0 to u (22.7.10 integrated). */
export function legendreIntegrals(u: number): number[] {
  const p = legendre(POINTS, 2 * u - 1);
  return Array.from({ length: POINTS }, (_, k) => (k === 0 ? u : (p[k + 1] - p[k - 1]) / (2 * (2 * k + 1))));
}

/** Row k, column j: share of the value at point j in the coefficient of P_k. */
export const COEFFICIENT = Float64Array.from({ length: POINTS * POINTS }, (_, at) => {
  const [k, j] = [Math.floor(at / POINTS), at % POINTS];
  return (2 * k + 1) * WEIGHT[j] * legendre(POINTS, ROOTS[j])[k];
});

/** Row i, column j: share of the value at point j in the integral from 0 to point i. */
const INTEGRAL = Float64Array.from({ length: POINTS * POINTS }, (_, at) => {
  const [i, j] = [Math.floor(at / POINTS), at % POINTS];
  return legendreIntegrals(POINT[i]).reduce((sum, value, k) => sum + value * COEFFICIENT[k * POINTS + j], 0);
});

/** Points on one side of the middle. */
const PAIRS = POINTS / 2;

/**
 * The points lie mirrored about the middle, so that half the multiplications do: with d_j = f_j − f_mirror(j) and
 * s_j = f_j + f_mirror(j), the integrals up to point i and up to its mirror image are (whole/2 + Σ mean_ij d_j) ∓ Σ half_ij s_j.
 * Row i holds mean_i1…5, then half_i1…5.
 */
const BY_PAIRS = Float64Array.from({ length: PAIRS * POINTS }, (_, at) => {
  const [i, j] = [Math.floor(at / POINTS), at % PAIRS];
  const here = INTEGRAL[i * POINTS + j];
  const mirrored = INTEGRAL[i * POINTS + POINTS - 1 - j];
  return (at % POINTS < PAIRS ? here - mirrored : WEIGHT[j] - mirrored - here) / 2;
});

/**
 * Integrals from 0 to each point of the polynomial through the values `f`, into `integrals`; returns the whole from 0 to 1.
 * Written out over the five pairs: their sums and differences stay in registers.
 */
export function integrate(f: Float64Array, integrals: Float64Array): number {
  const d0 = f[0] - f[9];
  const d1 = f[1] - f[8];
  const d2 = f[2] - f[7];
  const d3 = f[3] - f[6];
  const d4 = f[4] - f[5];
  const s0 = f[0] + f[9];
  const s1 = f[1] + f[8];
  const s2 = f[2] + f[7];
  const s3 = f[3] + f[6];
  const s4 = f[4] + f[5];
  const whole = WEIGHT[0] * s0 + WEIGHT[1] * s1 + WEIGHT[2] * s2 + WEIGHT[3] * s3 + WEIGHT[4] * s4;
  const c = BY_PAIRS;
  for (let i = 0, r = 0; i < 5; i++, r += 10) {
    const mean = 0.5 * whole + (c[r] * d0 + c[r + 1] * d1) + (c[r + 2] * d2 + c[r + 3] * d3 + c[r + 4] * d4);
    const half = c[r + 5] * s0 + c[r + 6] * s1 + (c[r + 7] * s2 + c[r + 8] * s3 + c[r + 9] * s4);
    integrals[i] = mean - half;
    integrals[9 - i] = mean + half;
  }
  return whole;
}

/** Shares of a value in the last two Legendre coefficients: one odd about the middle, one even. */
const LAST_ODD = COEFFICIENT.slice((POINTS - 1) * POINTS);
const LAST_EVEN = COEFFICIENT.slice((POINTS - 2) * POINTS, (POINTS - 1) * POINTS);

/** Size of the last two Legendre coefficients of the polynomial through the values `f`. */
export function lastTerms(f: Float64Array): number {
  let odd = 0;
  let even = 0;
  for (let j = 0; j < 5; j++) {
    odd += LAST_ODD[j] * (f[j] - f[9 - j]);
    even += LAST_EVEN[j] * (f[j] + f[9 - j]);
  }
  return Math.abs(odd) + Math.abs(even);
}

/** The polynomial through values at the points, and its integral from 0: read at one place after another. */
export class PointPolynomial {
  /** At the last place read. */
  value = 0;
  integral = 0;
  private readonly terms = new Float64Array(POINTS);

  /** Takes the values at the points from `values`, the first at `offset`. */
  take(values: Float64Array, offset: number): void {
    for (let k = 0, at = 0; k < POINTS; k++) {
      let sum = 0;
      for (let j = 0; j < POINTS; j++, at++) sum += COEFFICIENT[at] * values[offset + j];
      this.terms[k] = sum;
    }
  }

  /** Reads at u from 0 to 1: the terms times P_k and their integrals, P_k by recurrence as in `legendre`. */
  read(u: number): void {
    const { terms } = this;
    const z = 2 * u - 1;
    let before = 1;
    let now = z;
    let value = terms[0];
    let integral = terms[0] * u;
    for (let k = 1; k < POINTS; k++) {
      const next = ((2 * k + 1) * z * now - k * before) / (k + 1);
      value += terms[k] * now;
      integral += (terms[k] * (next - before)) / (2 * (2 * k + 1));
      before = now;
      now = next;
    }
    this.value = value;
    this.integral = integral;
  }
}
