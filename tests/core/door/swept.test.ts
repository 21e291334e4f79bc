import fc from "fast-check";
import { expect, it } from "vitest";
import { edgeDip, sweptDepth } from "../../../core/door/swept.ts";

it("is the lowest a corner comes on its way through the middle", () => {
  const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(size(0.05, 1), size(0, 0.05), (distance, half) => {
      // The corner (h, −r) turned by every angle up to 60° either way.
      let lowest = 0;
      for (let i = -6000; i <= 6000; i++) {
        const angle = (i / 100) * (Math.PI / 180);
        lowest = Math.max(lowest, distance * Math.cos(angle) + half * Math.sin(angle));
      }
      expect(sweptDepth(distance, half)).toBeGreaterThanOrEqual(lowest - 1e-12);
      expect(sweptDepth(distance, half)).toBeLessThan(lowest + 1e-8);
      expect(edgeDip(half, distance)).toBeCloseTo(sweptDepth(distance, half) - distance, 14);
    }),
    { numRuns: 30 },
  );
});
