/**
 * The driver's inner part: carries a moving flap through one region of the θ axis to the next thing that happens to it,
 * a cut, a turning point or a given moment, and places that on the solution itself, not on a step's end.
 *
 * What could be missed, and how it is not: dry friction has one sign between two turning points, so the angle is
 * monotonic there and a step crosses a cut at most once, unless it hides a turning point as well. A step in time is
 * therefore capped well below half a swing, and every one whose end has the other sign of speed is searched for its
 * turning point before its cuts. A step over angle meets its cut exactly and cannot turn; where the magnets' energy has
 * a hill, which such a step could leap, it is capped at a few cells of their table. Whole stretches (`leap.ts`) are for
 * coarse tolerances, where there is no hill, and where no moment to stop at is near.
 */
import { OUT_FIRST_SUM, OUT_SECOND_SUM, OUT_SIZE, stepFactor } from "./dormand-prince.ts";
import { acceleration } from "./fields.ts";
import { leap } from "./leap.ts";
import {
  BY_ANGLE,
  BY_SPEED,
  BY_TIME,
  END_ANGLE,
  END_SPEED,
  END_TIME,
  moveByAngle,
  moveBySpeed,
  moveByTime,
} from "./moves.ts";
import {
  accept,
  MOVED,
  OUT_OF_WORK,
  type Progress,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  REFUSED,
  type Reached,
  type StepObserver,
} from "./progress.ts";
import { Stretch } from "./stretch.ts";
import { type Forces, frictionAt, noForces, regionOf, type SwingSystem } from "./system.ts";
import { staticTorque } from "./torque.ts";

export {
  OUT_OF_WORK,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type Reached,
  type StepObserver,
} from "./progress.ts";

/** Below this speed a flap that the dry friction can hold is at rest: a creep that would never reach 0, rad/s. */
const CREEP_SPEED = 1e-9;
/** A Newton step below this, s, and below this share of the step found so far, is finished by a Taylor step. */
const TAYLOR_STEP = 1e-6;
const TAYLOR_SHARE = 1e-5;
const MAX_ITERATIONS = 60;
/** Shorter steps over angle that are tried before time takes over. */
const ANGLE_TRIES = 3;
/** A cut or a turning point this many steps away (in time, at the present speed or slowing) is gone for at once. */
const CUT_REACH = 1.5;
const TURN_REACH = 1.2;
/** Regions whose step over angle is remembered: more than any door has. */
const MAX_REGIONS = 32;
/** Growth of a step in time right after one that was refused. */
const CAUTIOUS = 1;
/** Steps that one motion may take: 600 s of a flap in a damper so thick that it hardly moves take half of them. */
export const WORK_LIMIT = 2_000_000;

/** A flap on its way. Everything is in place: nothing is allocated while it moves. */
export class Motion {
  time = 0;
  angle = 0;
  speed = 0;
  /** Direction of motion, +1 or −1. */
  sign = 1;
  region = 0;
  /** Proposed size of the next step in time, s. */
  size = 0;
  /** Per region: proposed size of the next step over angle, rad; what the last pass found serves the next. */
  readonly reach = new Float64Array(MAX_REGIONS);
  /** Per region: length of a stretch that was smooth, rad, where a longer one was not. */
  readonly smooth = new Float64Array(MAX_REGIONS);
  steps = 0;
  rejected = 0;
  /** Whether the last step in time was refused. */
  refused = false;
  /** The last accepted step, for whoever looks inside it. */
  kind = BY_TIME;
  fromTime = 0;
  fromAngle = 0;
  fromSpeed = 0;
  readonly forces: Forces = noForces();
  /** Energies gone so far, J; `air` may be negative where wind or pressure give. */
  viscous = 0;
  air = 0;
  hinge = 0;
  seal = 0;
  stops = 0;
  readonly out = new Float64Array(OUT_SIZE);
  /** The last whole stretch tried. */
  readonly stretch = new Stretch();
}

/** Places a flap; it has no direction yet where its speed is 0 (see `startFromRest`). */
export function place(motion: Motion, system: SwingSystem, time: number, angle: number, speed: number): void {
  motion.time = time;
  motion.angle = angle;
  motion.speed = speed;
  motion.steps = 0;
  motion.rejected = 0;
  motion.refused = false;
  motion.viscous = 0;
  motion.air = 0;
  motion.hinge = 0;
  motion.seal = 0;
  motion.stops = 0;
  motion.size = 0.2 * longestStep(system);
  motion.reach.fill(Number.POSITIVE_INFINITY);
  motion.smooth.fill(Number.POSITIVE_INFINITY);
  motion.stretch.reset();
  if (speed !== 0) head(motion, system, Math.sign(speed));
}

/** Gives the flap a direction and the region that lies ahead of it. */
export function head(motion: Motion, system: SwingSystem, sign: number): void {
  motion.sign = sign;
  motion.region = regionOf(system, motion.angle, sign);
}

/** The cap on a step in time: an eighth of the small swing's period by gravity alone, s. */
export function longestStep(system: SwingSystem): number {
  return (Math.PI / 4) * Math.sqrt(system.inertia / system.weightMoment);
}

/** Sticking rule: true where a flap whose speed is 0 stays for good (model, section 2). */
export function sticks(system: SwingSystem, angle: number): boolean {
  return holds(system, angle, staticTorque(system, angle));
}

function holds(system: SwingSystem, angle: number, torque: number): boolean {
  return Math.abs(torque) <= system.staticRatio * frictionAt(system, angle);
}

/** Starts a flap whose speed is 0 in the direction of τ_0; false where it stays. */
export function startFromRest(motion: Motion, system: SwingSystem): boolean {
  const { angle } = motion;
  motion.speed = 0;
  const torque = staticTorque(system, angle);
  const sign = Math.sign(torque);
  if (holds(system, angle, torque) || sign === 0 || angle * sign >= system.stopAngle) return false;
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
  const { region, sign, forces } = motion;
  const target = sign > 0 ? system.cuts[region + 1] : system.cuts[region];
  const cap = longestStep(system);
  forces.sign = sign;
  forces.damping = system.damping[region];
  forces.friction = -sign * system.friction[region];
  let leaps = system.tolerance.stretches && system.longestGlide[region] === Number.POSITIVE_INFINITY;
  while (motion.steps + motion.rejected < WORK_LIMIT) {
    const left = end - motion.time;
    if (left <= 0) return REACHED_TIME;
    if (leaps && left > cap) {
      const progress = leap(motion, system, target, end, observer);
      if (progress !== MOVED && progress !== REFUSED) return progress;
      leaps = progress === MOVED;
      if (leaps) continue;
    }
    motion.size = Math.min(motion.size, cap);
    let progress = shortcut(motion, system, target, end, observer);
    if (progress === REFUSED) progress = tick(motion, system, target, end, observer);
    if (progress !== MOVED && progress !== REFUSED) return progress;
  }
  return OUT_OF_WORK;
}

/** Goes straight for a turning point or a cut that is near; `REFUSED` where neither is, or the way there is not smooth enough. */
function shortcut(
  motion: Motion,
  system: SwingSystem,
  target: number,
  end: number,
  observer: StepObserver | null,
): Progress {
  const speed = Math.abs(motion.speed);
  if (speed === 0) return REFUSED;
  const { size, sign } = motion;
  const slowing = -sign * acceleration(system, motion.forces, motion.angle, motion.speed);
  const ahead = Math.abs(target - motion.angle);
  if (speed < TURN_REACH * size * slowing && speed * speed < 2 * ahead * slowing) {
    return turn(motion, system, target, end, observer);
  }
  if (ahead < CUT_REACH * size * speed && motion.time + ahead / speed < end) {
    return glide(motion, system, target, end, observer);
  }
  return REFUSED;
}

/** A step over speed to ω = 0. */
function turn(
  motion: Motion,
  system: SwingSystem,
  target: number,
  end: number,
  observer: StepObserver | null,
): Progress {
  const { out } = motion;
  const error = moveBySpeed(system, motion.forces, motion.angle, motion.speed, -motion.speed, out);
  const short = (out[END_ANGLE] - target) * motion.sign <= 0 && motion.time + out[END_TIME] <= end;
  if (!(error <= 1) || !short) {
    motion.rejected++;
    return REFUSED;
  }
  accept(motion, system, BY_SPEED, observer);
  motion.speed = 0;
  return REACHED_TURN;
}

/** A step over angle to the cut, or towards it. */
function glide(
  motion: Motion,
  system: SwingSystem,
  target: number,
  end: number,
  observer: StepObserver | null,
): Progress {
  const { out, sign, reach, region } = motion;
  for (let tries = 0; tries < ANGLE_TRIES; tries++) {
    const ahead = Math.abs(target - motion.angle);
    const cap = system.longestGlide[region];
    const longest = Math.min(reach[region], cap);
    const arrives = ahead <= 1.2 * reach[region] && ahead <= cap;
    const h = arrives ? ahead : Math.min(longest, ahead / 2);
    const error = moveByAngle(system, motion.forces, motion.angle, motion.speed, sign * h, out);
    if (error <= 1) {
      if (motion.time + out[END_TIME] > end) break;
      reach[region] = h * stepFactor(error);
      if (arrives) out[END_ANGLE] = target;
      accept(motion, system, BY_ANGLE, observer);
      return arrives ? REACHED_CUT : MOVED;
    }
    reach[region] = h * stepFactor(error);
    motion.rejected++;
  }
  return REFUSED;
}

/** A step in time; one that would pass a cut or a turning point ends there. */
function tick(
  motion: Motion,
  system: SwingSystem,
  target: number,
  end: number,
  observer: StepObserver | null,
): Progress {
  const { out, sign } = motion;
  const left = end - motion.time;
  const ends = left <= motion.size;
  const h = ends ? left : motion.size;
  const error = moveByTime(system, motion.forces, motion.angle, motion.speed, h, out);
  const turned = !(out[END_SPEED] * sign > 0);
  if (!(error <= 1) || (turned && motion.speed === 0)) {
    motion.rejected++;
    motion.refused = true;
    motion.size = h * (error <= 1 ? 0.25 : stepFactor(error));
    return motion.size < 1e-12 ? REACHED_TURN : MOVED;
  }
  const proposal = h * (motion.refused ? Math.min(CAUTIOUS, stepFactor(error)) : stepFactor(error));
  motion.refused = false;
  if (turned || (out[END_ANGLE] - target) * sign >= 0) {
    motion.size = Math.min(motion.size, proposal);
    return locate(motion, system, target, h, turned, observer);
  }
  if (!ends || proposal > motion.size) motion.size = proposal;
  accept(motion, system, BY_TIME, observer);
  if (ends) {
    motion.time = end;
    return REACHED_TIME;
  }
  if (Math.abs(motion.speed) < CREEP_SPEED && sticks(system, motion.angle)) {
    motion.speed = 0;
    return REACHED_TURN;
  }
  return MOVED;
}

/** Finds what lies inside the step of size `h` just tried: a turning point, unless the cut comes first. */
function locate(
  motion: Motion,
  system: SwingSystem,
  target: number,
  h: number,
  turned: boolean,
  observer: StepObserver | null,
): Reached {
  const { out, sign } = motion;
  let limit = h;
  if (turned) {
    limit = searchStep(motion, system, h, null);
    if ((out[END_ANGLE] - target) * sign <= 0) {
      out[END_SPEED] = 0;
      accept(motion, system, BY_TIME, observer);
      return REACHED_TURN;
    }
  }
  searchStep(motion, system, limit, target);
  out[END_ANGLE] = target;
  accept(motion, system, BY_TIME, observer);
  return REACHED_CUT;
}

/**
 * Step in time, at most `h`, at whose end the angle is `target`, or the speed is 0 where that is `null`; leaves its end
 * in `out` and returns its size. Newton's method inside a bracket, finished by Taylor's formula.
 */
function searchStep(motion: Motion, system: SwingSystem, h: number, target: number | null): number {
  const { out, sign, forces } = motion;
  let low = 0;
  let high = h;
  let x = firstGuess(motion, h, target);
  for (let i = 0; i < MAX_ITERATIONS; i++) {
    moveByTime(system, forces, motion.angle, motion.speed, x, out);
    const speed = out[END_SPEED];
    const slope = target === null ? acceleration(system, forces, out[END_ANGLE], speed) : speed;
    const miss = target === null ? speed : out[END_ANGLE] - target;
    const dx = -miss / slope;
    if (Math.abs(dx) < Math.min(TAYLOR_STEP, TAYLOR_SHARE * x) && (target === null || speed * sign > 0))
      return finish(motion, system, dx);
    const before = target === null ? speed * sign > 0 : miss * sign < 0;
    if (before) low = x;
    else high = x;
    const next = x + dx;
    x = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-15 * h) break;
  }
  return out[END_TIME];
}

/** Moves the end in `out` by a small time, values and energies by Taylor's formula; returns the step's whole time. */
function finish(motion: Motion, system: SwingSystem, dt: number): number {
  const { out, forces } = motion;
  const speed = out[END_SPEED];
  const a = acceleration(system, forces, out[END_ANGLE], speed);
  const share = dt / out[END_TIME];
  out[OUT_FIRST_SUM] += forces.damping * speed * speed * dt;
  out[OUT_SECOND_SUM] += out[OUT_SECOND_SUM] * share;
  out[END_ANGLE] += dt * (speed + (a * dt) / 2);
  out[END_SPEED] += a * dt;
  out[END_TIME] += dt;
  return out[END_TIME];
}

/** First guess of a searched step: straight lines through the tried step's two ends. */
function firstGuess(motion: Motion, h: number, target: number | null): number {
  const { out } = motion;
  const from = target === null ? motion.speed : motion.angle - target;
  const to = target === null ? out[END_SPEED] : out[END_ANGLE] - target;
  const share = from / (from - to);
  return share > 0.02 && share < 0.98 ? h * share : h / 2;
}
