import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DIMENSIONS, type Dimension } from "../../../core/quantity/dimensions.ts";
import { formatInches, formatQuantity } from "../../../core/quantity/format.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";

const NAMES = Object.keys(DIMENSIONS) as Dimension[];

const SHOWN: [number, Dimension, string, string][] = [
  [0.3048, "length", "30.48 cm", "12 in"],
  [0.008, "length", "8 mm", "0.315 in"],
  [12, "length", "12 m", "39.37 ft"],
  [0, "length", "0 mm", "0 in"],
  [0.1 * (1 - 1e-16), "length", "10 cm", "3.937 in"],
  [4.5, "mass", "4.5 kg", "9.921 lb"],
  [0.02, "mass", "20 g", "0.7055 oz"],
  [0.006, "torque", "6 mN m", "0.8497 ozf in"],
  [0.004, "angularDamping", "4 mN m s/rad", "0.5664 ozf in s/rad"],
  [6, "force", "6 N", "1.349 lbf"],
  [20, "temperature", "20 °C", "68 °F"],
  [1e-4, "capacitance", "100 µF", "100 µF"],
  [110_000, "resistance", "110 kΩ", "110 kΩ"],
  [0.05, "ratio", "5 %", "5 %"],
  [12, "time", "12 s", "12 s"],
  [1.3, "fluxDensity", "1.3 T", "13 kG"],
  [-Math.PI / 6, "angle", "-30°", "-30°"],
  [0, "temperature", "0 °C", "32 °F"],
];

describe("writing quantities", () => {
  it.each(SHOWN)("%d (%s) is %s or %s", (value, dimension, metric, inch) => {
    expect(formatQuantity(value, dimension, "metric")).toBe(metric);
    expect(formatQuantity(value, dimension, "inch")).toBe(inch);
  });

  it("writes what it can read back to the digits shown", () => {
    const size = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    const system = fc.constantFrom("metric" as const, "inch" as const);
    const anyDigits = fc.integer({ min: 1, max: 15 });
    fc.assert(
      fc.property(
        size,
        fc.boolean(),
        fc.constantFrom(...NAMES),
        system,
        anyDigits,
        (x, minus, dimension, shownIn, digits) => {
          const value = minus ? -x : x;
          const read = parseQuantity(formatQuantity(value, dimension, shownIn, digits), dimension);
          if (!read.ok) throw new Error(read.problem);
          // Fahrenheit's zero lies elsewhere: the digits are those of the shifted number.
          const shown = dimension === "temperature" ? x + 18 : x;
          expect(Math.abs(read.value - value)).toBeLessThanOrEqual(
            shown * (0.5 * 10 ** (1 - digits) + 1e-14),
          );
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe("inches in fractions", () => {
  it("reduces to the least denominator", () => {
    expect(formatInches(0.034925)).toBe("1 3/8 in");
    expect(formatInches(0.009525)).toBe("3/8 in");
    expect(formatInches(0.3048)).toBe("12 in");
    expect(formatInches(0)).toBe("0 in");
    expect(formatInches(-0.009525)).toBe("-3/8 in");
    expect(formatInches(0.0254 / 100)).toBe("1/64 in");
    expect(formatInches(0.0254 / 1000)).toBe("0 in");
    expect(formatInches(0.0254 * 0.999)).toBe("1 in");
    expect(formatInches(0.0254 * 1.3, 8)).toBe("1 1/4 in");
  });

  it("is never further off than half a step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.constantFrom(2, 8, 16, 64),
        (metres, under) => {
          const read = parseQuantity(formatInches(metres, under), "length");
          expect(read.ok && Math.abs(read.value - metres)).toBeLessThanOrEqual(
            (0.0254 / under / 2) * (1 + 1e-9),
          );
        },
      ),
    );
  });
});
