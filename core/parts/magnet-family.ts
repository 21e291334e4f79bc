/**
 * Torque tables of one geometry at many gaps, remanences and temperatures. Everything costly is done once, at
 * Chebyshev points of ln(gap); a table is then a weighted sum, a few microseconds and no allocation.
 *
 * ln(gap) because the torque is analytic in the gap right of 0 and has its nearest singularities on the imaginary
 * axis (a face's rim over a rim): at ±iπ/2 of ln(gap), whatever the gap.
 */
import type { Magnets } from "../door/door.ts";
import { remanenceAt } from "./magnet.ts";
import { type Profile, profile, profileAt } from "./magnet-profile.ts";
import { chooseZones, knotAngle, knotCount, type Zones } from "./magnet-zones.ts";
import { leastGap, magnetRows, torquePerRemanence2 } from "./magnets.ts";
import { fillCells, KNOT_VALUES, newTorqueTable, type TorqueTable } from "./torque-table.ts";

/** Error at the middle of a table's quintics, as a share of its peak: kept under 10⁻⁷, which is what is promised. */
const TABLE_TOLERANCE = 7e-8;
/** The same over a family's whole range of gaps. */
const FAMILY_TOLERANCE = 4e-7;
/** Error aimed at between a family's gaps. */
const GAP_TOLERANCE = 3e-8;
/** A table goes on past the stops by this much, rad: a step may look past a stop before it finds it. */
const PAST_STOP = 0.1;
/** Points added to what the estimate asks for: a sill's tilt takes a little off the gap. */
const SPARE_POINTS = 2;

export interface GapRange {
  /** m, above 0. */
  readonly low: number;
  readonly high: number;
}

export interface TorqueFamily {
  readonly magnets: Magnets;
  readonly zones: Zones;
  readonly end: number;
  readonly range: GapRange;
  /** Gaps below this are computed as this, m. */
  readonly least: number;
  /** ln(gap) at the family's points, and their barycentric weights. */
  readonly points: Float64Array;
  readonly weights: Float64Array;
  /** Torque, slope, curvature per Br² at each knot, each for all points in a row. */
  readonly values: Float64Array;
  /** Scratch of `fillTorqueTable`: the points' shares at a gap, and the knots' values. */
  readonly shares: Float64Array;
  readonly knots: Float64Array;
}

function profileAtGap(magnets: Magnets, gap: number, end: number): Profile {
  const torque = torquePerRemanence2(magnets, gap);
  const lever = Math.max(...magnetRows(magnets));
  const guess = [0.3, 0.6, 1, 1.5].map((share) =>
    Math.abs(torque(Math.min(end, (share * (0.5 * magnets.diameter + gap)) / lever))),
  );
  // The torque turns over a gap's length at the lever, or a little more.
  const widths = { first: (2 * (gap + 0.1 * magnets.diameter)) / lever, least: (0.1 * gap) / lever };
  return profile(torque, end, widths, Math.max(...guess));
}

/** Torque, slope and curvature at every knot, per Br²; at the centre torque and curvature are 0, being odd. */
function knotValues(of: Profile, zones: Zones, into: Float64Array, stride: number, offset: number): void {
  for (let knot = 0; knot < knotCount(zones); knot++) {
    const angle = Math.min(of.end, knotAngle(zones, knot));
    for (let order = 0; order < KNOT_VALUES; order++) {
      const zero = knot === 0 && order !== 1;
      into[(knot * KNOT_VALUES + order) * stride + offset] = zero ? 0 : profileAt(of, angle, order);
    }
  }
}

/** How many points of ln(gap) the range needs: the error falls as ρ⁻ⁿ, ρ from the singularities at ±iπ/2. */
function pointCount(range: GapRange): number {
  const half = 0.5 * Math.log(range.high / range.low);
  if (half === 0) return 1;
  const distance = Math.PI / (2 * half);
  const rho = distance + Math.sqrt(1 + distance * distance);
  return Math.ceil(-Math.log(GAP_TOLERANCE) / Math.log(rho)) + SPARE_POINTS;
}

/** Chebyshev points of the first kind over ln(gap), and their barycentric weights (Berrut & Trefethen, SIAM Rev. 46
 * (2004) 501, eq. 5.3). */
function gapPoints(range: GapRange): { points: Float64Array; weights: Float64Array } {
  const count = pointCount(range);
  const [low, high] = [Math.log(range.low), Math.log(range.high)];
  const angle = (i: number) => ((i + 0.5) * Math.PI) / count;
  const points = Float64Array.from(
    { length: count },
    (_, i) => 0.5 * (low + high) + 0.5 * (high - low) * Math.cos(angle(i)),
  );
  const weights = Float64Array.from({ length: count }, (_, i) => (i % 2 ? -1 : 1) * Math.sin(angle(i)));
  return { points, weights };
}

function familyOver(magnets: Magnets, maxAngle: number, wanted: GapRange, tolerance: number): TorqueFamily {
  const end = Math.min(Math.PI, maxAngle + PAST_STOP);
  const least = leastGap(magnets);
  const range = { low: Math.max(least, wanted.low), high: Math.max(least, wanted.high) };
  const { points, weights } = gapPoints(range);
  const profiles = Array.from(points, (point) => profileAtGap(magnets, Math.exp(point), end));
  const zones = chooseZones(profiles, tolerance);
  const size = knotCount(zones) * KNOT_VALUES;
  const values = new Float64Array(size * points.length);
  profiles.forEach((of, i) => {
    knotValues(of, zones, values, points.length, i);
  });
  return {
    magnets,
    zones,
    end,
    range,
    least,
    points,
    weights,
    values,
    shares: new Float64Array(points.length),
    knots: new Float64Array(size),
  };
}

/**
 * Everything about an arrangement's torque that does not depend on remanence and temperature, for |θ| up to
 * `maxAngle` (rad) and a range of gaps (m). Only the magnets' geometry, polarity and force are used.
 */
export function torqueFamily(magnets: Magnets, maxAngle: number, range: GapRange): TorqueFamily {
  return familyOver(magnets, maxAngle, range, FAMILY_TOLERANCE);
}

/** A gap range of ± five standard deviations, kept above a quarter of the nominal gap. */
export function gapRange(gap: number, sigma: number): GapRange {
  return { low: Math.max(gap / 4, gap - 5 * sigma), high: gap + 5 * sigma };
}

/** An empty table of the family's form, for `fillTorqueTable`. */
export function emptyTable(family: TorqueFamily): TorqueTable {
  return newTorqueTable(family.zones);
}

/** Each point's share in the interpolant at ln(gap) (second barycentric form, eq. 4.2 of the same). */
function setShares(family: TorqueFamily, x: number): void {
  const { points, weights, shares } = family;
  let sum = 0;
  for (let i = 0; i < points.length; i++) {
    if (x === points[i]) {
      shares.fill(0);
      shares[i] = 1;
      return;
    }
    shares[i] = weights[i] / (x - points[i]);
    sum += shares[i];
  }
  for (let i = 0; i < points.length; i++) shares[i] /= sum;
}

/** A knot's three values go side by side: three independent sums keep the adder busy. */
function interpolateKnots(family: TorqueFamily, gap: number): void {
  const { values, shares, knots } = family;
  const count = shares.length;
  setShares(family, Math.log(gap));
  for (let k = 0; k < knots.length; k += KNOT_VALUES) {
    const row = k * count;
    let torque = 0;
    let slope = 0;
    let curvature = 0;
    for (let i = 0; i < count; i++) {
      const share = shares[i];
      torque += share * values[row + i];
      slope += share * values[row + count + i];
      curvature += share * values[row + 2 * count + i];
    }
    knots[k] = torque;
    knots[k + 1] = slope;
    knots[k + 2] = curvature;
  }
}

/**
 * Fills a table of `emptyTable` for a gap (m, above 0), a remanence at 20 °C (T) and a temperature (°C).
 * Within the family's range of gaps: microseconds, no allocation, within 10⁻⁶ of the peak. Outside it the torque
 * is integrated anew (milliseconds) on the same cells, which below the range may be too wide for that accuracy.
 */
export function fillTorqueTable(
  family: TorqueFamily,
  wanted: number,
  remanence: number,
  temperature: number,
  table: TorqueTable,
): void {
  const { range, zones, knots } = family;
  const gap = Math.max(wanted, family.least);
  if (gap >= range.low && gap <= range.high) interpolateKnots(family, gap);
  else knotValues(profileAtGap(family.magnets, gap, family.end), zones, knots, 1, 0);
  const actual = remanenceAt(remanence, temperature);
  fillCells(table, knots, actual * actual);
}

/** The table of a door's magnets as stated, for |θ| up to the stop angle (rad): within 10⁻⁷ of the peak. */
export function torqueTable(magnets: Magnets, stopAngle: number): TorqueTable {
  const { gap, remanence, temperature } = magnets;
  const family = familyOver(magnets, stopAngle, { low: gap, high: gap }, TABLE_TOLERANCE);
  const table = emptyTable(family);
  fillTorqueTable(family, gap, remanence, temperature, table);
  return table;
}
