/**
 * A moving flap's whole stretch (`stretch.ts`) to what lies ahead of it: chooses where to, by the energies, and how far, by
 * how smooth the stretch turns out. Where none suits it says so, and steps go on from the same state.
 */
import { OUT_FIRST_SUM, OUT_SECOND_SUM } from "./dormand-prince.ts";
import { acceleration, wellEnergy, wellTorque } from "./fields.ts";
import { POINTS } from "./gauss.ts";
import type { Motion } from "./motion.ts";
import { END_ANGLE, END_SPEED, END_TIME, WHOLE } from "./moves.ts";
import {
  accept,
  MOVED,
  type Progress,
  REACHED_CUT,
  REACHED_TURN,
  REFUSED,
  type StepObserver,
} from "./progress.ts";
import { braking } from "./stretch.ts";
import type { SwingSystem } from "./system.ts";
import { evenWay, HALF_SWING } from "./ways.ts";

/** Shorter stretches that are tried where one is not smooth enough. */
const SHARE_TRIES = 3;
/** Newton steps of a guess where the flap turns. */
const TURN_GUESSES = 3;
/** s that the last terms of a stretch's time may amount to: what is left out after them is a hundredth of it or less. */
const ROUGH = 1.5e-4;

/** A whole stretch to the cut or to the turning point before it, or as far as it is smooth; `REFUSED` where there is none. */
export function leap(
  motion: Motion,
  system: SwingSystem,
  target: number,
  end: number,
  observer: StepObserver | null,
): Progress {
  const { stretch, angle, speed, sign, region } = motion;
  const energy = wellEnergy(system, angle) + 0.5 * system.inertia * speed * speed;
  const reach = speed === 0 ? Number.POSITIVE_INFINITY : motion.smooth[region];
  const goal = (target - angle) * sign > reach ? angle + sign * reach : target;
  let turns = !leapTo(motion, system, energy, goal);
  if (turns && !leapToRest(motion, system, energy, target)) return refuse(motion);
  for (let tries = 0; stretch.rough > ROUGH; tries++) {
    motion.rejected++;
    if (tries === SHARE_TRIES) return REFUSED;
    const share = turns ? 0.5 : smootherShare(stretch.rough / ROUGH);
    const length = Math.abs(stretch.angle - angle) * share;
    motion.smooth[region] = length;
    turns = false;
    if (!leapTo(motion, system, energy, angle + sign * length)) return refuse(motion);
  }
  if (motion.time + stretch.time > end) return refuse(motion);
  acceptStretch(motion, system, observer);
  if (turns) return REACHED_TURN;
  return stretch.angle === target ? REACHED_CUT : MOVED;
}

function refuse(motion: Motion): Progress {
  motion.rejected++;
  return REFUSED;
}

/** To an angle ahead; false where the flap turns before. */
function leapTo(motion: Motion, system: SwingSystem, energy: number, goal: number): boolean {
  const { stretch, forces, angle, speed } = motion;
  const length = goal - angle;
  const left = energy - wellEnergy(system, goal) + forces.friction * length;
  if (!(left > 0)) return false;
  const after = Math.max(left - braking(system, forces, angle, speed) * length, left / 10);
  const way = evenWay(Math.abs(speed), Math.sqrt((2 * after) / system.inertia));
  return stretch.go(system, forces, angle, speed, energy, goal, way);
}

/** To the turning point ahead; false where it is not before the target. */
function leapToRest(motion: Motion, system: SwingSystem, energy: number, target: number): boolean {
  const { stretch, forces, angle, speed, sign } = motion;
  const fromRest = speed === 0;
  const goal = fromRest
    ? halfSwingGuess(motion, system, energy, target)
    : turnGuess(motion, system, energy, target);
  const found = stretch.go(system, forces, angle, speed, energy, goal, fromRest ? HALF_SWING : 1);
  return found && (target - stretch.angle) * sign > 0;
}

/** Where a half swing from rest may end, rad: by those before it and its energy, or about the centre. */
function halfSwingGuess(motion: Motion, system: SwingSystem, energy: number, target: number): number {
  const { angle, sign, stretch, forces } = motion;
  const way = stretch.halfSwings.nextWay() || 1.9 * Math.abs(angle);
  const loss = stretch.nextHalfLoss(way);
  let goal = angle + sign * way;
  const excess = energy - loss + forces.friction * sign * way - wellEnergy(system, goal);
  const pull = wellTorque(system, goal) + forces.friction;
  if (loss > 0 && pull * sign < 0) goal -= excess / pull;
  return (target - goal) * sign > 0 ? goal : (angle + target) / 2;
}

/** Where a moving flap may turn, rad: by its energy, and the braking now as if it fell evenly. */
function turnGuess(motion: Motion, system: SwingSystem, energy: number, target: number): number {
  const { angle, speed, sign, forces } = motion;
  const slowing = forces.friction - (2 / 3) * braking(system, forces, angle, speed);
  const deceleration = -sign * acceleration(system, forces, angle, speed);
  const reach = Math.abs(target - angle);
  let way = deceleration > 0 ? Math.min(reach, (speed * speed) / (2 * deceleration)) : reach;
  for (let i = 0; i < TURN_GUESSES; i++) {
    const at = angle + sign * way;
    const excess = energy + slowing * sign * way - wellEnergy(system, at);
    const pull = -sign * (wellTorque(system, at) + slowing);
    const next = way + excess / pull;
    way = next > 0 && next < reach ? next : (way + (next > way ? reach : 0)) / 2;
  }
  return angle + sign * way;
}

function acceptStretch(motion: Motion, system: SwingSystem, observer: StepObserver | null): void {
  const { out, stretch } = motion;
  out[END_ANGLE] = stretch.angle;
  out[END_SPEED] = stretch.speed;
  out[END_TIME] = stretch.time;
  out[OUT_FIRST_SUM] = stretch.viscous;
  out[OUT_SECOND_SUM] = stretch.air;
  stretch.taken();
  accept(motion, system, WHOLE, observer);
}

/**
 * Share of a way that should be smooth enough, from how many times too rough the whole is: the last terms fall about as the
 * power of the share that is their degree, and slower near a deep well.
 */
function smootherShare(excess: number): number {
  return Math.max(0.2, Math.min(0.8, 0.9 * excess ** (-2 / POINTS)));
}
