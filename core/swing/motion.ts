/**
 * The driver's inner part: carries a moving flap through one region of the θ axis to the next thing that happens to it,
 * a cut, a turning point or a given moment, and places that on the solution itself, not on a step's end.
 *
 * What could be missed, and how it is not: dry friction has one sign between two turning points, so the angle is
 * monotonic there and a step crosses a cut at most once, unless it hides a turning point as well. A step is therefore
 * capped well below half a swing, and every step whose end has the other sign of speed is searched for its turning point
 * before its cuts.
 */
import {
  acceleration,
  airPower,
  OUT_AIR,
  OUT_ANGLE,
  OUT_ERROR,
  OUT_SIZE,
  OUT_SPEED,
  OUT_SQUARE,
  step,
} from "./dormand-prince.ts";
import type { SwingSystem } from "./system.ts";
import { frictionAt, regionOf } from "./system.ts";
import { staticTorque } from "./torque.ts";

/** What ended an advance. */
export const REACHED_CUT = 1;
export const REACHED_TURN = 2;
export const REACHED_TIME = 3;
export const OUT_OF_WORK = 4;
export type Reached = typeof REACHED_CUT | typeof REACHED_TURN | typeof REACHED_TIME | typeof OUT_OF_WORK;

/** Below this speed a flap that the dry friction can hold is at rest: a creep that would never reach 0, rad/s. */
const CREEP_SPEED = 1e-9;
/** A Newton step below this, s, and below this share of the step it searches, is finished by a Taylor step. */
const TAYLOR_STEP = 1e-6;
const TAYLOR_SHARE = 1e-5;
const MAX_ITERATIONS = 60;
/** Steps that one motion may take: far more than 600 s of any door that moves. */
export const WORK_LIMIT = 400_000;

/** Called with every accepted step: the state it started from and its size are in `motion.from…`. */
export interface StepObserver {
  onStep(motion: Motion): void;
}

/** A flap on its way. Everything is in place: nothing is allocated while it moves. */
export class Motion {
  time = 0;
  angle = 0;
  speed = 0;
  acceleration = 0;
  /** Direction of motion, +1 or −1. */
  sign = 1;
  region = 0;
  /** Proposed size of the next step, s. */
  size = 0;
  steps = 0;
  rejected = 0;
  /** Start of the last accepted step, for whoever looks inside it. */
  fromTime = 0;
  fromAngle = 0;
  fromSpeed = 0;
  fromAcceleration = 0;
  damping = 0;
  /** Dry friction of the step with its sign, N m. */
  friction = 0;
  /** Energies gone so far, J; `air` may be negative where wind or pressure give. */
  viscous = 0;
  air = 0;
  hinge = 0;
  seal = 0;
  stops = 0;
  readonly out = new Float64Array(OUT_SIZE);
}

/** Places a flap; it has no direction yet where its speed is 0 (see `startFromRest`). */
export function place(motion: Motion, system: SwingSystem, time: number, angle: number, speed: number): void {
  motion.time = time;
  motion.angle = angle;
  motion.speed = speed;
  motion.steps = 0;
  motion.rejected = 0;
  motion.viscous = 0;
  motion.air = 0;
  motion.hinge = 0;
  motion.seal = 0;
  motion.stops = 0;
  motion.size = 0.02 * longestStep(system);
  if (speed !== 0) head(motion, system, Math.sign(speed));
}

/** Gives the flap a direction and the region that lies ahead of it. */
export function head(motion: Motion, system: SwingSystem, sign: number): void {
  motion.sign = sign;
  motion.region = regionOf(system, motion.angle, sign);
}

/** The cap on a step: an eighth of the small swing's period by gravity alone, s. */
export function longestStep(system: SwingSystem): number {
  return (Math.PI / 4) * Math.sqrt(system.inertia / system.weightMoment);
}

/** Sticking rule: true where a flap whose speed is 0 stays for good (model, section 2). */
export function sticks(system: SwingSystem, angle: number): boolean {
  return Math.abs(staticTorque(system, angle)) <= system.staticRatio * frictionAt(system, angle);
}

/** Starts a flap whose speed is 0 in the direction of τ_0; false where it stays. */
export function startFromRest(motion: Motion, system: SwingSystem): boolean {
  motion.speed = 0;
  if (sticks(system, motion.angle)) return false;
  const torque = staticTorque(system, motion.angle);
  if (torque === 0) return false;
  const sign = Math.sign(torque);
  if (motion.angle * sign >= system.stopAngle) return false;
  head(motion, system, sign);
  return true;
}

/**
 * Moves on to the next cut, turning point or `end`, whichever is first. At a cut the angle is the cut's to the last bit,
 * at a turning point the speed is 0.
 */
export function advance(
  motion: Motion,
  system: SwingSystem,
  end: number,
  observer: StepObserver | null,
): Reached {
  const { out, region, sign } = motion;
  const target = sign > 0 ? system.cuts[region + 1] : system.cuts[region];
  const damping = system.damping[region];
  const friction = -sign * system.friction[region];
  const cap = longestStep(system);
  motion.damping = damping;
  motion.friction = friction;
  motion.acceleration = acceleration(system, motion.angle, motion.speed, damping, friction);
  while (motion.steps + motion.rejected < WORK_LIMIT) {
    const left = end - motion.time;
    if (left <= 0) return REACHED_TIME;
    const wanted = Math.min(motion.size, cap);
    const ends = left <= wanted;
    const h = ends ? left : wanted;
    step(system, motion.angle, motion.speed, motion.acceleration, damping, friction, h, out);
    const error = out[OUT_ERROR];
    if (!(error <= 1)) {
      motion.size = h * Math.max(0.2, 0.9 * error ** -0.125);
      motion.rejected++;
      continue;
    }
    const turned = out[OUT_SPEED] * sign <= 0;
    if (turned && motion.speed === 0) {
      motion.size = h / 4;
      motion.rejected++;
      if (motion.size < 1e-12) return REACHED_TURN;
      continue;
    }
    const growth = error < 1e-8 ? 6 : Math.min(6, 0.9 * error ** -0.125);
    const proposal = h * growth;
    if (!turned && (out[OUT_ANGLE] - target) * sign < 0) {
      if (!ends || proposal > motion.size) motion.size = proposal;
      accept(motion, system, h, observer);
      if (ends) {
        motion.time = end;
        return REACHED_TIME;
      }
      if (Math.abs(motion.speed) < CREEP_SPEED && sticks(system, motion.angle)) {
        motion.speed = 0;
        return REACHED_TURN;
      }
      continue;
    }
    const nextAcceleration = acceleration(system, out[OUT_ANGLE], out[OUT_SPEED], damping, friction);
    if (proposal < motion.size) motion.size = proposal;
    return locate(motion, system, target, h, turned, nextAcceleration, observer);
  }
  return OUT_OF_WORK;
}

/** Books an accepted step of size `h` whose end is in `out`. */
function accept(motion: Motion, system: SwingSystem, h: number, observer: StepObserver | null): void {
  const { out } = motion;
  const way = Math.abs(out[OUT_ANGLE] - motion.angle);
  motion.fromTime = motion.time;
  motion.fromAngle = motion.angle;
  motion.fromSpeed = motion.speed;
  motion.fromAcceleration = motion.acceleration;
  motion.viscous += motion.damping * out[OUT_SQUARE];
  motion.air -= out[OUT_AIR];
  motion.hinge += system.hingeFriction * way;
  motion.seal += system.sealFriction[motion.region] * way;
  motion.time += h;
  motion.angle = out[OUT_ANGLE];
  motion.speed = out[OUT_SPEED];
  motion.acceleration = acceleration(system, motion.angle, motion.speed, motion.damping, motion.friction);
  motion.steps++;
  if (observer !== null) observer.onStep(motion);
}

/** Finds what lies inside the step of size `h` just tried: a turning point, unless the cut comes first. */
function locate(
  motion: Motion,
  system: SwingSystem,
  target: number,
  h: number,
  turned: boolean,
  endAcceleration: number,
  observer: StepObserver | null,
): Reached {
  const { out, sign } = motion;
  let limit = h;
  if (turned) {
    limit = rootOfSpeed(motion, system, h, endAcceleration);
    if ((out[OUT_ANGLE] - target) * sign <= 0) {
      out[OUT_SPEED] = 0;
      accept(motion, system, limit, observer);
      return REACHED_TURN;
    }
  }
  const size = rootOfAngle(motion, system, target, limit);
  out[OUT_ANGLE] = target;
  accept(motion, system, size, observer);
  return REACHED_CUT;
}

/** Moves the end in `out` by a small time: value and energies by Taylor's formula. */
function nudge(motion: Motion, system: SwingSystem, dt: number): void {
  const { out, damping, friction } = motion;
  const angle = out[OUT_ANGLE];
  const speed = out[OUT_SPEED];
  const a = acceleration(system, angle, speed, damping, friction);
  out[OUT_SQUARE] += speed * speed * dt;
  out[OUT_AIR] += airPower(system, angle, speed) * dt;
  out[OUT_ANGLE] = angle + dt * (speed + (a * dt) / 2);
  out[OUT_SPEED] = speed + a * dt;
}

/** Step size at which the speed is 0; leaves the end there in `out`. Newton's method inside a bracket. */
function rootOfSpeed(motion: Motion, system: SwingSystem, h: number, endAcceleration: number): number {
  const { out, sign, damping, friction } = motion;
  const near = Math.min(TAYLOR_STEP, TAYLOR_SHARE * h);
  let low = 0;
  let high = h;
  let x = hermiteRoot(motion.speed, motion.acceleration, out[OUT_SPEED], endAcceleration, h);
  for (let i = 0; i < MAX_ITERATIONS; i++) {
    step(system, motion.angle, motion.speed, motion.acceleration, damping, friction, x, out);
    const speed = out[OUT_SPEED];
    const dx = -speed / acceleration(system, out[OUT_ANGLE], speed, damping, friction);
    if (Math.abs(dx) < near) {
      nudge(motion, system, dx);
      return x + dx;
    }
    if (speed * sign > 0) low = x;
    else high = x;
    const next = x + dx;
    x = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-15 * h) break;
  }
  return x;
}

/** Step size at which the angle is the target; leaves the end there in `out`. */
function rootOfAngle(motion: Motion, system: SwingSystem, target: number, h: number): number {
  const { out, sign, damping, friction } = motion;
  const near = Math.min(TAYLOR_STEP, TAYLOR_SHARE * h);
  let low = 0;
  let high = h;
  let x = guessAngle(motion, target, h);
  for (let i = 0; i < MAX_ITERATIONS; i++) {
    step(system, motion.angle, motion.speed, motion.acceleration, damping, friction, x, out);
    const miss = out[OUT_ANGLE] - target;
    const dx = -miss / out[OUT_SPEED];
    if (Math.abs(dx) < near && out[OUT_SPEED] * sign > 0) {
      nudge(motion, system, dx);
      return x + dx;
    }
    if (miss * sign < 0) low = x;
    else high = x;
    const next = x + dx;
    x = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-15 * h) break;
  }
  return x;
}

/** Root in 0…h of the cubic through two values of opposite sign and their slopes: bisected false position. */
function hermiteRoot(f0: number, d0: number, f1: number, d1: number, h: number): number {
  let low = 0;
  let high = 1;
  let x = f0 / (f0 - f1);
  const c2 = 3 * (f1 - f0) - h * (2 * d0 + d1);
  const c3 = 2 * (f0 - f1) + h * (d0 + d1);
  for (let i = 0; i < 12; i++) {
    const value = f0 + x * (h * d0 + x * (c2 + x * c3));
    const slope = h * d0 + x * (2 * c2 + 3 * x * c3);
    if (value * f0 > 0) low = x;
    else high = x;
    const next = x - value / slope;
    const inside = next > low && next < high;
    const step = inside ? next - x : (low + high) / 2 - x;
    x += step;
    if (Math.abs(step) < 1e-9) break;
  }
  return x * h;
}

/** First guess of when the angle is met: the cubic through angle and speed at both ends of the tried step. */
function guessAngle(motion: Motion, target: number, h: number): number {
  const { out } = motion;
  const miss = out[OUT_ANGLE] - target;
  const start = motion.angle - target;
  if (start * miss >= 0) return h / 2;
  return hermiteRoot(start, motion.speed, miss, out[OUT_SPEED], h);
}
