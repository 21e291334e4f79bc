/** What the door file leaves open about its magnets, chosen here once for paper and picture alike. */
import type { Magnets } from "../door/door.ts";

/** The pole that shows when one looks at a face. */
export type Pole = "N" | "S";

/** Poles that a facing pair shows: the flap's first row shows N (choice made here), alternating rows turn over together. */
export function facingPoles(magnets: Magnets, row: number): { readonly flap: Pole; readonly frame: Pole } {
  const flap: Pole = magnets.polarity === "alternating" && row % 2 === 1 ? "S" : "N";
  const other: Pole = flap === "N" ? "S" : "N";
  return { flap, frame: magnets.force === "attract" ? other : flap };
}

/** Nearest to the middle that a sill's magnet stands, and the room beside that, as parts of the width: clear of the bolt in
 *  the middle (choice made here). */
const CLEAR_OF_BOLT = 0.12;
const ROOM = 0.34;

/** Places of a sill's magnets along the width from the flap's middle, right and left by turns, in the width's unit. */
export function sillPlaces(count: number, width: number): number[] {
  const right = Math.ceil(count / 2);
  const spread = (n: number) =>
    Array.from({ length: n }, (_, i) => width * (CLEAR_OF_BOLT + (ROOM * (i + 0.5)) / n));
  return [...spread(right), ...spread(count - right).map((x) => -x)];
}
