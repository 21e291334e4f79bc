import fc from "fast-check";
import type { Magnets } from "../../../core/door/door.ts";

/** A plain arrangement, with what a test wants otherwise. */
export function magnets(over: Record<string, number | string> = {}): Magnets {
  return {
    arrangement: "jamb",
    sides: 2,
    perSide: 1,
    pitch: 0.025,
    polarity: "like",
    force: "attract",
    diameter: 0.01,
    thickness: 0.005,
    remanence: 1.32,
    gap: 0.003,
    distanceFromHinge: 0.3,
    temperature: 20,
    ...over,
  } as unknown as Magnets;
}

/** Arrangements somebody might build: gaps from a fifth of a radius up. */
export const anyMagnets = fc
  .record({
    arrangement: fc.constantFrom("jamb", "jamb", "sill"),
    sides: fc.constantFrom(1, 2),
    rows: fc.integer({ min: 1, max: 4 }),
    spread: fc.double({ min: 1, max: 2.5, noNaN: true }),
    polarity: fc.constantFrom("like", "alternating"),
    force: fc.constantFrom("attract", "repel"),
    diameter: fc.double({ min: 0.004, max: 0.02, noNaN: true }),
    slim: fc.double({ min: 0.2, max: 1.5, noNaN: true }),
    apart: fc.double({ min: 0.2, max: 2, noNaN: true }),
    remanence: fc.double({ min: 0.2, max: 1.48, noNaN: true }),
    distanceFromHinge: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
    temperature: fc.double({ min: -20, max: 60, noNaN: true }),
  })
  .map(({ rows, spread, slim, apart, ...rest }) =>
    magnets({
      ...rest,
      perSide: rest.arrangement === "sill" ? 1 : rows,
      pitch: spread * rest.diameter,
      thickness: slim * rest.diameter,
      gap: 0.5 * apart * rest.diameter,
    }),
  );
