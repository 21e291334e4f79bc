/**
 * Exact fractions of whole numbers. Units are defined exactly (1 in = 25.4 mm, 1 lbf = 4.4482216152605 N), so
 * text is converted without rounding until the last step: "12 in", "1 ft" and "304.8 mm" give the same bits.
 */
export interface Rational {
  readonly n: bigint;
  /** Above zero. */
  readonly d: bigint;
}

export const ONE: Rational = { n: 1n, d: 1n };

/** The fraction a decimal number's text stands for: "-1.5e-3" is −15/10000. The text must match `-?d*.?d*(e±d)?`. */
export function fromDecimal(text: string): Rational {
  const [mantissa, exponent = "0"] = text.toLowerCase().split("e");
  const [whole, fraction = ""] = mantissa.split(".");
  const digits = BigInt(`${whole.replace(/^[+-]/, "")}${fraction}` || "0");
  const power = Number(exponent) - fraction.length;
  const n = whole.startsWith("-") ? -digits : digits;
  return power < 0 ? { n, d: 10n ** BigInt(-power) } : { n: n * 10n ** BigInt(power), d: 1n };
}

/** The fraction a number's shortest decimal text stands for: 0.0254 is 254/10000. */
export function fromNumber(value: number): Rational {
  return fromDecimal(String(value));
}

export function multiply(a: Rational, b: Rational): Rational {
  return { n: a.n * b.n, d: a.d * b.d };
}

export function add(a: Rational, b: Rational): Rational {
  return { n: a.n * b.d + b.n * a.d, d: a.d * b.d };
}

export function negate(a: Rational): Rational {
  return { n: -a.n, d: a.d };
}

/** Whole powers; negative ones need a positive fraction. */
export function power(a: Rational, exponent: number): Rational {
  const size = BigInt(Math.abs(exponent));
  return exponent < 0 ? { n: a.d ** size, d: a.n ** size } : { n: a.n ** size, d: a.d ** size };
}

/** Bits kept before the last rounding: more than a double's 53, the last one standing for all that was cut off. */
const KEPT_BITS = 66;

/** The nearest double (ties to even, subnormals aside). */
export function toNumber({ n, d }: Rational): number {
  if (n < 0n) return -toNumber({ n: -n, d });
  if (n === 0n) return 0;
  const shift = KEPT_BITS - (bitLength(n) - bitLength(d));
  const top = shift > 0 ? n << BigInt(shift) : n;
  const bottom = shift > 0 ? d : d << BigInt(-shift);
  const quotient = top / bottom;
  const sticky = quotient * bottom === top ? 0n : 1n;
  return timesPowerOfTwo(Number(quotient | sticky), -shift);
}

function bitLength(value: bigint): number {
  return value.toString(16).length * 4;
}

/** In two steps, for 2^exponent alone may underflow. */
function timesPowerOfTwo(value: number, exponent: number): number {
  const half = Math.trunc(exponent / 2);
  return value * 2 ** half * 2 ** (exponent - half);
}
