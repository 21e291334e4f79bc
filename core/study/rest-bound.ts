/**
 * How long a flap that turned inside the capture band, with too little energy to leave it, can at most go on moving: so that a
 * study need not follow every settled flap to rest to know which rests last.
 *
 * From turn to turn w = dθ/dt obeys w″ + (c/I) w′ + (k(θ)/I) w = 0, with k the slope of the pull, since the dry friction is the same
 * all along; so a half swing takes at most π/√(k_min/I − (c/2I)²) (Sturm's comparison theorem: the greater coefficient has the
 * nearer zeros). Its way is at least the width of the well at the energy E′ of its end, so that E′ ≤ E − τ_fric width(E′).
 */
import { lookUpWell, wellEnergy } from "../swing/fields.ts";
import { mostDamping, type SwingSystem } from "../swing/system.ts";

/** Places looked at across the band. */
const PLACES = 25;
/** Part of the greatest change of k from place to place by which it may be less between two places. */
const BETWEEN = 0.25;
/** Half swings after which nothing is said. */
const MOST_HALF_SWINGS = 200;

export class RestBound {
  private readonly angles = new Float64Array(PLACES);
  private readonly energies = new Float64Array(PLACES);
  private readonly torques = { torque: new Float64Array(PLACES), slope: new Float64Array(PLACES) };
  /** Least k from the well's floor to each place, N m/rad. */
  private readonly least = new Float64Array(PLACES);
  /** Distance between two places, rad, and the greatest k, N m/rad. */
  private spacing = 0;
  private most = 0;

  /** s from the turn at `angle`, rad; infinite where nothing so simple can be said. */
  find(system: SwingSystem, angle: number): number {
    const { capture } = system;
    if (capture === null || system.air.wind !== 0 || system.pressureMoment !== 0)
      return Number.POSITIVE_INFINITY;
    const friction = evenFriction(system, capture.centre - capture.half, capture.centre + capture.half);
    if (!(friction > 0)) return Number.POSITIVE_INFINITY;
    const floor = this.look(system, capture.centre, capture.half);
    if (floor === 0 || floor === PLACES - 1) return Number.POSITIVE_INFINITY;
    const energy = Math.max(0, wellEnergy(system, angle) - this.energies[floor]);
    return this.timeFrom(system, floor, friction, energy);
  }

  /** Looks the band up; returns the lowest place. */
  private look(system: SwingSystem, centre: number, half: number): number {
    const { angles, energies, torques, least } = this;
    const { slope } = torques;
    for (let i = 0; i < PLACES; i++) angles[i] = centre + half * ((2 * i) / (PLACES - 1) - 1);
    this.spacing = (2 * half) / (PLACES - 1);
    lookUpWell(system, angles, energies, torques);
    let floor = 0;
    let change = 0;
    this.most = -slope[0];
    for (let i = 1; i < PLACES; i++) {
      if (energies[i] < energies[floor]) floor = i;
      change = Math.max(change, Math.abs(slope[i] - slope[i - 1]));
      this.most = Math.max(this.most, -slope[i]);
    }
    this.most += BETWEEN * change;
    least[floor] = -slope[floor] - BETWEEN * change;
    for (let i = floor - 1; i >= 0; i--) least[i] = Math.min(least[i + 1], -slope[i] - BETWEEN * change);
    for (let i = floor + 1; i < PLACES; i++) least[i] = Math.min(least[i - 1], -slope[i] - BETWEEN * change);
    return floor;
  }

  /** From a turn with an energy above the lowest place, J: half swing by half swing. */
  private timeFrom(system: SwingSystem, floor: number, friction: number, energy: number): number {
    const { energies, least, spacing } = this;
    const base = energies[floor];
    let left = energy;
    let time = 0;
    const damping = mostDamping(system);
    let from = 0;
    let to = PLACES - 1;
    for (let i = 0; i < MOST_HALF_SWINGS; i++) {
      while (energies[from] - base > left) from++;
      while (energies[to] - base > left) to--;
      if (from < 1 || to > PLACES - 2) return Number.POSITIVE_INFINITY;
      if (this.holds(from - 1, to + 1, friction)) return time;
      const half = halfSwing(system, damping, Math.min(least[from - 1], least[to + 1]), left);
      time += half;
      const width = this.widthAt(floor, left - friction * (to - from) * spacing);
      if (width === 0) return time + half * this.fewMore(friction, left);
      left -= friction * width;
    }
    return Number.POSITIVE_INFINITY;
  }

  /** Whether dry friction holds a flap anywhere between two places. */
  private holds(from: number, to: number, friction: number): boolean {
    const { torque } = this.torques;
    return Math.abs(torque[from]) <= friction && Math.abs(torque[to]) <= friction;
  }

  /** No more than the width of the well at an energy above the lowest place, rad. */
  private widthAt(floor: number, energy: number): number {
    const { energies, spacing } = this;
    const base = energies[floor];
    let from = floor;
    let to = floor;
    while (from > 0 && energies[from - 1] - base <= energy) from--;
    while (to < PLACES - 1 && energies[to + 1] - base <= energy) to++;
    return (to - from) * spacing;
  }

  /** Half swings at most where the well is narrower than two places: √E falls by τ_fric/√(2 k_max) or more each time. */
  private fewMore(friction: number, energy: number): number {
    const { most, spacing } = this;
    const above = energy + (most * spacing * spacing) / 8;
    return Math.ceil(Math.sqrt(2 * most * above) / friction) + 1;
  }
}

/** What a half swing can take at most, s, with a slope of the pull of `least`, N m/rad, or more. */
function halfSwing({ inertia, air }: SwingSystem, damping: number, least: number, energy: number): number {
  const drag = damping + 2 * air.stillDrag * Math.sqrt((2 * energy) / inertia);
  const square = least / inertia - (drag / (2 * inertia)) ** 2;
  return square > 0 ? Math.PI / Math.sqrt(square) : Number.POSITIVE_INFINITY;
}

/** The dry friction of a stretch where it is the same all along, N m; else 0. */
function evenFriction({ cuts, friction }: SwingSystem, from: number, to: number): number {
  let even = Number.NaN;
  for (let region = 0; region < friction.length; region++) {
    if (cuts[region + 1] <= from || cuts[region] >= to) continue;
    if (Number.isNaN(even)) even = friction[region];
    else if (friction[region] !== even) return 0;
  }
  return even;
}
