import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  add,
  fromDecimal,
  fromNumber,
  multiply,
  negate,
  power,
  toNumber,
} from "../../../core/quantity/rational.ts";

describe("exact fractions", () => {
  it("come back as the number they were made from", () => {
    const normal = fc
      .double({ noNaN: true, noDefaultInfinity: true })
      .filter((x) => x === 0 || Math.abs(x) > 1e-300);
    fc.assert(fc.property(normal, (x) => toNumber(fromNumber(x)) === (x === 0 ? 0 : x)));
  });

  it("round as the hardware's division does, which IEEE 754 requires to be correct", () => {
    const whole = fc.maxSafeNat();
    fc.assert(
      fc.property(
        whole,
        whole.filter((d) => d > 0),
        (n, d) => {
          expect(toNumber({ n: BigInt(n), d: BigInt(d) })).toBe(n / d);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("read decimals of any length as the engine's own parser does", () => {
    const digits = fc.stringMatching(/^-?\d{1,40}(\.\d{1,40})?(e[+-]?\d{1,2})?$/);
    fc.assert(
      fc.property(digits, (text) => toNumber(fromDecimal(text)) + 0 === Number(text) + 0),
      { numRuns: 1000 },
    );
  });

  it("add, multiply and raise exactly", () => {
    const third = { n: 1n, d: 3n };
    expect(toNumber(add(add(third, third), third))).toBe(1);
    expect(toNumber(multiply(power(third, -4), power(third, 4)))).toBe(1);
    expect(toNumber(negate(fromDecimal(".5")))).toBe(-0.5);
  });
});
