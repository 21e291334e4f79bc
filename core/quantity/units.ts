/**
 * Unit expressions ("mN m s/rad", "kg/m^3") as exact factors to SI. mathjs knows the names, prefixes, grammar and
 * dimensions; its factory is given plain number arithmetic instead of its own, which starts in about 10 ms.
 */
import { createUnitClass, type UnitClass } from "mathjs";
import { EXTRA_UNITS, type ExtraUnit } from "./extra-units.ts";
import { fromDecimal, fromNumber, multiply, ONE, power, type Rational } from "./rational.ts";

export interface UnitExpression {
  /** SI units in one of these, exact but for the angle units, which carry π to 50 digits. */
  readonly factor: Rational;
  /** Added before the factor for one temperature on a scale of its own (degC, degF), else null. */
  readonly offset: Rational | null;
  /** Exponents of mass, length, time, current, temperature, luminous intensity, amount, angle, bit. */
  readonly dimensions: readonly number[];
}

/** Largest exponent of one factor; nothing a door needs comes near. */
const LARGEST_POWER = 9;

/**
 * Reads a unit expression without a number.
 * Throws a SyntaxError with a message for people where a name is unknown or the expression is broken.
 */
export function parseUnit(text: string): UnitExpression {
  const parsed = units().parse(text);
  let factor = ONE;
  for (const { unit, prefix, power: exponent } of parsed.units) {
    if (!Number.isInteger(exponent) || Math.abs(exponent) > LARGEST_POWER) {
      throw new SyntaxError(`exponents are whole numbers up to ${LARGEST_POWER}`);
    }
    const one = multiply(exactValue(unit), fromNumber(prefix.value));
    factor = multiply(factor, power(one, exponent));
  }
  const alone = parsed.units.length === 1 && parsed.units[0].power === 1;
  const offset = alone && parsed.units[0].unit.offset !== 0 ? fromNumber(parsed.units[0].unit.offset) : null;
  return { factor, offset, dimensions: parsed.dimensions };
}

type UnitRecord = ReturnType<UnitClass["parse"]>["units"][number]["unit"];

function exactValue(unit: UnitRecord): Rational {
  const defined = exactByName.get(unit.name);
  if (defined !== undefined) return defined;
  if (typeof unit.value === "number") return fromNumber(unit.value);
  return { n: BigInt(unit.value.n), d: BigInt(unit.value.d) };
}

const exactByName: ReadonlyMap<string, Rational> = new Map(
  EXTRA_UNITS.flatMap((unit) => [unit.name, ...(unit.aliases ?? [])].map((name) => [name, exactOf(unit)])),
);

function exactOf({ value: [over, under = "1"] }: ExtraUnit): Rational {
  return multiply(fromDecimal(over), power(fromDecimal(under), -1));
}

let unitClass: UnitClass | undefined;

/** The unit table, made when first asked for: most programs that load this module parse nothing. */
function units(): UnitClass {
  unitClass ??= makeUnits();
  return unitClass;
}

function makeUnits(): UnitClass {
  const table = createUnitClass(NUMBER_ARITHMETIC);
  for (const { name, value, unit, prefixes, aliases = [] } of EXTRA_UNITS) {
    for (const known of [name, ...aliases]) table.deleteUnit(known);
    const definition = `${Number(value[0]) / Number(value[1] ?? 1)} ${unit}`;
    table.createUnitSingle(name, { definition, prefixes: prefixes ?? "none", aliases });
  }
  return table;
}

class Fraction {
  readonly isFraction = true;
  readonly n: number;
  readonly d: number;
  constructor(n: number, d: number) {
    this.n = n;
    this.d = d;
  }
}

class Unused {}

const NUMBER_ARITHMETIC = {
  config: { number: "number", predictable: true },
  addScalar: (a: number, b: number) => a + b,
  subtractScalar: (a: number, b: number) => a - b,
  multiplyScalar: (a: number, b: number) => a * b,
  divideScalar: (a: number, b: number) => a / b,
  pow: (a: number, b: number) => a ** b,
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  equal: (a: number, b: number) => a === b,
  isNumeric: (value: unknown) => typeof value === "number",
  format: String,
  number: (value: number | Fraction) => (value instanceof Fraction ? value.n / value.d : value),
  Complex: Unused,
  BigNumber: Unused,
  Fraction,
};
