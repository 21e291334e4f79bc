import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Door, Latch } from "../../../core/door/door.ts";
import {
  furthestLatch,
  leastTipGap,
  lowestPoint,
  sillDepth,
  thickestEdge,
  tipRoom,
} from "../../../core/parts/clearance.ts";
import { goodWith } from "../review/doors.ts";

/** Lowest a rectangle's corners come below the hinge, by turning it a hundredth of a degree at a time. */
function lowestBySteps(distance: number, half: number): number {
  let lowest = 0;
  for (let i = -4500; i <= 4500; i++) {
    const angle = (i / 100) * (Math.PI / 180);
    for (const side of [-half, half])
      lowest = Math.max(lowest, distance * Math.cos(angle) + side * Math.sin(angle));
  }
  return lowest;
}

const latchOf = (door: Door): Latch => {
  if (door.latch === null) throw new Error("no latch");
  return door.latch;
};

describe("what swings lowest", () => {
  test("is the plate's edge where the latch lies above it, or where there is none", () => {
    expect(lowestPoint(goodWith({})).part).toBe("flap");
    const { part, depth } = lowestPoint(goodWith({ latch: undefined }));
    expect(part).toBe("flap");
    expect(depth).toBeCloseTo(lowestBySteps(0.286, 0.002), 8);
  });

  test("is the strike below it, or the bolt that hangs on the flap", () => {
    const strike = lowestPoint(goodWith({ "latch.distanceFromHinge": "30 cm" }));
    expect(strike.part).toBe("strike");
    expect(strike.depth).toBeCloseTo(lowestBySteps(0.3, 0.009), 8);
    const bolt = lowestPoint(goodWith({ "latch.distanceFromHinge": "30 cm", "latch.boltPoints": "down" }));
    expect(bolt.part).toBe("bolt");
    // Drawn back by the tip gap of 2 mm, 8 mm wide.
    expect(bolt.depth).toBeCloseTo(lowestBySteps(0.298, 0.004), 8);
  });
});

const latches = fc.record({
  distance: fc.integer({ min: 100, max: 335 }),
  half: fc.integer({ min: 7, max: 40 }),
  gap: fc.integer({ min: 0, max: 30 }),
  points: fc.constantFrom("up", "down"),
});

test("the latch at its furthest swings just over the sill, a little further it strikes", () => {
  fc.assert(
    fc.property(latches, ({ distance, half, gap, points }) => {
      const door = goodWith({
        "latch.distanceFromHinge": `${distance} mm`,
        "latch.edgeHalfWidth": `${half} mm`,
        "latch.tipGap": `${gap / 10} mm`,
        "latch.boltPoints": points,
      });
      const at = (distanceFromHinge: number) => {
        const latch = { ...latchOf(door), distanceFromHinge } as Latch;
        return sillDepth(door) - lowestPoint({ ...door, latch }).depth;
      };
      const furthest = furthestLatch(door, latchOf(door));
      expect(at(furthest)).toBeCloseTo(0, 12);
      expect(at(furthest - 1e-5)).toBeGreaterThan(0);
      expect(at(furthest + 1e-5)).toBeLessThan(0);
    }),
    { numRuns: 50 },
  );
});

test("the tip clears from its least gap on, and a strike up to its thickest", () => {
  fc.assert(
    fc.property(latches, ({ distance, half, gap, points }) => {
      const latch = latchOf(
        goodWith({
          "latch.distanceFromHinge": `${distance} mm`,
          "latch.edgeHalfWidth": `${half} mm`,
          "latch.tipGap": `${gap / 10} mm`,
          "latch.boltPoints": points,
        }),
      );
      const withGap = (tipGap: number) => tipRoom({ ...latch, tipGap } as Latch);
      expect(withGap(leastTipGap(latch))).toBeCloseTo(0, 12);
      expect(withGap(leastTipGap(latch) + 1e-5)).toBeGreaterThan(0);
      if (points === "up") {
        const edgeHalfWidth = thickestEdge(latch);
        expect(tipRoom({ ...latch, edgeHalfWidth } as Latch)).toBeCloseTo(0, 12);
      }
    }),
    { numRuns: 50 },
  );
});
