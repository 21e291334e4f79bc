/**
 * Text with a unit to an SI number: the only place where units of text are converted.
 * `parseQuantity("12 in", "length")` gives 0.3048; what it cannot read it explains, with a right entry.
 */
import { DIMENSIONS, type Dimension, dimensionWords, isOfDimension } from "./dimensions.ts";
import { leadingNumber, plainSpelling } from "./number-text.ts";
import { add, fromDecimal, multiply, negate, type Rational, toNumber } from "./rational.ts";
import { parseUnit, type UnitExpression } from "./units.ts";

export interface QuantityRead {
  readonly ok: true;
  /** In the dimension's SI unit; temperatures in °C, temperature differences in K. */
  readonly value: number;
}

export interface QuantityFault {
  readonly ok: false;
  /** What is wrong, a clause without a full stop. */
  readonly problem: string;
  /** What would be right: `a length, such as "39 cm" or "12 in"`. */
  readonly expected: string;
}

/** Longest text looked at; a quantity is a few words. */
export const LONGEST_QUANTITY = 200;

/** Reads a quantity of the given dimension. Never throws. */
export function parseQuantity(text: string, dimension: Dimension): QuantityRead | QuantityFault {
  const early = unreadable(text);
  if (early !== null) return fault(early, dimension);
  const plain = plainSpelling(text);
  if (dimension === "ratio") return parsePercent(plain);
  const feet = dimension === "length" ? feetAndInches(plain) : null;
  if (feet !== null) return { ok: true, value: toNumber(feet) };
  const number = leadingNumber(plain);
  if (number === "infinite") return fault("the number is not finite", dimension);
  if (number === null) return fault("it does not start with a number", dimension);
  if (number.rest === "") return fault("the unit is missing", dimension);
  return convert(number.value, number.rest, dimension);
}

/** `a length, such as "39 cm" or "12 in"`. */
export function expectedQuantity(dimension: Dimension): string {
  const { words, examples } = DIMENSIONS[dimension];
  return `${words}, such as ${examples.map((example) => `"${example}"`).join(" or ")}`;
}

function fault(problem: string, dimension: Dimension): QuantityFault {
  return { ok: false, problem, expected: expectedQuantity(dimension) };
}

function unreadable(text: string): string | null {
  if (text.trim() === "") return "the text is empty";
  if (text.length > LONGEST_QUANTITY) return `the text is longer than ${LONGEST_QUANTITY} characters`;
  if (/^\s*[+-]?\s*(nan|inf(inity)?\b|∞)/i.test(text)) return "it is not a finite number";
  if (text.includes(",")) return `decimals take a point, not a comma ("1.5 cm")`;
  return null;
}

function parsePercent(plain: string): QuantityRead | QuantityFault {
  const number = leadingNumber(plain);
  if (number === "infinite") return fault("the number is not finite", "ratio");
  if (number === null) return fault("it does not start with a number", "ratio");
  if (!/^(%|percent)$/.test(number.rest)) {
    return fault(
      number.rest === "" ? "the percent sign is missing" : "the unit is not a percent sign",
      "ratio",
    );
  }
  return { ok: true, value: toNumber(multiply(number.value, { n: 1n, d: 100n })) };
}

const FEET_AND_INCHES = /^([+-]?)\s*([^'a-z]+?)\s*(?:'|ft|feet)\s*([^"a-z]+?)\s*(?:"|in|inch|inches)$/;

/** `2' 3 1/2"` and `2 ft 3 in` in metres; null for any other form. */
function feetAndInches(plain: string): Rational | null {
  const match = FEET_AND_INCHES.exec(plain);
  if (match === null) return null;
  const feet = wholeNumberText(match[2]);
  const inches = wholeNumberText(match[3]);
  if (feet === null || inches === null) return null;
  const size = add(multiply(feet, fromDecimal("0.3048")), multiply(inches, fromDecimal("0.0254")));
  return match[1] === "-" ? negate(size) : size;
}

function wholeNumberText(text: string): Rational | null {
  const number = leadingNumber(text);
  return number === null || number === "infinite" || number.rest !== "" ? null : number.value;
}

function convert(value: Rational, unitText: string, dimension: Dimension): QuantityRead | QuantityFault {
  const unit = readUnit(unitText);
  if (typeof unit === "string") return fault(unit, dimension);
  if (!isOfDimension(unit.dimensions, dimension)) {
    const given = dimensionWords(unit.dimensions);
    const hint = DIMENSIONS_OF_FORCE.has(dimension) ? forceHint(unitText) : "";
    return fault(`"${unitText}" is ${given}, not ${DIMENSIONS[dimension].words}${hint}`, dimension);
  }
  const si = toNumber(dimension === "temperature" ? celsius(value, unit) : multiply(value, unit.factor));
  return Number.isFinite(si) ? { ok: true, value: si } : fault("the number is not finite", dimension);
}

function celsius(value: Rational, { factor, offset }: UnitExpression): Rational {
  const onScale = offset === null ? value : add(value, offset);
  return add(multiply(onScale, factor), fromDecimal("-273.15"));
}

/** The unit, or what is wrong with it. */
function readUnit(text: string): UnitExpression | string {
  const spelled = text
    .replace(/^"$/, "in")
    .replace(/^'$/, "ft")
    .replace(/^(in|ft|oz|lb)\.$/, "$1")
    .replace(/([A-Za-z0-9)])-(?=[A-Za-z(])/g, "$1 ");
  // A second number would be read by the unit's grammar, and lost.
  if (!/^[A-Za-z(]/.test(spelled)) return `"${text}" is not a unit`;
  try {
    return parseUnit(spelled);
  } catch (error) {
    return unitProblem(text, spelled, error instanceof Error ? error.message : "");
  }
}

function unitProblem(text: string, spelled: string, message: string): string {
  const unknown = /^Unit "(.*)" not found/.exec(message)?.[1];
  if (unknown === undefined) return `"${text}" is not a unit`;
  const lower = lowerCaseUnit(spelled);
  const hint = lower === null ? "" : `; capitals matter, did you mean "${lower}"?`;
  return `the unit "${unknown}" is not known${hint}`;
}

function lowerCaseUnit(spelled: string): string | null {
  const lower = spelled.toLowerCase();
  if (lower === spelled) return null;
  try {
    parseUnit(lower);
    return lower;
  } catch {
    return null;
  }
}

const DIMENSIONS_OF_FORCE: ReadonlySet<Dimension> = new Set([
  "force",
  "torque",
  "angularDamping",
  "pressure",
]);

/** Ounces and pounds are masses here; the forces have names of their own. */
function forceHint(unitText: string): string {
  const name = /\b(oz|lb|lbs|kg|g)\b/.exec(unitText)?.[1];
  return name === undefined ? "" : ` (a force is written "${name === "lbs" ? "lb" : name}f")`;
}
