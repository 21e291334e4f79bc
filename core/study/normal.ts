/** The standard normal distribution: its quantile, and the quantile's inverse for the few places that cut a tail off. */

/** Quotient of two polynomials in x, coefficients from x⁰ up. */
function quotient(above: readonly number[], below: readonly number[], x: number): number {
  return polynomial(above, x) / polynomial(below, x);
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i];
  return sum;
}

/** Coefficients of routine PPND16 of algorithm AS 241 (Wichura, Applied Statistics 37 (1988) 477): centre, tails, far tails, to double precision. */
const CENTRE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
] as const;
const TAIL = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const FAR_TAIL = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;

/** z with Φ(z) = p, for p in (0, 1): to about 16 digits (AS 241). −∞ and +∞ at the ends. */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * quotient(CENTRE[0], CENTRE[1], 0.180625 - q * q);
  const tail = q < 0 ? p : 1 - p;
  if (tail <= 0) return q < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const r = Math.sqrt(-Math.log(tail));
  const z = r <= 5 ? quotient(TAIL[0], TAIL[1], r - 1.6) : quotient(FAR_TAIL[0], FAR_TAIL[1], r - 5);
  return q < 0 ? -z : z;
}

/** Φ(z), by halving the quantile's argument: for the few places that need it once, not for inner loops. */
export function normalProbability(z: number): number {
  if (z > 0) return 1 - normalProbability(-z);
  if (z < -37) return 0;
  let low = 0;
  let high = 0.5;
  for (let i = 0; i < 200 && high - low > 1e-17 * high; i++) {
    const middle = (low + high) / 2;
    if (normalQuantile(middle) < z) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
