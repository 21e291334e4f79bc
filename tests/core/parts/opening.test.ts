import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Animal, Opening } from "../../../core/door/door.ts";
import { animalFit, fitResult, hingeHeight } from "../../../core/parts/opening.ts";
import { si } from "../../../core/quantity/brands.ts";

const opening: Opening = {
  width: si(0.28),
  height: si(0.4),
  sillHeight: si(0.15),
  outOfPlumb: si(0),
  heightMargin: si(0.05),
  widthMargin: si(0.05),
};

function animal(shoulder: number, chest: number): Animal {
  return {
    name: "",
    shoulderHeight: si(shoulder),
    chestWidth: si(chest),
    bodyLength: si(0.6),
    mass: si(15),
    speed: si(1),
    stepRatio: si(0.45),
    pushHeight: si(0.9 * shoulder),
    comfortablePush: si(14.7),
  };
}

test("the hinge is above the floor by sill, clearance and reach", () => {
  expect(hingeHeight(0.15, 0.005, 0.4)).toBeCloseTo(0.555, 12);
});

describe("an animal in the opening", () => {
  test("has what is left over its back, beside its chest and under its step", () => {
    const one = animalFit(opening, animal(0.45, 0.2));
    expect(one.height).toBeCloseTo(0.4 - (0.45 - 0.15 + 0.05), 12);
    expect(one.width).toBeCloseTo(0.28 - 0.2 - 0.05, 12);
    expect(one.step).toBeCloseTo(0.45 * 0.45 - 0.15, 12);
  });

  test("does not fit where a figure is negative", () => {
    expect(animalFit(opening, animal(0.55, 0.2)).height).toBeLessThan(0);
    expect(animalFit(opening, animal(0.3, 0.2)).step).toBeLessThan(0);
  });
});

describe("several animals", () => {
  test("have each figure of the worst for it: the tall one's height, the broad one's width, the short one's step", () => {
    const all = fitResult(opening, [animal(0.3, 0.22), animal(0.5, 0.18)]);
    expect(all.height).toBe(animalFit(opening, animal(0.5, 0.18)).height);
    expect(all.width).toBe(animalFit(opening, animal(0.3, 0.22)).width);
    expect(all.step).toBe(animalFit(opening, animal(0.3, 0.22)).step);
    expect(all.each).toHaveLength(2);
  });

  test("never leave more room with one more of them", () => {
    const size = fc.tuple(
      fc.double({ min: 0.2, max: 0.9, noNaN: true }),
      fc.double({ min: 0.1, max: 0.4, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(size, { minLength: 2, maxLength: 5 }), (sizes) => {
        const animals = sizes.map(([shoulder, chest]) => animal(shoulder, chest));
        const all = fitResult(opening, animals);
        const fewer = fitResult(opening, animals.slice(1));
        expect(all.height).toBeLessThanOrEqual(fewer.height);
        expect(all.width).toBeLessThanOrEqual(fewer.width);
        expect(all.step).toBeLessThanOrEqual(fewer.step);
      }),
    );
  });
});
