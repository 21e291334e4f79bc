import fc from "fast-check";
import { expect, test } from "vitest";
import type { Magnets } from "../../../core/door/door.ts";
import { facingPoles, sillPlaces } from "../../../core/parts/magnet-places.ts";

const magnets = (polarity: Magnets["polarity"], force: Magnets["force"]) => ({ polarity, force }) as Magnets;

test("unlike poles attract, like poles repel, whatever the row", () => {
  for (const polarity of ["like", "alternating"] as const) {
    for (const row of [0, 1, 2, 3]) {
      const pulls = facingPoles(magnets(polarity, "attract"), row);
      expect(pulls.flap).not.toBe(pulls.frame);
      const pushes = facingPoles(magnets(polarity, "repel"), row);
      expect(pushes.flap).toBe(pushes.frame);
    }
  }
});

test("alternating rows turn over together, rows of one polarity never", () => {
  const rows = (polarity: Magnets["polarity"]) =>
    [0, 1, 2].map((row) => Object.values(facingPoles(magnets(polarity, "attract"), row)).join(""));
  expect(rows("like")).toEqual(["NS", "NS", "NS"]);
  expect(rows("alternating")).toEqual(["NS", "SN", "NS"]);
});

test("a sill's magnets stand right and left of the middle, within the flap, apart, mirrored where they are even", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 8 }),
      fc.double({ min: 0.1, max: 900, noNaN: true }),
      (count, width) => {
        const places = sillPlaces(count, width);
        expect(places).toHaveLength(count);
        expect(new Set(places).size).toBe(count);
        for (const x of places) {
          expect(Math.abs(x)).toBeGreaterThan(0.12 * width);
          expect(Math.abs(x)).toBeLessThan(width / 2);
        }
        if (count % 2 === 0) expect(places.reduce((sum, x) => sum + x, 0)).toBeCloseTo(0, 9);
      },
    ),
  );
});
