/**
 * Arrow keys in an entry: the number a little up or down, in the unit and the manner it is written in.
 *
 * The step: whole inches and fractions go by 1/16 in (finer where a finer fraction stands there); decimals by one in
 * their last place; other whole numbers by a tenth of their power of ten (24 by 1, 470 by 10, 6 by 0.1).
 */

/** How much of a step: with Shift ten times, with Alt a tenth. */
export type Reach = "usual" | "far" | "near";

const FACTORS: Readonly<Record<Reach, number>> = { usual: 1, far: 10, near: 0.1 };

const FRACTION = /^(\s*)([+\-−]?)\s*(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)(?![\d.])(.*)$/s;
const DECIMAL = /^(\s*)([+\-−]?)\s*(\d+)(?:\.(\d*))?(?![\d.])(.*)$/s;
const INCHES = /^\s*(in|inch|inches|"|″)\s*$/i;
const COARSEST_INCH = 16;

/** The entry one step up (+1) or down (−1); `null` where it does not start with a number. */
export function nudge(text: string, direction: 1 | -1, reach: Reach = "usual"): string | null {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) return nudgeFraction(fraction, direction, reach);
  const decimal = DECIMAL.exec(text);
  if (decimal === null) return null;
  if (decimal[4] === undefined && INCHES.test(decimal[5])) return nudgeInches(decimal, direction, reach);
  return nudgeDecimal(decimal, direction, reach);
}

const signOf = (sign: string): 1 | -1 => (sign === "-" || sign === "−" ? -1 : 1);

function nudgeFraction(match: RegExpExecArray, direction: 1 | -1, reach: Reach): string | null {
  const [, space, sign, whole = "0", over, under, rest] = match;
  const parts = Number(under);
  if (parts === 0) return null;
  const value = signOf(sign) * (Number(whole) * parts + Number(over));
  return space + asFraction(value, parts, direction, reach) + rest;
}

function nudgeInches(match: RegExpExecArray, direction: 1 | -1, reach: Reach): string {
  const [, space, sign, whole, , rest] = match;
  return space + asFraction(signOf(sign) * Number(whole), 1, direction, reach) + rest;
}

/** `value`/`parts` and one step, with the least power of two of parts that holds both. */
function asFraction(value: number, parts: number, direction: 1 | -1, reach: Reach): string {
  const powerOfTwo = Number.isInteger(Math.log2(parts));
  const least = powerOfTwo ? Math.max(parts, reach === "near" ? 64 : COARSEST_INCH) : parts;
  const step = reach === "far" ? Math.max(1, least / 2) : 1;
  return fractionText((value * least) / parts + direction * step, least);
}

function fractionText(parts: number, under: number): string {
  const size = Math.abs(parts);
  const shared = greatestDivisor(size % under, under);
  const whole = Math.floor(size / under);
  const over = size % under;
  const fraction = over === 0 ? "" : `${over / shared}/${under / shared}`;
  const number = [whole > 0 || over === 0 ? String(whole) : "", fraction].filter((p) => p !== "").join(" ");
  return parts < 0 ? `-${number}` : number;
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

function nudgeDecimal(match: RegExpExecArray, direction: 1 | -1, reach: Reach): string {
  const [, space, sign, whole, decimals, rest] = match;
  const value = signOf(sign) * Number(`${whole}.${decimals ?? "0"}`);
  const step = stepOf(value, decimals, direction) * FACTORS[reach];
  const places = Math.max(decimals?.length ?? 0, placesOf(step));
  const next = value + direction * step;
  const text = next.toFixed(places);
  return space + (Number(text) === 0 ? text.replace("-", "") : text) + rest;
}

function stepOf(value: number, decimals: string | undefined, direction: 1 | -1): number {
  if (decimals !== undefined && decimals !== "") return 10 ** -decimals.length;
  if (value === 0) return 1;
  const power = Math.floor(Math.log10(Math.abs(value)) + 1e-12);
  // 100 goes down to 99, which goes up to 100 again.
  const shrinks = power >= 2 && Math.abs(value) === 10 ** power && value * direction < 0;
  return 10 ** (shrinks ? power - 2 : power - 1);
}

function placesOf(step: number): number {
  return Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
}
