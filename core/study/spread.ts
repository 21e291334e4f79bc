/** How one input spreads about its nominal value, as a quantile function: a uniform number in, a value out. */
import type { Tolerance } from "../door/door.ts";
import { normalProbability, normalQuantile } from "./normal.ts";

/** Ends of what is physical, SI. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** A spread placed about its nominal value; a text tolerance is ± 2 σ, normal (model, section 7). */
export interface Spread {
  readonly shape: "normal" | "uniform" | "triangular";
  /** Normal: the ± 2 σ points. Otherwise: the ends. The nominal is the triangle's top and need not be the middle. */
  readonly low: number;
  readonly high: number;
  readonly nominal: number;
  /**
   * Share of the whole spread below the least and the greatest physical value. Drawing from between them is the same as
   * drawing again until the value is physical, with one uniform number per value.
   */
  readonly from: number;
  readonly to: number;
  readonly limits: Limits;
}

/**
 * The spread of a tolerance about `nominal`: `null` where it neither spreads nor moves the value, "unphysical" where no
 * value of it lies within the limits.
 */
export function spreadOf(
  tolerance: Tolerance,
  nominal: number,
  limits: Limits,
): Spread | null | "unphysical" {
  const scale = tolerance.relative ? Math.abs(nominal) : 1;
  const [below, above] =
    "twoSigma" in tolerance ? [-tolerance.twoSigma, tolerance.twoSigma] : [tolerance.low, tolerance.high];
  const low = nominal + scale * below;
  const high = nominal + scale * above;
  const whole = { shape: tolerance.shape, low, high, nominal, from: 0, to: 1, limits };
  if (low === nominal && high === nominal) return null;
  if (low === high) return low < limits.low || low > limits.high ? "unphysical" : whole;
  const from = shareBelow(whole, limits.low);
  const to = shareBelow(whole, limits.high);
  return to > from ? { ...whole, from, to } : "unphysical";
}

/** Value below which the share u of the physical part lies, u in (0, 1). */
export function spreadValue(spread: Spread, u: number): number {
  const { limits, from, to } = spread;
  const value = quantile(spread, from + u * (to - from));
  return Math.max(limits.low, Math.min(limits.high, value));
}

function quantile(spread: Spread, p: number): number {
  const { low, high, shape } = spread;
  if (shape === "uniform") return low + p * (high - low);
  if (shape === "normal") return (low + high) / 2 + ((high - low) / 4) * normalQuantile(p);
  return triangularQuantile(low, top(spread), high, p);
}

/** The triangle's top: the nominal value, or the nearer end where the offsets leave it out. */
function top({ low, high, nominal }: Spread): number {
  return Math.max(low, Math.min(high, nominal));
}

function triangularQuantile(low: number, mode: number, high: number, p: number): number {
  const width = high - low;
  if (p * width <= mode - low) return low + Math.sqrt(p * width * (mode - low));
  return high - Math.sqrt((1 - p) * width * (high - mode));
}

/** Share of the whole spread below a value. */
function shareBelow(spread: Spread, value: number): number {
  const { low, high, shape } = spread;
  if (shape === "normal") return normalProbability((4 * (value - (low + high) / 2)) / (high - low));
  if (value <= low) return 0;
  if (value >= high) return 1;
  if (shape === "uniform") return (value - low) / (high - low);
  const mode = top(spread);
  const width = high - low;
  if (value <= mode) return (value - low) ** 2 / (width * (mode - low));
  return 1 - (high - value) ** 2 / (width * (high - mode));
}
