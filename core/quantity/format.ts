/**
 * SI numbers as text for people, in a builder's units. What it writes, `parseQuantity` reads back to the digits shown.
 */
import type { Dimension } from "./dimensions.ts";

export type UnitSystem = "metric" | "inch";

/** A unit to write in: SI units in one of it, and the least magnitude (SI) it is used from. */
interface Scale {
  readonly text: string;
  readonly si: number;
  readonly from: number;
  readonly everyday: boolean;
  /** Added after division: temperatures on scales of their own. */
  readonly shift?: number;
}

const INCH = 0.0254;
const OUNCE = 0.028349523125;
const OUNCE_FORCE = 4.4482216152605 / 16;
const DEGREE = Math.PI / 180;

/** Largest unit first. The starred one is the trade's everyday unit; a zero is written in it. */
const METRIC: Readonly<Record<Dimension, readonly Scale[]>> = {
  length: [scale("m", 1, 10), scale("cm", 0.01, 0.1), scale("*mm", 0.001)],
  mass: [scale("kg", 1), scale("*g", 0.001)],
  time: [scale("*s", 1, 0.1), scale("ms", 0.001)],
  angle: [scale("*°", DEGREE)],
  angularSpeed: [scale("*°/s", DEGREE)],
  speed: [scale("*m/s", 1)],
  density: [scale("*kg/m³", 1)],
  torque: [scale("N m", 1), scale("*mN m", 1e-3)],
  angularDamping: [scale("N m s/rad", 1), scale("*mN m s/rad", 1e-3)],
  force: [scale("*N", 1, 0.1), scale("mN", 1e-3)],
  pressure: [scale("kPa", 1e3), scale("*Pa", 1)],
  fluxDensity: [scale("*T", 1, 0.1), scale("mT", 1e-3)],
  temperature: [scale("*°C", 1)],
  temperatureDifference: [scale("*K", 1)],
  voltage: [scale("*V", 1, 0.1), scale("mV", 1e-3)],
  current: [scale("A", 1), scale("*mA", 1e-3), scale("µA", 1e-6)],
  resistance: [scale("MΩ", 1e6), scale("kΩ", 1e3), scale("*Ω", 1, 0.1), scale("mΩ", 1e-3)],
  inductance: [scale("H", 1), scale("*mH", 1e-3), scale("µH", 1e-6)],
  capacitance: [
    scale("F", 1),
    scale("mF", 1e-3, 1e-2),
    scale("*µF", 1e-6),
    scale("nF", 1e-9),
    scale("pF", 1e-12),
  ],
  thermalResistance: [scale("*K/W", 1)],
  ratio: [scale("*%", 0.01)],
};

const INCHES: Partial<typeof METRIC> = {
  length: [scale("ft", 12 * INCH, 3), scale("*in", INCH)],
  mass: [scale("lb", 16 * OUNCE), scale("*oz", OUNCE)],
  speed: [scale("*ft/s", 12 * INCH)],
  density: [scale("*lb/ft³", (16 * OUNCE) / (12 * INCH) ** 3)],
  torque: [scale("lbf in", 16 * OUNCE_FORCE * INCH), scale("*ozf in", OUNCE_FORCE * INCH)],
  angularDamping: [
    scale("lbf in s/rad", 16 * OUNCE_FORCE * INCH),
    scale("*ozf in s/rad", OUNCE_FORCE * INCH),
  ],
  force: [scale("*lbf", 16 * OUNCE_FORCE), scale("ozf", OUNCE_FORCE)],
  pressure: [scale("psi", (16 * OUNCE_FORCE) / INCH ** 2), scale("*inH2O", 249.08891)],
  fluxDensity: [scale("*kG", 0.1), scale("G", 1e-4)],
  temperature: [{ ...scale("*°F", 5 / 9), shift: 32 }],
  temperatureDifference: [scale("*degF", 5 / 9)],
};

function scale(starred: string, si: number, from = si): Scale {
  return { text: starred.replace("*", ""), si, from, everyday: starred.startsWith("*") };
}

/**
 * Writes an SI number (°C for temperatures, K for their differences).
 * `digits`: significant digits at most; zeros at the end are left out.
 */
export function formatQuantity(value: number, dimension: Dimension, system: UnitSystem, digits = 4): string {
  const { text, si, shift = 0 } = scaleFor(value, dimension, system);
  const number = plainNumber(value / si + shift, digits);
  return text === "°" ? `${number}°` : `${number} ${text}`;
}

function scaleFor(value: number, dimension: Dimension, system: UnitSystem): Scale {
  const scales = (system === "inch" ? INCHES[dimension] : undefined) ?? METRIC[dimension];
  const size = Math.abs(value);
  // A hair below the limit counts as the limit: 0.1 m computed is 10 cm, not 100 mm.
  const fits =
    size === 0
      ? scales.find(({ everyday }) => everyday)
      : scales.find(({ from }) => size >= from * (1 - 1e-12));
  return fits ?? scales[scales.length - 1];
}

/** Without an exponent where a person would not write one. */
function plainNumber(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  return String(rounded === 0 ? 0 : rounded).replace("e+", "e");
}

/** A length as inches in fractions, "1 3/8 in", rounded to the nearest 1/denominator (a power of two). */
export function formatInches(metres: number, denominator = 64): string {
  const parts = Math.round(Math.abs(metres / INCH) * denominator);
  const sign = metres < 0 && parts > 0 ? "-" : "";
  const whole = Math.floor(parts / denominator);
  let over = parts % denominator;
  let under = denominator;
  while (over > 0 && over % 2 === 0 && under % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const fraction = over === 0 ? "" : `${over}/${under}`;
  const number = [whole > 0 || over === 0 ? String(whole) : "", fraction]
    .filter((part) => part !== "")
    .join(" ");
  return `${sign}${number} in`;
}

/** "1 pulse", "2 pulses". */
export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}
