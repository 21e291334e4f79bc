import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DIMENSIONS, type Dimension } from "../../../core/quantity/dimensions.ts";
import { LONGEST_QUANTITY, parseQuantity } from "../../../core/quantity/quantity.ts";

function si(text: string, dimension: Dimension): number {
  const read = parseQuantity(text, dimension);
  if (!read.ok) throw new Error(`${text}: ${read.problem}`);
  return read.value;
}

function problem(text: string, dimension: Dimension): string {
  const read = parseQuantity(text, dimension);
  if (read.ok) throw new Error(`${text} was read as ${read.value}`);
  return read.problem;
}

// NIST SP 811 (2008), appendix B.8 and B.9: factors in bold are exact.
const EXACT: [string, Dimension, number][] = [
  ["1 in", "length", 0.0254],
  ["1 ft", "length", 0.3048],
  ["1 yd", "length", 0.9144],
  ["1 mil", "length", 0.0000254],
  ["1 lb", "mass", 0.45359237],
  ["16 oz", "mass", 0.45359237],
  ["1 kgf", "force", 9.80665],
  ["1 gf", "force", 0.00980665],
  ["1 lbf", "force", 0.45359237 * 9.80665],
  ["16 ozf", "force", 4.4482216152605],
  ["1 dyn", "force", 1e-5],
  ["1 kip", "force", 4448.2216152605],
  ["1 mph", "speed", 0.44704],
  ["18 km/h", "speed", 5],
  ["1 knot", "speed", 1852 / 3600],
  ["1 G", "fluxDensity", 1e-4],
  ["13 kG", "fluxDensity", 1.3],
  ["1 psi", "pressure", 4.4482216152605 / 0.00064516],
  ["1 mmH2O", "pressure", 9.80665],
  ["1 inH2O", "pressure", 249.08891],
  ["1 mmHg", "pressure", 133.322387415],
  ["1 inHg", "pressure", 3386.388640341],
  ["1 torr", "pressure", 101325 / 760],
  ["1 bar", "pressure", 100000],
  ["180 deg", "angle", Math.PI],
  ["360 deg", "angle", 2 * Math.PI],
  ["30 rpm", "angularSpeed", Math.PI],
  ["1 rev/min", "angularSpeed", Math.PI / 30],
  ["32 degF", "temperature", 0],
  ["212 degF", "temperature", 100],
  ["-40 degF", "temperature", -40],
  ["0 K", "temperature", -273.15],
  ["293.15 K", "temperature", 20],
  ["9 degF", "temperatureDifference", 5],
  ["5 degC", "temperatureDifference", 5],
  ["5 min", "time", 300],
  ["1 g/cm^3", "density", 1000],
];

// The same entry in the spellings people and keyboards produce.
const SPELLINGS: [Dimension, number, string[]][] = [
  [
    "length",
    0.39,
    [
      "39 cm",
      "39cm",
      "390 mm",
      "0.39 m",
      ".39 m",
      "39.0 cm",
      "390 millimetres",
      "0.39 metres",
      "39e-2 m",
      "+39 cm",
      " 39  cm ",
    ],
  ],
  [
    "length",
    0.034925,
    ["1 3/8 in", "1-3/8 in", "1 3/8 inches", '1 3/8"', "11/8 in", "1⅜ in", "1.375 in", "1 3/8″"],
  ],
  ["length", 0.009525, ["3/8 in", '3/8"', "3/8in", "⅜ in", "0.375 inch"]],
  ["length", 0.6985, ["2' 3 1/2\"", "2 ft 3.5 in", "2′ 3½″", "27.5 in"]],
  ["length", -0.6858, ["-2' 3\"", "−27 in"]],
  ["length", 0.6096, ["2'", "2 ft", "2 feet", "24 in", "24 in.", "24000 thou"]],
  ["temperature", 40, ["40 degC", "40 °C", "40 ℃", "104 ℉"]],
  ["length", 1e-4, ["10e-5 m", "100 um", "100 µm", "100 μm"]],
  [
    "torque",
    0.006,
    ["6 mN m", "6 mN*m", "6 mN·m", "6 mN⋅m", "6 mNm", "6 mN-m", "0.006 Nm", "0.6 N cm", "6 mJ"],
  ],
  ["torque", 0.1129848290276167, ["1 lbf in", "1 lbf-in", "1 in-lbf", "16 ozf in", "1 in*lbf"]],
  [
    "angularDamping",
    0.004,
    ["4 mN m s/rad", "4 mN m s", "4 mN·m·s/rad", "4 mNm s/rad", "4 mN m/(rad/s)", "4 mNms"],
  ],
  ["capacitance", 1e-4, ["100 uF", "100 µF", "100 μF", "0.1 mF"]],
  ["temperature", 20, ["20 degC", "20 °C", "20°C", "20 celsius", "68 degF", "68 °F", "293.15 K"]],
  ["density", 1.204, ["1.204 kg/m^3", "1.204 kg/m³", "1.204 kg m^-3", "1.204 kg m⁻³", "1.204 g/l"]],
  ["thermalResistance", 65, ["65 K/W", "65 degC/W", "65 °C/W", "117 degF/W"]],
  ["resistance", 1000, ["1 kohm", "1 kΩ", "1 kΩ", "1000 ohms", "1 V/mA"]],
  ["angle", 0.5 * (Math.PI / 180), ["0.5 deg", "0.5°", "0.5 °", "30 arcmin", "1/2 deg"]],
  ["angularSpeed", Math.PI / 6, ["30 deg/s", "30 °/s", "5 rpm"]],
  ["ratio", 0.05, ["5 %", "5%", "5 percent", "5.0 %"]],
  ["voltage", 24, ["24 V", "24 volts", "24000 mV"]],
  ["current", 0.12, ["120 mA", "0.12 A", "120000 uA"]],
  ["inductance", 0.2, ["200 mH", "0.2 H"]],
  ["fluxDensity", 1.3, ["1.3 T", "13 kG", "13000 gauss", "1300 mT"]],
  ["force", 6, ["6 N", "6 newtons", "6000 mN"]],
  ["pressure", 24.908891, ["0.1 inH2O", "24.908891 Pa"]],
];

describe("reading quantities", () => {
  it.each(EXACT)("%s is its exact definition", (text, dimension, value) => {
    expect(Math.abs(si(text, dimension) - value)).toBeLessThanOrEqual(2 * Number.EPSILON * Math.abs(value));
  });

  it("gives 12 in to the bit", () => expect(si("12 in", "length")).toBe(0.3048));

  it.each(SPELLINGS)("%s %d in all its spellings", (dimension, value, spellings) => {
    for (const text of spellings) {
      const off = Math.abs(si(text, dimension) - value);
      expect(off, text).toBeLessThanOrEqual(2 * Number.EPSILON * Math.abs(value));
    }
  });

  it("gives the same bits for the same length in inches and millimetres", () => {
    const tenThousandths = fc.integer({ min: -10_000_000, max: 10_000_000 });
    fc.assert(
      fc.property(tenThousandths, (n) => {
        const inches = (n / 10_000).toFixed(4);
        const millimetres = `${(BigInt(n) * 254n).toString()}e-5`;
        expect(si(`${inches} in`, "length")).toBe(si(`${millimetres} mm`, "length"));
      }),
    );
  });

  it("reads each dimension's own examples, and no other dimension's", () => {
    const names = Object.keys(DIMENSIONS) as Dimension[];
    const alike = (a: Dimension, b: Dimension) => a.replace("Difference", "") === b.replace("Difference", "");
    for (const own of names) {
      for (const example of DIMENSIONS[own].examples) {
        for (const asked of names)
          expect(parseQuantity(example, asked).ok, `${example} as ${asked}`).toBe(alike(own, asked));
      }
    }
  });
});

describe("refusing quantities", () => {
  it("names a missing unit and gives a right entry", () => {
    const read = parseQuantity("39", "length");
    expect(read).toEqual({
      ok: false,
      problem: "the unit is missing",
      expected: 'a length, such as "39 cm" or "12 in"',
    });
    expect(problem("4", "angle")).toBe("the unit is missing");
    expect(problem("5", "ratio")).toBe("the percent sign is missing");
  });

  it("says both dimensions in words", () => {
    expect(problem("39 kg", "length")).toBe('"kg" is a mass, not a length');
    expect(problem("6 W", "torque")).toBe('"W" is a power, not a torque');
    expect(problem("6 N m", "force")).toBe('"N m" is a torque or an energy, not a force');
    expect(problem("4 Hz", "angularSpeed")).toBe('"Hz" is a frequency, not an angular speed');
    expect(problem("3 kg^2/s", "mass")).toBe('"kg^2/s" is a quantity in kg^2 s^-1, not a mass');
    expect(problem("3 cd", "length")).toBe('"cd" is a quantity in cd, not a length');
    expect(problem("3 N m/rad", "torque")).toBe('"N m/rad" is an angular stiffness, not a torque');
  });

  it("tells ounces of mass from ounces of force", () => {
    expect(problem("2 lb", "force")).toBe('"lb" is a mass, not a force (a force is written "lbf")');
    expect(problem("5 oz in", "torque")).toContain('a force is written "ozf"');
  });

  it("refuses what is no finite number", () => {
    for (const text of ["NaN", "NaN m", "nan cm", "Infinity m", "-inf m", "∞ m"]) {
      expect(problem(text, "length"), text).toBe("it is not a finite number");
    }
    for (const text of ["1e400 m", "1e999999999 m", "1/0 in", "1e308 km"]) {
      expect(problem(text, "length"), text).toBe("the number is not finite");
    }
    expect(si("1e-999999999 m", "length")).toBe(0);
  });

  it("asks for a point where there is a comma", () => {
    expect(problem("1,5 cm", "length")).toContain("a point, not a comma");
    expect(problem("1,000 mm", "length")).toContain("a point, not a comma");
  });

  it("refuses empty, overlong and broken text", () => {
    expect(problem("", "length")).toBe("the text is empty");
    expect(problem("  ", "length")).toBe("the text is empty");
    expect(problem(`${"1".repeat(LONGEST_QUANTITY)} m`, "length")).toContain("longer than 200");
    expect(problem("cm", "length")).toBe("it does not start with a number");
    expect(problem("three cm", "length")).toBe("it does not start with a number");
    expect(problem("3 furl", "length")).toBe('the unit "furl" is not known');
    expect(problem("5 CM", "length")).toContain('did you mean "cm"?');
    for (const text of [
      "5 m^",
      "5 m)",
      "5 (m",
      "5 m/",
      "5 m^99",
      "5 m^0.5",
      "5 m 3",
      "5 m;",
      "5..2 m",
      "5 5 m",
      "5 .2 m",
      "1 2 3/8 in",
      "5 /s",
      "5 *m",
      "5 + m",
      "+ 5 m",
    ]) {
      expect(parseQuantity(text, "length").ok, text).toBe(false);
    }
  });

  it("never throws and never gives a number that is not finite", () => {
    const pieces = fc.constantFrom(
      "1",
      "3/8",
      ".",
      "-",
      "e",
      "E9",
      " ",
      "m",
      "in",
      "N",
      "rad",
      "/",
      "^",
      "*",
      "(",
      ")",
      '"',
      "'",
      "°",
      "µ",
      "³",
      "½",
      "%",
      "degC",
      "__proto__",
      "constructor",
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join("")),
    );
    const dimension = fc.constantFrom(...(Object.keys(DIMENSIONS) as Dimension[]));
    fc.assert(
      fc.property(text, dimension, (given, asked) => {
        const read = parseQuantity(given, asked);
        expect(read.ok ? Number.isFinite(read.value) : read.problem.length > 0).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});
