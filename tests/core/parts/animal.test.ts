import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { carry, letGoAngle, passTime } from "../../../core/parts/animal.ts";
import { dog } from "./plain-parts.ts";

describe("the flap on the back", () => {
  test("hangs at 60° where the back is half a flap below the hinge", () => {
    expect(letGoAngle(0.6, 0.4, 0.4)).toBeCloseTo(Math.PI / 3, 12);
  });

  test("stays closed over a back that the edge clears", () => {
    expect(letGoAngle(0.6, 0.2, 0.4)).toBeCloseTo(0, 7);
    expect(letGoAngle(0.6, 0.1, 0.4)).toBe(0);
  });

  test("lies level on a back as high as the hinge, and is straight up above one a flap higher", () => {
    expect(letGoAngle(0.6, 0.6, 0.4)).toBeCloseTo(Math.PI / 2, 12);
    expect(letGoAngle(0.6, 1.1, 0.4)).toBe(Math.PI);
  });

  test("touches the back: the edge is at shoulder height", () => {
    const size = fc.double({ min: 0.1, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(size, size, (reach, share) => {
        const shoulder = 0.8 - reach * share;
        const edge = 0.8 - reach * Math.cos(letGoAngle(0.8, shoulder, reach));
        expect(edge).toBeCloseTo(shoulder, 12);
      }),
    );
  });
});

test("the pass takes the body and the flap's reach outwards", () => {
  expect(passTime(0.6, 0.4, Math.PI / 6, 0.8)).toBeCloseTo(1, 12);
});

describe("what forbids the passage", () => {
  const stop = (100 * Math.PI) / 180;

  test("is nothing in an ordinary door", () => {
    const carried = carry(dog, 0.6, 0.4, stop);
    expect(carried.failures).toEqual([]);
    expect(carried.letGoAngle).toBeCloseTo(Math.acos(0.375), 12);
    expect(carried.passTime).toBeCloseTo((0.6 + 0.4 * Math.sin(Math.acos(0.375))) / 0.8, 12);
  });

  test("is a hinge at or below the push", () => {
    expect(carry(dog, dog.pushHeight, 0.3, stop).failures).toEqual([
      "hinge not above push",
      "shoulder not below hinge",
    ]);
  });

  test("is a let-go at or beyond the stop, told with the angle as it is", () => {
    const carried = carry(dog, 0.6, 0.4, Math.PI / 4);
    expect(carried.failures).toEqual(["let go beyond stop"]);
    expect(carried.letGoAngle).toBeGreaterThan(Math.PI / 4);
  });

  test("is a shoulder at or above the hinge", () => {
    expect(carry(dog, 0.45, 0.4, stop).failures).toEqual(["shoulder not below hinge"]);
  });
});

describe("the animals that come with the product", () => {
  interface Entry {
    readonly name: string;
    readonly kind: string;
    readonly shoulderHeight: { readonly low: string; readonly high: string; readonly source: string };
    readonly estimates: Readonly<Record<"chestWidth" | "bodyLength" | "mass", string>>;
  }
  const { animals } = JSON.parse(
    readFileSync(new URL("../../../assets/animals.json", import.meta.url), "utf8"),
  ) as {
    animals: readonly Entry[];
  };
  const number = (text: string, unit: string) => {
    const match = text.match(/^(\d+(?:\.\d+)?) (cm|kg)$/);
    if (match === null || match[2] !== unit) throw new Error(`${text} is not a number of ${unit}`);
    return Number(match[1]);
  };

  test("are a dozen dogs by the FCI's numbered standards, and cats marked as measured by the owner", () => {
    const dogs = animals.filter(
      (one) => one.kind === "dog" && /FCI standard \d+/.test(one.shoulderHeight.source),
    );
    const cats = animals.filter((one) => one.kind === "cat");
    expect(dogs.length).toBeGreaterThanOrEqual(12);
    expect(cats.length).toBeGreaterThanOrEqual(2);
    for (const cat of cats) expect(cat.shoulderHeight.source).toMatch(/no standard/);
    expect(new Set(animals.map((one) => one.name)).size).toBe(animals.length);
  });

  test("have measures in proportion", () => {
    for (const one of animals) {
      const low = number(one.shoulderHeight.low, "cm");
      const high = number(one.shoulderHeight.high, "cm");
      expect(low, one.name).toBeLessThanOrEqual(high);
      expect(number(one.estimates.chestWidth, "cm") / high, one.name).toBeGreaterThan(0.25);
      expect(number(one.estimates.chestWidth, "cm") / high, one.name).toBeLessThan(0.75);
      expect(number(one.estimates.bodyLength, "cm") / high, one.name).toBeGreaterThan(1.1);
      expect(number(one.estimates.mass, "kg"), one.name).toBeGreaterThan(1);
    }
  });
});
