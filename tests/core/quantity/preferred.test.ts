import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  nearestPreferred,
  preferredAbove,
  preferredBelow,
  preferredWithin,
  SERIES,
  type Series,
} from "../../../core/quantity/preferred.ts";

// IEC 60063:2015, tables of the E24 and E96 series (E48 is every second of E96), typed from the standard's printed lists.
const E24 = "1.0 1.1 1.2 1.3 1.5 1.6 1.8 2.0 2.2 2.4 2.7 3.0 3.3 3.6 3.9 4.3 4.7 5.1 5.6 6.2 6.8 7.5 8.2 9.1";
const E12 = "1.0 1.2 1.5 1.8 2.2 2.7 3.3 3.9 4.7 5.6 6.8 8.2";
const E96 = `100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174
178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309
316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549
562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976`;

const numbers = (text: string) => text.split(/\s+/).map(Number);

describe("the series of IEC 60063", () => {
  it("are the standard's", () => {
    expect(SERIES.E24).toEqual(numbers(E24));
    expect(SERIES.E12).toEqual(numbers(E12));
    expect(SERIES.E6).toEqual([1, 1.5, 2.2, 3.3, 4.7, 6.8]);
    expect(SERIES.E3).toEqual([1, 2.2, 4.7]);
    expect(SERIES.E96.map((value) => Math.round(value * 100))).toEqual(numbers(E96));
    expect(SERIES.E48.map((value) => Math.round(value * 100))).toEqual(
      numbers(E96).filter((_, i) => i % 2 === 0),
    );
  });
});

describe("preferred values", () => {
  it("are found around a value", () => {
    expect(nearestPreferred(109_226, "E24")).toBe(110_000);
    expect(preferredBelow(4699, "E24")).toBe(4300);
    expect(preferredBelow(4700, "E24")).toBe(4700);
    expect(preferredAbove(4700, "E24")).toBe(4700);
    expect(preferredAbove(9.2e-5, "E6")).toBe(1e-4);
    expect(preferredBelow(1.01, "E3")).toBe(1);
    expect(preferredBelow(0.99, "E3")).toBe(0.47);
    expect(nearestPreferred(9.9, "E24")).toBe(10);
  });

  it("enclose the value, with none between", () => {
    const series = fc.constantFrom(...(Object.keys(SERIES) as Series[]));
    const exponent = fc.double({ min: -12, max: 9, noNaN: true });
    fc.assert(
      fc.property(exponent, series, (e, name) => {
        const value = 10 ** e;
        const below = preferredBelow(value, name);
        const above = preferredAbove(value, name);
        expect(below).toBeLessThanOrEqual(value);
        expect(above).toBeGreaterThanOrEqual(value);
        if (below !== value) expect(preferredAbove(below * (1 + 1e-9), name)).toBe(above);
        expect([below, above]).toContain(nearestPreferred(value, name));
      }),
    );
  });

  it("are their own neighbours, in every decade", () => {
    for (const name of Object.keys(SERIES) as Series[]) {
      for (let exponent = -15; exponent <= 12; exponent++) {
        for (const mantissa of SERIES[name]) {
          const value = Number(`${mantissa}e${exponent}`);
          expect([preferredBelow(value, name), preferredAbove(value, name)]).toEqual([value, value]);
        }
      }
    }
  });

  it("between two limits are all there are, limits included", () => {
    expect(preferredWithin(4.7e-6, 1e-4, "E3")).toEqual([4.7e-6, 1e-5, 2.2e-5, 4.7e-5, 1e-4]);
    expect(preferredWithin(4.8e-6, 9.9e-6, "E3")).toEqual([]);
    const exponent = fc.double({ min: -9, max: 6, noNaN: true });
    fc.assert(
      fc.property(exponent, fc.double({ min: 0, max: 3, noNaN: true }), (from, span) => {
        const [low, high] = [10 ** from, 10 ** (from + span)];
        const wanted = Array.from({ length: 20 }, (_, i) => i - 11).flatMap((e) =>
          SERIES.E12.map((mantissa) => Number(`${mantissa}e${e}`)).filter((v) => v >= low && v <= high),
        );
        expect(preferredWithin(low, high, "E12")).toEqual(wanted);
      }),
    );
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuse %d", (value) => {
    expect(() => nearestPreferred(value, "E24")).toThrow(RangeError);
  });
});
