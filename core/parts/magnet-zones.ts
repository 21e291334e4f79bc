/**
 * Where a torque table's cells go: two zones of equal cells, the fewest that keep every quintic within a tolerance.
 */
import { type Profile, profileAt } from "./magnet-profile.ts";

export interface Zones {
  readonly fineWidth: number;
  readonly fineCells: number;
  readonly coarseWidth: number;
  readonly coarseCells: number;
}

/** Error of the Hermite quintic on a cell of width h: |f⁽⁶⁾| h⁶/(6! 4³) at its middle (Davis, Interpolation and
 * Approximation, th. 3.5.1). */
const HERMITE_ERROR = 46080;
/** Places per panel at which the sixth derivative is looked at. */
const LOOKS = 8;

export function knotCount(zones: Zones): number {
  return zones.fineCells + zones.coarseCells + 1;
}

/** Angle of the i-th knot, 0 … cells. */
export function knotAngle(zones: Zones, i: number): number {
  const past = i - zones.fineCells;
  return past <= 0 ? i * zones.fineWidth : zones.fineCells * zones.fineWidth + past * zones.coarseWidth;
}

/** Times the cells are narrowed, by a fifth at most, should the leading term have promised too much. */
const ROUNDS = 8;
/** A panel's points can't tell of anything finer than this share of it: what looks so is rounding. */
const FINEST_SHARE = 1 / 16;

/** Widths that the leading error term allows, at places in rising order. */
function allowedWidths(of: Profile, tolerance: number): { angle: number; width: number }[] {
  const allowed = HERMITE_ERROR * tolerance * of.peak;
  return of.panels.flatMap((panel) =>
    Array.from({ length: LOOKS }, (_, i) => {
      const angle = panel.start + (i * panel.width) / (LOOKS - 1);
      const sixth = Math.abs(profileAt(of, Math.min(angle, of.end), 6));
      const width = (allowed / (sixth + Number.MIN_VALUE)) ** (1 / 6);
      return { angle, width: Math.min(0.25 * of.end, Math.max(FINEST_SHARE * panel.width, width)) };
    }),
  );
}

/** Running least of a list's widths, from its left or its right end. */
function runningLeast(widths: readonly number[]): number[] {
  let least = Number.POSITIVE_INFINITY;
  return widths.map((width) => {
    least = Math.min(least, width);
    return least;
  });
}

/** The split with the fewest cells, widths shrunk by a factor. */
function bestSplit(places: readonly { angle: number; width: number }[], end: number, shrink: number): Zones {
  const widths = places.map((place) => shrink * place.width);
  const fine = runningLeast(widths);
  const coarse = runningLeast([...widths].reverse()).reverse();
  let best: Zones | null = null;
  for (let i = 1; i < places.length; i++) {
    const split = places[i].angle;
    if (split <= 0 || split >= end) continue;
    const fineCells = Math.ceil(split / fine[i]);
    const coarseCells = Math.ceil((end - split) / coarse[i]);
    if (best && fineCells + coarseCells >= best.fineCells + best.coarseCells) continue;
    best = {
      fineWidth: split / fineCells,
      fineCells,
      coarseWidth: (end - split) / coarseCells,
      coarseCells,
    };
  }
  return best ?? { fineWidth: end / 8, fineCells: 4, coarseWidth: end / 8, coarseCells: 4 };
}

/** Value in the middle of the quintic through two knots' values, slopes and curvatures. */
function quinticMiddle(of: Profile, a: number, b: number): number {
  const h = b - a;
  const mean = 0.5 * (profileAt(of, a) + profileAt(of, b));
  const slopes = profileAt(of, a, 1) - profileAt(of, b, 1);
  const curvatures = profileAt(of, a, 2) + profileAt(of, b, 2);
  return mean + (5 / 32) * h * slopes + (1 / 64) * h * h * curvatures;
}

/** Greatest error over the cells' middles, as a share of the profile's peak. */
export function zoneError(of: Profile, zones: Zones): number {
  let worst = 0;
  for (let i = 1; i < knotCount(zones); i++) {
    const [a, b] = [knotAngle(zones, i - 1), Math.min(of.end, knotAngle(zones, i))];
    worst = Math.max(worst, Math.abs(quinticMiddle(of, a, b) - profileAt(of, 0.5 * (a + b))));
  }
  return worst / of.peak;
}

/** Zones on which the quintics stay within `tolerance` (a share of each profile's peak) of every profile given. */
export function chooseZones(profiles: readonly Profile[], tolerance: number): Zones {
  const [{ end }] = profiles;
  const places = profiles
    .flatMap((of) => allowedWidths(of, tolerance))
    .sort((left, right) => left.angle - right.angle);
  let shrink = 1;
  let zones = bestSplit(places, end, shrink);
  for (let round = 0; round < ROUNDS; round++) {
    const error = Math.max(...profiles.map((of) => zoneError(of, zones)));
    if (error <= tolerance) break;
    shrink *= Math.min(0.97, Math.max(0.8, (tolerance / error) ** (1 / 6)));
    zones = bestSplit(places, end, shrink);
  }
  return zones;
}
