/**
 * Numbers as people write them: decimals, "3/8", "1 3/8", "1-3/8", "½". Given back as exact fractions.
 */
import { add, fromDecimal, multiply, type Rational } from "./rational.ts";

export interface LeadingNumber {
  readonly value: Rational;
  /** What follows the number, trimmed. */
  readonly rest: string;
}

const DECIMAL = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(.*)$/is;
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)(?!\.?\d)(.*)$/s;

/** The number a text starts with; null where it starts with none, "infinite" for 1e400 or a division by zero. */
export function leadingNumber(text: string): LeadingNumber | null | "infinite" {
  return fractionAtStart(text) ?? decimalAtStart(text);
}

function fractionAtStart(text: string): LeadingNumber | null | "infinite" {
  const match = FRACTION.exec(text);
  if (match === null) return null;
  const [, sign, whole = "0", over, under, rest] = match;
  if (/^0+$/.test(under)) return "infinite";
  const size = add(fromDecimal(whole), { n: BigInt(over), d: BigInt(under) });
  const value = sign === "-" ? multiply(size, { n: -1n, d: 1n }) : size;
  return { value, rest: rest.trim() };
}

function decimalAtStart(text: string): LeadingNumber | null | "infinite" {
  const match = DECIMAL.exec(text);
  if (match === null) return null;
  const [, digits, rest] = match;
  const nearest = Number(digits);
  if (!Number.isFinite(nearest)) return "infinite";
  // Below the least double the text reads as zero; its exponent could be of any length.
  const value = nearest === 0 ? { n: 0n, d: 1n } : fromDecimal(digits);
  return { value, rest: rest.trim() };
}

const VULGAR = /[¼½¾⅐-⅞]/g;
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** Brings the spellings people and keyboards produce to one: µ and μ, Ω, °, ·, superscripts, primes, ½, −. */
export function plainSpelling(text: string): string {
  return text
    .replace(VULGAR, (sign) => ` ${sign.normalize("NFKD").replace("⁄", "/")}`)
    .replace(/[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+/g, (run) => `^${[...run].map(plainDigit).join("")}`)
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/[\u03a9\u2126]/g, "ohm")
    .replace(/\u2103/g, "degC")
    .replace(/\u2109/g, "degF")
    .replace(/\u00b0\s*([CF])\b/g, "deg$1")
    .replace(/\u00b0/g, " deg")
    .replace(/[\u00b7\u22c5\u2219\u00d7]/g, "*")
    .replace(/[\u2212\u2013]/g, "-")
    .replace(/[\u2033\u201d]/g, '"')
    .replace(/[\u2032\u2019]/g, "'")
    .replace(/\s+/g, " ")
    .trim();
}

function plainDigit(sign: string): string {
  return sign === "⁻" ? "-" : String(SUPERSCRIPTS.indexOf(sign));
}
