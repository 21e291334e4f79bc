/**
 * The kinds of quantity a door is made of: what each is called, how it is written, and the exponents of its SI base
 * units. `Dimension` is the name a field of the door file gives to say which units it takes.
 */
export type Dimension =
  | "length"
  | "mass"
  | "time"
  | "angle"
  | "angularSpeed"
  | "speed"
  | "density"
  | "torque"
  | "angularDamping"
  | "force"
  | "pressure"
  | "fluxDensity"
  | "temperature"
  | "temperatureDifference"
  | "voltage"
  | "current"
  | "resistance"
  | "inductance"
  | "capacitance"
  | "thermalResistance"
  | "ratio";

export interface DimensionEntry {
  /** "a length", to stand in a sentence. */
  readonly words: string;
  /** Right entries, as they would stand in a file. */
  readonly examples: readonly [string, ...string[]];
  /** The unit its numbers have inside, as the results name it. */
  readonly siUnit: string;
  /** Exponents of kg, m, s, A, K, rad. */
  readonly exponents: readonly [kg: number, m: number, s: number, A: number, K: number, rad: number];
  /** A damping is also written without its "per radian". */
  readonly angleOptional?: boolean;
}

export const DIMENSIONS: Readonly<Record<Dimension, DimensionEntry>> = {
  length: { words: "a length", examples: ["39 cm", "12 in"], siUnit: "m", exponents: [0, 1, 0, 0, 0, 0] },
  mass: { words: "a mass", examples: ["4.5 kg", "10 oz"], siUnit: "kg", exponents: [1, 0, 0, 0, 0, 0] },
  time: { words: "a time", examples: ["12 s"], siUnit: "s", exponents: [0, 0, 1, 0, 0, 0] },
  angle: { words: "an angle", examples: ["4 deg"], siUnit: "rad", exponents: [0, 0, 0, 0, 0, 1] },
  angularSpeed: {
    words: "an angular speed",
    examples: ["2 rad/s", "30 rpm"],
    siUnit: "rad/s",
    exponents: [0, 0, -1, 0, 0, 1],
  },
  speed: { words: "a speed", examples: ["1 m/s", "2 mph"], siUnit: "m/s", exponents: [0, 1, -1, 0, 0, 0] },
  density: {
    words: "a density",
    examples: ["1200 kg/m^3"],
    siUnit: "kg/m^3",
    exponents: [1, -3, 0, 0, 0, 0],
  },
  torque: {
    words: "a torque",
    examples: ["6 mN m", "1 ozf in"],
    siUnit: "N m",
    exponents: [1, 2, -2, 0, 0, 0],
  },
  angularDamping: {
    words: "an angular damping",
    examples: ["4 mN m s/rad"],
    siUnit: "N m s/rad",
    exponents: [1, 2, -1, 0, 0, -1],
    angleOptional: true,
  },
  force: { words: "a force", examples: ["6 N", "2 lbf"], siUnit: "N", exponents: [1, 1, -2, 0, 0, 0] },
  pressure: {
    words: "a pressure",
    examples: ["5 Pa", "0.1 inH2O"],
    siUnit: "Pa",
    exponents: [1, -1, -2, 0, 0, 0],
  },
  fluxDensity: {
    words: "a flux density",
    examples: ["1.3 T", "13 kG"],
    siUnit: "T",
    exponents: [1, 0, -2, -1, 0, 0],
  },
  temperature: {
    words: "a temperature",
    examples: ["20 degC", "68 degF"],
    siUnit: "degC",
    exponents: [0, 0, 0, 0, 1, 0],
  },
  temperatureDifference: {
    words: "a temperature difference",
    examples: ["5 K"],
    siUnit: "K",
    exponents: [0, 0, 0, 0, 1, 0],
  },
  voltage: { words: "a voltage", examples: ["24 V"], siUnit: "V", exponents: [1, 2, -3, -1, 0, 0] },
  current: { words: "a current", examples: ["120 mA"], siUnit: "A", exponents: [0, 0, 0, 1, 0, 0] },
  resistance: {
    words: "a resistance",
    examples: ["1 kohm"],
    siUnit: "ohm",
    exponents: [1, 2, -3, -2, 0, 0],
  },
  inductance: {
    words: "an inductance",
    examples: ["200 mH"],
    siUnit: "H",
    exponents: [1, 2, -2, -2, 0, 0],
  },
  capacitance: {
    words: "a capacitance",
    examples: ["100 uF"],
    siUnit: "F",
    exponents: [-1, -2, 4, 2, 0, 0],
  },
  thermalResistance: {
    words: "a thermal resistance",
    examples: ["65 K/W"],
    siUnit: "K/W",
    exponents: [-1, -2, 3, 0, 1, 0],
  },
  ratio: { words: "a percentage", examples: ["5 %"], siUnit: "1", exponents: [0, 0, 0, 0, 0, 0] },
};

/** Places of kg, m, s, A, K, rad in mathjs's dimension vector, which starts mass, length, time, current, temperature. */
const MATHJS_PLACES = [0, 1, 2, 3, 4, 7];
/** Luminous intensity, amount of substance, bits: nothing on a door has them. */
const MATHJS_OTHERS = [5, 6, 8];

/** Whether a unit's exponents (mathjs order) are those of the dimension. */
export function isOfDimension(exponents: readonly number[], dimension: Dimension): boolean {
  const entry = DIMENSIONS[dimension];
  if (MATHJS_OTHERS.some((place) => (exponents[place] ?? 0) !== 0)) return false;
  return MATHJS_PLACES.every((place, i) => {
    const given = exponents[place] ?? 0;
    const bare = i === 5 && entry.angleOptional === true && given === 0;
    return bare || given === entry.exponents[i];
  });
}

const OTHER_WORDS: readonly (readonly [string, readonly number[]])[] = [
  ["an area", [0, 2, 0, 0, 0, 0]],
  ["a volume", [0, 3, 0, 0, 0, 0]],
  ["a frequency", [0, 0, -1, 0, 0, 0]],
  ["an acceleration", [0, 1, -2, 0, 0, 0]],
  ["a power", [1, 2, -3, 0, 0, 0]],
  ["an electric charge", [0, 0, 1, 1, 0, 0]],
  ["a mass times a length", [1, 1, 0, 0, 0, 0]],
  ["a mass per area", [1, -2, 0, 0, 0, 0]],
  ["an angular stiffness", [1, 2, -2, 0, 0, -1]],
  ["a force per length", [1, 0, -2, 0, 0, 0]],
  ["a magnetic flux", [1, 2, -2, -1, 0, 0]],
];

const BASE_UNITS = ["kg", "m", "s", "A", "K", "rad", "cd", "mol", "bit"];

/** Names a unit's dimension for an error: "a mass", "a power", else its base units. */
export function dimensionWords(exponents: readonly number[]): string {
  const named = (Object.keys(DIMENSIONS) as Dimension[]).find((name) => isOfDimension(exponents, name));
  if (named === "torque") return "a torque or an energy";
  if (named === "ratio") return "a plain number";
  if (named !== undefined) return DIMENSIONS[named].words;
  const ordered = [...MATHJS_PLACES, ...MATHJS_OTHERS].map((place) => exponents[place] ?? 0);
  const other = OTHER_WORDS.find(([, wanted]) => ordered.every((value, i) => value === (wanted[i] ?? 0)));
  if (other !== undefined) return other[0];
  const product = ordered.flatMap((value, i) => (value === 0 ? [] : [power(BASE_UNITS[i], value)]));
  return `a quantity in ${product.join(" ")}`;
}

function power(unit: string, exponent: number): string {
  return exponent === 1 ? unit : `${unit}^${exponent}`;
}
