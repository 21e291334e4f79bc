/** Labels side by side: never over one another, never out of the drawing, near their marks, the weighty first. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LabelWish, placeLabels } from "../../../renderer/strip/place-labels.ts";

const wish = fc.record({
  x: fc.double({ min: -50, max: 1050, noNaN: true }),
  width: fc.double({ min: 5, max: 160, noNaN: true }),
  weight: fc.integer({ min: 0, max: 5 }),
});
const wishes = fc.array(wish, { maxLength: 12 });
const GAP = 8;

interface Placed extends LabelWish {
  readonly left: number;
}

function placed(all: readonly LabelWish[], to = 1000): Placed[] {
  const lefts = placeLabels(all, 0, to, GAP);
  const shown = all.flatMap((one, i) => {
    const left = lefts[i];
    return left === null ? [] : [{ ...one, left }];
  });
  return shown.sort((a, b) => a.left - b.left);
}

describe("labels", () => {
  test("never overlap and never leave the drawing", () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const shown = placed(all);
        shown.forEach(({ left, width }, i) => {
          expect(left).toBeGreaterThanOrEqual(-1e-9);
          expect(left + width).toBeLessThanOrEqual(1000 + 1e-9);
          if (i > 0) expect(left).toBeGreaterThanOrEqual(shown[i - 1].left + shown[i - 1].width + GAP - 1e-9);
        });
      }),
      { numRuns: 500 },
    );
  });

  test("stand in the order of their marks", () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const marks = placed(all).map(({ x }) => x);
        expect(marks).toEqual([...marks].sort((a, b) => a - b));
      }),
    );
  });

  test("one is left out only where it does not fit beside those of at least its weight", () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const lefts = placeLabels(all, 0, 500, GAP);
        lefts.forEach((left, i) => {
          if (left !== null) return;
          const first = all.filter((other, k) => lefts[k] !== null && other.weight >= all[i].weight);
          const used = first.reduce((sum, { width }) => sum + width + GAP, 0);
          expect(used + all[i].width).toBeGreaterThan(500);
        });
      }),
    );
  });

  test("a label with room on both sides is centred on its mark", () => {
    expect(placeLabels([{ x: 300, width: 40, weight: 1 }], 0, 1000, GAP)).toEqual([280]);
  });

  test("two that push each other move by as much", () => {
    const [a, b] = placeLabels(
      [
        { x: 500, width: 40, weight: 1 },
        { x: 510, width: 40, weight: 1 },
      ],
      0,
      1000,
      GAP,
    );
    expect(b).toBe((a ?? 0) + 48);
    expect((a ?? 0) + 20 - 500).toBeCloseTo(510 - ((b ?? 0) + 20), 9);
  });

  test("no labels, no places", () => {
    expect(placeLabels([], 0, 100, GAP)).toEqual([]);
  });
});
