/**
 * The flap as an equation of motion: one flat object of numbers, made once per swing from the parts.
 *
 *   I θ̈ = −S g sin(θ − δ) + τ_mag(θ) + τ_air(θ, ω) + τ_Δp(θ) − c(θ) ω − τ_fric(θ) sgn ω        (model, section 2)
 *
 * The axis of θ is cut at the angles where the right side jumps or has a kink (seal edge, damper edge, pressure vent,
 * stops). Between two cuts the damping and the dry friction are constants, so an integrator that stops at every cut
 * never steps across a jump.
 */

import type { Door } from "../door/door.ts";
import type { FlapBody } from "../parts/flap.ts";
import { pressureMoment, VENT_ANGLE } from "../parts/pressure.ts";
import { COEFFICIENTS_PER_CELL, type TorqueTable } from "../parts/torque-table.ts";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";

/** Angles of the latch that the swing is judged by, rad. */
export interface CaptureBand {
  /** θ_off, the slot's centre. */
  readonly centre: number;
  /** θ_c: the bolt finds the slot within this of the centre, edges included. */
  readonly half: number;
}

/** Constants of the moving air, all per unit of ½ρ_a C_d W = `scale`. */
export interface AirLoad {
  /** ½ ρ_a C_d W, kg/m². */
  readonly scale: number;
  /** Hinge to the plate's upper and lower edge, m. */
  readonly inner: number;
  readonly outer: number;
  /** κ, multiplies only what the motion adds. */
  readonly swingFactor: number;
  /** m/s, positive towards outdoors. */
  readonly wind: number;
  /** κ k of still air, N m s²: torque −k|ω|ω. */
  readonly stillDrag: number;
}

/** What is constant while the flap moves through one region in one direction. */
export interface Forces {
  /** +1 or −1. */
  sign: number;
  /** c + c_d, N m s/rad. */
  damping: number;
  /** Dry friction with its sign, −τ_fric sgn ω, N m. */
  friction: number;
}

/** Before any region. Not numbers, so that engines lay the fields down as fractions from the start and need not change their minds. */
export function noForces(): Forces {
  return { sign: Number.NaN, damping: Number.NaN, friction: Number.NaN };
}

/** What the step control may be off by, per step: relative, and in rad and rad/s, s and J. */
export interface Tolerance {
  readonly relative: number;
  readonly absolute: number;
  readonly time: number;
  readonly energy: number;
  /** Whether whole stretches are tried before steps. */
  readonly stretches: boolean;
}

/** For figures that are shown: settle times within 10⁻⁷ s or so, the ledger closed to 10⁻⁶ over ten thousand steps. */
export const FINE: Tolerance = {
  relative: 1e-9,
  absolute: 1e-11,
  time: 1e-10,
  energy: 3e-12,
  stretches: false,
};
/** For many swings: settle times within 10⁻⁵ s or so, 10⁻⁴ s at worst, far below what any input is known to. */
export const COARSE: Tolerance = {
  relative: 3e-7,
  absolute: 3e-9,
  time: 3e-8,
  energy: 3e-8,
  stretches: true,
};

export interface SwingSystem {
  /** I, kg m². */
  readonly inertia: number;
  /** S g, N m. */
  readonly weightMoment: number;
  /** δ, rad: the angle at which gravity alone would hold the flap. */
  readonly plumb: number;
  readonly magnets: TorqueTable | null;
  readonly air: AirLoad;
  /** Δp W (b² − o²)/2, N m: the pressure's torque on the closed flap. */
  readonly pressureMoment: number;
  /** k_s, at least 1. */
  readonly staticRatio: number;
  readonly stopAngle: number;
  readonly restitution: number;
  readonly hingeFriction: number;
  /** Cuts of the θ axis in rising order, the stops first and last. Region i lies between cuts i and i + 1. */
  readonly cuts: Float64Array;
  /** Per region: viscous coefficient c + c_d, N m s/rad. */
  readonly damping: Float64Array;
  /** Per region: kinetic dry friction, N m. */
  readonly friction: Float64Array;
  /** Per region: the seal's part of the friction, N m. */
  readonly sealFriction: Float64Array;
  /**
   * Per region: longest step over angle, rad: two fine cells where the magnets' energy has a hill, infinite where the flap's
   * energy only rises away from its low point.
   */
  readonly longestGlide: Float64Array;
  readonly tolerance: Tolerance;
  /** `null` without a latch. */
  readonly capture: CaptureBand | null;
}

/** Rising, distinct cuts within ±stop, with the stops themselves at the ends. */
function cutsWithin(stop: number, angles: readonly number[]): Float64Array {
  const cuts = [-stop, stop];
  for (const angle of angles) {
    if (Math.abs(angle) < stop) cuts.push(0 - angle, angle);
  }
  return risingCuts(cuts);
}

/** The same numbers in rising order, each once. Few numbers: sorted in place by insertion. */
export function risingCuts(cuts: number[]): Float64Array {
  let count = 0;
  for (const cut of cuts) {
    let place = count;
    while (place > 0 && cuts[place - 1] > cut) place--;
    if (place > 0 && cuts[place - 1] === cut) continue;
    for (let i = count; i > place; i--) cuts[i] = cuts[i - 1];
    cuts[place] = cut;
    count++;
  }
  const rising = new Float64Array(count);
  for (let i = 0; i < count; i++) rising[i] = cuts[i];
  return rising;
}

/** Fills one value per region from a rule of the region's middle angle. */
function perRegion(cuts: Float64Array, rule: (middle: number) => number): Float64Array {
  const values = new Float64Array(cuts.length - 1);
  for (let i = 0; i < values.length; i++) values[i] = rule((cuts[i] + cuts[i + 1]) / 2);
  return values;
}

/** The air's constants of a door: strips of the plate from the hinge offset to the bottom edge. */
export function airLoad(door: Pick<Door, "air">, flap: FlapBody): AirLoad {
  const scale = 0.5 * door.air.density * door.air.dragCoefficient * flap.width;
  const still = (scale * (flap.reach ** 4 - flap.hingeOffset ** 4)) / 4;
  return {
    scale,
    inner: flap.hingeOffset,
    outer: flap.reach,
    swingFactor: door.air.swingFactor,
    wind: door.air.windSpeed,
    stillDrag: door.air.swingFactor * still,
  };
}

/** Puts the parts together. The magnet table and the capture band are given, since studies make them anew per sample. */
export function swingSystem(
  door: Door,
  flap: FlapBody,
  magnets: TorqueTable | null,
  capture: CaptureBand | null,
  tolerance: Tolerance = FINE,
): SwingSystem {
  const { hinge, seal, damper, air } = door;
  const moment = pressureMoment(air.pressureDifference, flap.width, flap.reach, flap.hingeOffset);
  const weightMoment = flap.firstMoment * STANDARD_GRAVITY;
  const angles: number[] = [];
  if (seal.frictionTorque > 0) angles.push(seal.contactAngle);
  if (damper.coefficient > 0) angles.push(damper.withinAngle);
  if (moment !== 0) angles.push(0, VENT_ANGLE);
  const hill = magnets !== null && hasHill(magnets, weightMoment, door.opening.outOfPlumb);
  const fineWidth = magnets?.fineWidth ?? 0;
  const fineEnd = fineWidth * (magnets?.fineCells ?? 0);
  if (fineEnd > 0 && (hill || !tolerance.stretches || !smoothAcross(fineEnd, angles, hinge.stopAngle))) {
    angles.push(fineEnd);
  }
  const cuts = cutsWithin(hinge.stopAngle, angles);
  const sealAt = (middle: number) => (Math.abs(middle) <= seal.contactAngle ? seal.frictionTorque : 0);
  const damperAt = (middle: number) => (Math.abs(middle) <= damper.withinAngle ? damper.coefficient : 0);
  return shaped({
    inertia: flap.inertia,
    weightMoment,
    plumb: door.opening.outOfPlumb,
    magnets,
    air: airLoad(door, flap),
    pressureMoment: moment,
    staticRatio: hinge.staticRatio,
    stopAngle: hinge.stopAngle,
    restitution: hinge.stopRestitution,
    hingeFriction: hinge.frictionTorque,
    cuts,
    damping: perRegion(cuts, (m) => hinge.viscousDamping + damperAt(m)),
    friction: perRegion(cuts, (m) => hinge.frictionTorque + sealAt(m)),
    sealFriction: perRegion(cuts, sealAt),
    longestGlide: perRegion(cuts, (m) =>
      hill && Math.abs(m) < fineEnd ? 2 * fineWidth : Number.POSITIVE_INFINITY,
    ),
    tolerance,
    capture,
  });
}

/** What a system has per region. */
export type Regions = Pick<SwingSystem, "cuts" | "damping" | "friction" | "sealFriction" | "longestGlide">;

/**
 * A system with its fields laid down in one order: engines read objects of one layout fastest, and an object spread into
 * another has a layout of its own.
 */
export function shaped(s: SwingSystem): SwingSystem {
  return recut(s, s);
}

/** The same with other regions. */
export function recut(s: SwingSystem, regions: Regions): SwingSystem {
  return {
    inertia: s.inertia,
    weightMoment: s.weightMoment,
    plumb: s.plumb,
    magnets: s.magnets,
    air: s.air,
    pressureMoment: s.pressureMoment,
    staticRatio: s.staticRatio,
    stopAngle: s.stopAngle,
    restitution: s.restitution,
    hingeFriction: s.hingeFriction,
    cuts: regions.cuts,
    damping: regions.damping,
    friction: regions.friction,
    sealFriction: regions.sealFriction,
    longestGlide: regions.longestGlide,
    tolerance: s.tolerance,
    capture: s.capture,
  };
}

/** Ratio of a region's two edges up to which the magnets' tail is smooth for a whole stretch. */
const TAIL_RATIO = 8;

/**
 * Whether a whole stretch may cross the end of the magnets' fine zone. The tail's scale at an angle is that angle (the well's
 * poles lie about the centre), so that the points of a stretch follow it across any region whose edges are not too unlike.
 */
function smoothAcross(fineEnd: number, cuts: readonly number[], stop: number): boolean {
  const below = Math.max(0, ...cuts.filter((cut) => cut <= fineEnd));
  const above = Math.min(stop, ...cuts.filter((cut) => cut > fineEnd));
  return above <= TAIL_RATIO * below;
}

/** Whether the magnets push outwards harder than gravity pulls back anywhere: a hill that a step over angle could leap. */
function hasHill(magnets: TorqueTable, weightMoment: number, plumb: number): boolean {
  for (let i = 1; i < magnets.fineCells; i++) {
    const gravity = weightMoment * Math.sin(Math.max(0, i * magnets.fineWidth - Math.abs(plumb)));
    if (magnets.torque[i * COEFFICIENTS_PER_CELL] > gravity) return true;
  }
  return false;
}

/** True where a mirror image would move alike, so that one direction of let-go stands for both. */
export function isSymmetric(system: SwingSystem): boolean {
  return (
    system.plumb === 0 &&
    system.air.wind === 0 &&
    system.pressureMoment === 0 &&
    (system.capture === null || system.capture.centre === 0)
  );
}

/** Region that a flap at `angle` moving in direction `sign` is in: a flap on a cut is in the region ahead of it. */
export function regionOf(system: SwingSystem, angle: number, sign: number): number {
  const { cuts } = system;
  const last = cuts.length - 2;
  let region = 0;
  if (sign > 0) while (region < last && cuts[region + 1] <= angle) region++;
  else while (region < last && cuts[region + 1] < angle) region++;
  return region;
}

/** Greatest viscous damping anywhere, N m s/rad. */
export function mostDamping({ damping }: SwingSystem): number {
  let most = 0;
  for (let i = 0; i < damping.length; i++) if (damping[i] > most) most = damping[i];
  return most;
}

/** Kinetic dry friction at an angle, N m; on a cut the greater of its two sides, as the seal's edge counts as touching. */
export function frictionAt(system: SwingSystem, angle: number): number {
  const below = system.friction[regionOf(system, angle, -1)];
  const above = system.friction[regionOf(system, angle, 1)];
  return Math.max(below, above);
}
