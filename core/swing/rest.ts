/**
 * Where a flap can rest: the set of angles within the stops at which |τ_0(θ)| ≤ k_s τ_fric(θ), or, without dry friction,
 * the stable balance points; and a stop against which it is pressed. Ends are found by root finding (model, section 2).
 */
import type { SwingSystem } from "./system.ts";
import { staticEnergy, staticTorque } from "./torque.ts";

/** A connected set of rest positions, rad; a single point where `low` equals `high`. */
export interface RestSet {
  readonly low: number;
  readonly high: number;
}

/** Widest spacing of the search for sign changes, rad; finer where the magnets' table is finer. */
const SEARCH_STEP = 0.01;

/** Root of `f` between two ends of opposite sign, to the last bits: bisection with a secant's guess (Illinois rule). */
export function bracketedRoot(f: (x: number) => number, a: number, b: number): number {
  let [low, high, fLow, fHigh] = [a, b, f(a), f(b)];
  if (fLow === 0) return low;
  for (let i = 0; i < 200 && fHigh !== 0; i++) {
    const middle = i % 3 === 2 ? (low + high) / 2 : (low * fHigh - high * fLow) / (fHigh - fLow);
    if (!(middle > Math.min(low, high) && middle < Math.max(low, high))) break;
    const value = f(middle);
    if (value > 0 !== fHigh > 0) [low, fLow] = [high, fHigh];
    else fLow /= 2;
    [high, fHigh] = [middle, value];
    if (Math.abs(high - low) < 1e-15) break;
  }
  return Math.abs(f(low)) < Math.abs(f(high)) ? low : high;
}

/** Least of `f` between two ends where it dips once: golden section (Kiefer 1953). */
export function dip(f: (x: number) => number, a: number, b: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [a, b];
  for (let i = 0; i < 60; i++) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (f(left) < f(right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}

/** Search points of one region, ends included. */
function searchPoints(system: SwingSystem, region: number): Float64Array {
  const low = system.cuts[region];
  const high = system.cuts[region + 1];
  const fine = system.magnets === null ? SEARCH_STEP : Math.min(SEARCH_STEP, system.magnets.fineWidth / 2);
  const count = Math.max(8, Math.ceil((high - low) / fine));
  return Float64Array.from({ length: count + 1 }, (_, i) =>
    i === count ? high : low + ((high - low) * i) / count,
  );
}

/** All sets of rest positions in rising order, touching ones joined. */
export function restSets(system: SwingSystem): readonly RestSet[] {
  const found: RestSet[] = [];
  const regions = system.cuts.length - 1;
  for (let region = 0; region < regions; region++) {
    const hold = system.staticRatio * system.friction[region];
    const points = searchPoints(system, region);
    found.push(...(hold > 0 ? heldSets(system, points, hold) : balancePoints(system, points)));
  }
  const { stopAngle } = system;
  if (staticTorque(system, stopAngle) > 0) found.push({ low: stopAngle, high: stopAngle });
  if (staticTorque(system, -stopAngle) < 0) found.unshift({ low: -stopAngle, high: -stopAngle });
  return found.length > 0 ? joined(found) : [lowestPoint(system)];
}

/** Where the static energy is least: a flap balances there even if rounding hid the balance from the search. */
function lowestPoint(system: SwingSystem): RestSet {
  const points = Array.from({ length: system.cuts.length - 1 }, (_, region) => [
    ...searchPoints(system, region),
  ]).flat();
  const angle = points.reduce((best, a) => (staticEnergy(system, a) < staticEnergy(system, best) ? a : best));
  return { low: angle, high: angle };
}

/** Sets within one region in which dry friction holds the flap. */
function heldSets(system: SwingSystem, points: Float64Array, hold: number): RestSet[] {
  const torque = (angle: number) => staticTorque(system, angle);
  const excess = (angle: number) => Math.abs(torque(angle)) - hold;
  const torques = points.map(torque);
  const over = torques.map((value) => Math.abs(value) - hold);
  const sets: RestSet[] = [];
  let start = over[0] <= 0 ? points[0] : Number.NaN;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (over[i - 1] > 0 && over[i] > 0) {
      if (torques[i - 1] > 0 !== torques[i] > 0)
        sets.push(...setAround(excess, a, bracketedRoot(torque, a, b), b));
      else if (dips(over, i)) sets.push(...setAround(excess, a, dip(excess, a, b), b));
    } else if (over[i - 1] > 0) start = bracketedRoot(excess, a, b);
    else if (over[i] > 0) {
      sets.push({ low: start, high: bracketedRoot(excess, b, a) });
      start = Number.NaN;
    } else sets.push(...gapWithin(system, a, b, hold));
  }
  if (!Number.isNaN(start)) sets.push({ low: start, high: points[points.length - 1] });
  return splitByGaps(sets);
}

/** Whether values can have a least place between i − 1 and i that both miss: next to a discrete minimum. */
function dips(values: Float64Array, i: number): boolean {
  const falls = i < 2 || values[i - 1] <= values[i - 2];
  const rises = i + 1 >= values.length || values[i] <= values[i + 1];
  return falls && rises;
}

/** A set so narrow that both search points miss it, about its most restful place; none where that does not rest either. */
function setAround(excess: (angle: number) => number, a: number, middle: number, b: number): RestSet[] {
  if (excess(middle) > 0) return [];
  return [{ low: bracketedRoot(excess, a, middle), high: bracketedRoot(excess, b, middle) }];
}

/** A gap between two resting search points in which friction does not hold; marked by a set with its ends exchanged. */
function gapWithin(system: SwingSystem, a: number, b: number, hold: number): RestSet[] {
  const ease = (angle: number) => hold - Math.abs(staticTorque(system, angle));
  const middle = (a + b) / 2;
  if (ease(middle) > Math.min(ease(a), ease(b)) || ease(middle) > hold / 4) return [];
  const least = dip(ease, a, b);
  if (ease(least) >= 0) return [];
  return [{ low: bracketedRoot(ease, b, least), high: bracketedRoot(ease, a, least) }];
}

/** Cuts the marked gaps out of the sets that contain them. */
function splitByGaps(sets: readonly RestSet[]): RestSet[] {
  const gaps = sets.filter((s) => s.low > s.high);
  let kept = sets.filter((s) => s.low <= s.high);
  for (const gap of gaps) {
    kept = kept.flatMap((s) =>
      s.low <= gap.high && gap.low <= s.high
        ? [
            { low: s.low, high: gap.high },
            { low: gap.low, high: s.high },
          ]
        : [s],
    );
  }
  return kept;
}

/** Stable balance points within one region without dry friction: τ_0 falls through zero. */
function balancePoints(system: SwingSystem, points: Float64Array): RestSet[] {
  const torque = (angle: number) => staticTorque(system, angle);
  const sets: RestSet[] = [];
  for (let i = 1; i < points.length; i++) {
    const before = torque(points[i - 1]);
    const after = torque(points[i]);
    const falls = before > 0 && after <= 0;
    const startsAtZero = i === 1 && before === 0 && after < 0;
    if (!falls && !startsAtZero) continue;
    const angle = startsAtZero ? points[0] : bracketedRoot(torque, points[i - 1], points[i]);
    sets.push({ low: angle, high: angle });
  }
  return sets;
}

function joined(sets: readonly RestSet[]): RestSet[] {
  const rising = [...sets].sort((a, b) => a.low - b.low);
  const result: RestSet[] = [];
  for (const set of rising) {
    const last = result[result.length - 1];
    if (last !== undefined && set.low <= last.high + 1e-12) {
      result[result.length - 1] = { low: last.low, high: Math.max(last.high, set.high) };
    } else result.push(set);
  }
  return result;
}

function distanceTo(set: RestSet, angle: number): number {
  return Math.max(0, set.low - angle, angle - set.high);
}

/** The set nearest an angle; the lower of two equally near. A flap within stops always has one. */
export function nearestRestSet(sets: readonly RestSet[], angle: number): RestSet {
  return sets.reduce((best, set) => (distanceTo(set, angle) < distanceTo(best, angle) ? set : best));
}

/** Largest distance of a rest position in the set nearest `centre` from it, rad. */
export function deadBand(sets: readonly RestSet[], centre: number): number {
  const set = nearestRestSet(sets, centre);
  return Math.max(Math.abs(set.low - centre), Math.abs(set.high - centre));
}

/** Those sets that reach outside centre ± half. Rounding of an exact tie counts as inside. */
export function setsOutside(sets: readonly RestSet[], centre: number, half: number): readonly RestSet[] {
  const edge = half * (1 + 1e-12) + 1e-14;
  return sets.filter((s) => s.low < centre - edge || s.high > centre + edge);
}

/** Static energy at the bottom of the basin that holds an angle, J: downhill by τ_0 to where it changes sign, or to a stop. */
export function basinFloor(system: SwingSystem, angle: number): number {
  const torque = (a: number) => staticTorque(system, a);
  const sign = Math.sign(torque(angle));
  if (sign === 0) return staticEnergy(system, angle);
  const fine = system.magnets === null ? SEARCH_STEP : Math.min(SEARCH_STEP, system.magnets.fineWidth / 2);
  let from = angle;
  for (;;) {
    const to = sign * Math.min(sign * from + fine, system.stopAngle);
    if (torque(to) * sign <= 0) return staticEnergy(system, bracketedRoot(torque, from, to));
    if (sign * to >= system.stopAngle) return staticEnergy(system, to);
    from = to;
  }
}
