/**
 * The Sobol' sequence (USSR Comput. Math. Math. Phys. 7 (1967) 86), 32 bits, in the order of Antonov and Saleev's Gray code as
 * Bratley and Fox print it (ACM Algorithm 659, ACM Trans. Math. Softw. 14 (1988) 88), with the direction numbers of Joe and Kuo.
 *
 * Scrambled by a random linear map of each coordinate's digits and a random digital shift (Matoušek, J. Complexity 14 (1998)
 * 527): every point by itself is uniform, every 2^k points stay as evenly spread as before, and different scramblings are
 * independent, so that their spread tells the error.
 */
import { DIRECTION_ROWS } from "./sobol-directions.ts";
import type { Uniform } from "./stream.ts";

const BITS = 32;
const ONE = 2 ** BITS;
/** Dimensions with direction numbers. */
export const SOBOL_DIMENSIONS = DIRECTION_ROWS.length + 1;

/** Direction integers v₁ … v₃₂ of a dimension from 0: vᵢ = mᵢ 2^(32 − i), by the recurrence of Bratley and Fox, eq. (2). */
export function sobolDirections(dimension: number): Uint32Array {
  const v = new Uint32Array(BITS);
  if (dimension === 0) return v.map((_, i) => 2 ** (BITS - 1 - i));
  const [polynomial, ...initial] = DIRECTION_ROWS[dimension - 1];
  const degree = initial.length;
  for (let i = 0; i < BITS; i++) {
    if (i < degree) v[i] = initial[i] * 2 ** (BITS - 1 - i);
    else {
      let next = v[i - degree] ^ (v[i - degree] >>> degree);
      for (let k = 1; k < degree; k++) {
        if (((polynomial >>> (degree - k)) & 1) === 1) next ^= v[i - k];
      }
      v[i] = next;
    }
  }
  return v;
}

/** A random map of digits: each digit of the result is that digit and a random sum of those before it. */
function scrambleDigits(directions: Uint32Array, uniform: Uniform): Uint32Array {
  const rows = Array.from({ length: BITS }, (_, row) => {
    const place = 2 ** (BITS - 1 - row);
    const before = ONE - 2 * place;
    return ((Math.floor(uniform() * ONE) & before) | place) >>> 0;
  });
  return directions.map((v) => rows.reduce((sum, row, i) => sum | (oddBits(row & v) << (BITS - 1 - i)), 0));
}

/** 1 where an odd number of bits is set. */
function oddBits(word: number): number {
  let w = word ^ (word >>> 16);
  w ^= w >>> 8;
  w ^= w >>> 4;
  w ^= w >>> 2;
  return (w ^ (w >>> 1)) & 1;
}

/** Points of the sequence in some dimensions, scrambled by random numbers or (without them) as published. */
export class SobolPoints {
  readonly dimensions: number;
  private readonly directions: Uint32Array[];
  private readonly shifts: Uint32Array;
  /** Published points are lattice points; scrambled ones lie in the middle of their cells, never at an end. */
  private readonly inset: number;

  constructor(dimensions: number, uniform: Uniform | null) {
    this.dimensions = dimensions;
    this.inset = uniform === null ? 0 : 0.5;
    const published = Array.from({ length: dimensions }, (_, d) => sobolDirections(d));
    this.directions = uniform === null ? published : published.map((v) => scrambleDigits(v, uniform));
    this.shifts = new Uint32Array(dimensions).map(() => (uniform === null ? 0 : uniform() * ONE));
  }

  /** Point `index`, from 0 to 2³² − 1, into the first places of `out`. */
  point(index: number, out: Float64Array): void {
    const { directions, shifts } = this;
    const gray = (index ^ (index >>> 1)) >>> 0;
    for (let d = 0; d < directions.length; d++) {
      let word = shifts[d];
      for (let rest = gray, i = 0; rest !== 0; rest >>>= 1, i++) {
        if ((rest & 1) === 1) word ^= directions[d][i];
      }
      out[d] = ((word >>> 0) + this.inset) / ONE;
    }
  }
}
