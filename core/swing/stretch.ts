/**
 * A whole stretch at once: the flap from one cut or turning point to the next, as energy over the way instead of step by step.
 *
 * Over the angle the energy changes only by what takes it out, which is little, so it is found by sweeps (Picard's
 * iteration on collocation at Gauss points; Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*, I.8 and
 * II.7): speeds from the energies, losses from the speeds, energies from the losses. The way is measured by a variable in
 * which the speed leaves a turning point evenly (`ways.ts`), so that everything is smooth there. What is left is the time as
 * an integral, and the polynomial under it is the record of the stretch.
 */
import { airTorque, lookUpWell } from "./fields.ts";
import { integrate, lastTerms, POINT, POINTS, WEIGHT } from "./gauss.ts";
import { HalfSwings } from "./half-swings.ts";
import type { Forces, SwingSystem } from "./system.ts";
import { endsAtRest, evenLoss, evenShare, evenSlope, HALF_SWING, shareAt, slopeAt } from "./ways.ts";

/** Sweeps that a stretch may take. */
const MOST_SWEEPS = 14;
/** Of a change that a sweep made, the next makes the share that this one made of the last, but never trusted to be less, or at first. */
const LEAST_SHARE = 0.03;
/** What the next sweep may still change of the greatest kinetic energy, in units of the relative tolerance. */
const SETTLED = 12;
/** An end that has moved by less than this share of the way moves the energies by Taylor's formula, without a new look-up. */
const SLIGHT = 3e-3;

const HALF_SHARES = POINT.map((u) => shareAt(HALF_SWING, u));
const HALF_SLOPES = POINT.map((u) => slopeAt(HALF_SWING, u));

export class Stretch {
  /** Its way: p, or from rest to rest. */
  way = 0;
  /** Where it ends, rad and rad/s, and how long it takes, s. */
  angle = 0;
  speed = 0;
  time = 0;
  /** Energies gone on the way, J. */
  viscous = 0;
  air = 0;
  /** What the polynomial for the time may leave out, s: its last two terms. */
  rough = 0;
  /** Per point: speed, rad/s; once settled dt/du, s. */
  readonly rate = new Float64Array(POINTS);
  readonly halfSwings = new HalfSwings();
  private from = 0;
  private lossEnd = 0;
  private easeEnd = 0;
  /** Loss of the last half swing, still in `loss`, J; 0 where another stretch has been there. */
  private halfLoss = 0;
  /** Energy at the start, and how far the energies miss rest at an end that should be at rest, J. */
  private energy = 0;
  private miss = 0;
  /** Greatest kinetic energy of the last sweep, J. */
  private top = 0;
  /** Per point: share of the way and its slope per u; one more share for the end, 1. */
  private readonly share = new Float64Array(POINTS + 1);
  private readonly slope = new Float64Array(POINTS);
  /** Per point: lost so far, J, what a sweep makes of it, how much of a change it takes, and lost per u. */
  private readonly loss = new Float64Array(POINTS);
  private readonly next = new Float64Array(POINTS);
  private readonly ease = new Float64Array(POINTS);
  private readonly flow = new Float64Array(POINTS);
  /** Per point and at the end: energy of the well and of the dry friction, J. */
  private readonly well = new Float64Array(POINTS + 1);
  /** For an end that moves, the same as looked up last, with torques: at which angles, rad, J, N m and N m/rad. */
  private readonly angles = new Float64Array(POINTS + 1);
  private readonly looked = new Float64Array(POINTS + 1);
  private readonly torques = { torque: new Float64Array(POINTS + 1), slope: new Float64Array(POINTS + 1) };

  /** Forgets the half swings before. */
  reset(): void {
    this.halfSwings.forget();
    this.halfLoss = 0;
  }

  /**
   * Goes from an angle, with a speed and an energy (kinetic and of the well, J), to the angle `end` in a given way, or to rest
   * somewhere near it where the way ends at rest. False where the flap does not get there, or the sweeps do not settle.
   */
  go(
    system: SwingSystem,
    forces: Forces,
    from: number,
    speed: number,
    energy: number,
    end: number,
    way: number,
  ): boolean {
    this.from = from;
    this.angle = end;
    this.way = way;
    this.energy = energy;
    this.measure();
    if (endsAtRest(way)) this.lookUpToMove(system, forces);
    else this.lookUp(system, forces);
    if (way === HALF_SWING) this.firstHalfLosses(system, forces);
    else this.firstEvenLosses(system, forces, speed);
    return this.settle(system, forces) && this.finish(system, forces);
  }

  /** Sets out the shares of the way. */
  private measure(): void {
    const { share, slope, way } = this;
    const half = way === HALF_SWING;
    for (let i = 0; i < slope.length; i++) {
      share[i] = half ? HALF_SHARES[i] : evenShare(way, POINT[i]);
      slope[i] = half ? HALF_SLOPES[i] : evenSlope(way, POINT[i]);
    }
    share[POINTS] = 1;
  }

  /** Like those of the half swing before, smaller by what it tells; none without one. */
  private firstHalfLosses(system: SwingSystem, forces: Forces): void {
    const { loss, halfLoss } = this;
    this.lossEnd = this.nextHalfLoss(Math.abs(this.angle - this.from));
    const scale = halfLoss > 0 ? this.lossEnd / halfLoss : 0;
    for (let i = 0; i < loss.length; i++) loss[i] *= scale;
    this.easeBy(system, forces, halfLoss > 0 ? this.time : 0);
  }

  /** By the braking torques at both ends, changing evenly with u. */
  private firstEvenLosses(system: SwingSystem, forces: Forces, speed: number): void {
    const { loss, well, way, from } = this;
    const length = this.angle - from;
    const start = braking(system, forces, from, speed) * length;
    const left = this.energy - well[POINTS] - evenLoss(way, 1, start, 0);
    const endSpeed = left > 0 && way < 1 ? forces.sign * Math.sqrt((2 * left) / system.inertia) : 0;
    const end = braking(system, forces, this.angle, endSpeed) * length;
    for (let i = 0; i < loss.length; i++) loss[i] = evenLoss(way, POINT[i], start, end);
    this.lossEnd = evenLoss(way, 1, start, end);
    this.halfLoss = 0;
    this.easeBy(system, forces, (2 * length) / (speed + endSpeed));
  }

  /**
   * Shares of a sweep's change that are taken. More loss makes the flap slower, which makes less loss: for a braking that
   * falls off at an even rate over the time, a change that grows with u² comes back as a third of that rate.
   */
  private easeBy(system: SwingSystem, forces: Forces, time: number): void {
    const { ease } = this;
    const drag = 2 * system.air.stillDrag * Math.abs(this.angle - this.from);
    const rate = (forces.damping * time + drag) / (3 * system.inertia);
    for (let i = 0; i < ease.length; i++) ease[i] = 1 / (1 + rate * POINT[i]);
    this.easeEnd = 1 / (1 + rate);
  }

  /** Energies of the well at the points; what dry friction will have taken counts as a slope of the well. */
  private lookUp(system: SwingSystem, forces: Forces): void {
    const { share, well, angles, from } = this;
    const length = this.angle - from;
    const taken = forces.friction * length;
    for (let i = 0; i < angles.length; i++) angles[i] = from + length * share[i];
    lookUpWell(system, angles, well, null);
    for (let i = 0; i < well.length; i++) well[i] -= taken * share[i];
  }

  /** The same with torques, for an end that will move. */
  private lookUpToMove(system: SwingSystem, forces: Forces): void {
    const { share, well, angles, looked, torques, from } = this;
    const { torque } = torques;
    const length = this.angle - from;
    const { friction } = forces;
    for (let i = 0; i < angles.length; i++) angles[i] = from + length * share[i];
    lookUpWell(system, angles, looked, torques);
    for (let i = 0; i < looked.length; i++) {
      looked[i] -= friction * length * share[i];
      torque[i] += friction;
      well[i] = looked[i];
    }
  }

  /** How far the end has moved since the last look-up, rad. */
  private moved(): number {
    return this.angle - this.angles[POINTS];
  }

  /** Energies at the points that move with the end, by Taylor's formula. */
  private shift(): void {
    const { share, well, looked } = this;
    const { torque, slope } = this.torques;
    const moved = this.moved();
    for (let i = 0; i < looked.length; i++) {
      const d = moved * share[i];
      well[i] = looked[i] - d * (torque[i] + 0.5 * d * slope[i]);
    }
  }

  /** Sweeps until the energies stay; false where they do not, or where nothing turns the flap. */
  private settle(system: SwingSystem, forces: Forces): boolean {
    const rests = endsAtRest(this.way);
    const allowed = SETTLED * system.tolerance.relative;
    let before = Number.POSITIVE_INFINITY;
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      if (rests) this.miss = this.energy - this.lossEnd - this.well[POINTS];
      else this.miss = 0;
      const change = this.sweep(system, forces) + Math.abs(this.miss);
      if (rests && !this.moveEnd(system, forces)) return false;
      if (change * Math.max(LEAST_SHARE, change / before) <= allowed * this.top) return true;
      before = change;
    }
    return false;
  }

  /** One sweep; returns the change of the losses, J: at the end, in the middle and on the way to it. */
  private sweep(system: SwingSystem, forces: Forces): number {
    this.flows(system, forces);
    if (system.air.wind !== 0 || system.pressureMoment !== 0) this.gustyFlows(system, forces);
    const { loss, next, ease } = this;
    const whole = integrate(this.flow, next);
    const change = Math.abs(whole - this.lossEnd) + Math.abs(next[5] - loss[5]) + Math.abs(next[2] - loss[2]);
    for (let i = 0; i < loss.length; i++) loss[i] += ease[i] * (next[i] - loss[i]);
    this.lossEnd += this.easeEnd * (whole - this.lossEnd);
    return change;
  }

  /** Speeds from the energies, and from the speeds what damper and still air take per u. */
  private flows(system: SwingSystem, forces: Forces): void {
    const { well, share, slope, loss, rate, flow, energy, miss } = this;
    const { sign } = forces;
    const length = this.angle - this.from;
    const perInertia = 2 / system.inertia;
    const damping = forces.damping * length;
    const drag = system.air.stillDrag * sign * length;
    let top = 0;
    for (let i = 0; i < rate.length; i++) {
      const left = energy - well[i] - loss[i] - miss * share[i];
      const kinetic = Math.max(left, 0);
      if (kinetic > top) top = kinetic;
      const speed = sign * Math.sqrt(kinetic * perInertia);
      rate[i] = speed;
      flow[i] = (damping + drag * speed) * speed * slope[i];
    }
    this.top = top;
  }

  /** The same losses where wind or pressure act too. */
  private gustyFlows(system: SwingSystem, forces: Forces): void {
    const { share, slope, rate, flow, from } = this;
    const length = this.angle - from;
    for (let i = 0; i < flow.length; i++) {
      const torque = braking(system, forces, from + length * share[i], rate[i]);
      flow[i] = torque * length * slope[i];
    }
  }

  /** Newton's step of the turning point to where the energy is used up; false where nothing pulls the flap back. */
  private moveEnd(system: SwingSystem, forces: Forces): boolean {
    const { torque, slope } = this.torques;
    const excess = this.energy - this.lossEnd - this.well[POINTS];
    const pull = torque[POINTS] + this.moved() * slope[POINTS];
    this.angle -= excess / pull;
    const length = (this.angle - this.from) * forces.sign;
    if (!(pull * forces.sign < 0 && length > 0)) return false;
    if (Math.abs(this.moved()) < SLIGHT * length) this.shift();
    else this.lookUpToMove(system, forces);
    return true;
  }

  /** Time and energies of a settled stretch; false where it did not get to its end. */
  private finish(system: SwingSystem, forces: Forces): boolean {
    const { rate, slope, well } = this;
    const left = this.energy - this.lossEnd - well[POINTS];
    const rests = endsAtRest(this.way);
    this.miss = rests ? left : 0;
    this.flows(system, forces);
    const length = this.angle - this.from;
    let time = 0;
    let viscous = 0;
    for (let i = 0; i < rate.length; i++) {
      const speed = rate[i];
      const along = length * slope[i];
      viscous += WEIGHT[i] * along * speed;
      rate[i] = along / speed;
      time += WEIGHT[i] * rate[i];
    }
    this.time = time;
    this.viscous = forces.damping * viscous;
    this.air = this.lossEnd - this.viscous;
    this.rough = lastTerms(rate);
    this.speed = rests ? 0 : forces.sign * Math.sqrt((2 * left) / system.inertia);
    return time < Number.POSITIVE_INFINITY && this.speed * forces.sign >= 0;
  }

  /** Loss that the next half swing may have, J; 0 where nothing tells. */
  nextHalfLoss(way: number): number {
    return this.halfLoss > 0 ? this.halfLoss * this.halfSwings.nextLossShare(way) : 0;
  }

  /** Keeps what this half swing tells about the next; it has been taken. */
  taken(): void {
    if (this.way !== HALF_SWING) return;
    this.halfLoss = this.lossEnd;
    this.halfSwings.add(Math.abs(this.angle - this.from), this.lossEnd);
  }
}

/** Torque of damper and air against the motion, N m: of the speed's sign where they brake. */
export function braking(system: SwingSystem, forces: Forces, angle: number, speed: number): number {
  return forces.damping * speed - airTorque(system, angle, speed);
}
