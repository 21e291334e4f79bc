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

/** Coefficients of routine PPND16 of algorithm AS 241 (Wichura, Applied Statistics 37 (1988) 477): centre, tails, far tails. */
const CENTRE = [
  [
    3.387132872796366608, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
    4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3,
  ],
  [
    1, 4.2313330701600911252e1, 6.871870074920579083e2, 5.3941960214247511077e3, 2.1213794301586595867e4,
    3.930789580009271061e4, 2.8729085735721942674e4, 5.226495278852854561e3,
  ],
] as const;
const TAIL = [
  [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
    1.27045825245236838258, 2.4178072517745061177e-1, 2.27238449892691845833e-2, 7.7454501427834140764e-4,
  ],
  [
    1, 2.05319162663775882187, 1.6763848301838038494, 6.8976733498510000455e-1, 1.4810397642748007459e-1,
    1.51986665636164571966e-2, 5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
] as const;
const FAR_TAIL = [
  [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 2.9656057182850489123e-1,
    2.6532189526576123093e-2, 1.2426609473880784386e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  [
    1, 5.9983220655588793769e-1, 1.3692988092273580531e-1, 1.48753612908506148525e-2, 7.868691311456132591e-4,
    1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
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
