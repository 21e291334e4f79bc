/**
 * One step of a swing in each of the three running variables, all from (angle, speed) and with the same kinds of results,
 * so that whoever takes a step and whoever reads it back later do the same arithmetic.
 */
import { OUT_A, OUT_B, OUT_FIRST_SUM, OUT_SECOND_SUM, step, stepError } from "./dormand-prince.ts";
import { ANGLE, SPEED, TIME, wellEnergy } from "./fields.ts";
import type { Forces, SwingSystem } from "./system.ts";

/** The running variable of a step. */
export const BY_TIME = 0;
export const BY_ANGLE = 1;
export const BY_SPEED = 2;
/** A whole stretch (`stretch.ts`) in place of steps. */
export const WHOLE = 3;

/** Places in `out` of a move's end: angle, speed, and the time the move took. */
export const END_ANGLE = 0;
export const END_SPEED = 1;
export const END_TIME = 2;

function allowed({ tolerance }: SwingSystem, before: number, after: number): number {
  return tolerance.absolute + tolerance.relative * Math.max(Math.abs(before), Math.abs(after));
}

/** What a step may be wrong in the energies it books, J. */
function lossAllowed({ tolerance }: SwingSystem, out: Float64Array): number {
  return tolerance.energy + tolerance.relative * Math.abs(out[OUT_FIRST_SUM] + out[OUT_SECOND_SUM]);
}

/** A step of `h` seconds. Returns its error over tolerance. */
export function moveByTime(
  system: SwingSystem,
  forces: Forces,
  angle: number,
  speed: number,
  h: number,
  out: Float64Array,
): number {
  step(TIME, system, forces, 0, angle, speed, h, out);
  const error = stepError(
    out,
    h,
    allowed(system, angle, out[OUT_A]),
    allowed(system, speed, out[OUT_B]),
    lossAllowed(system, out),
  );
  out[END_ANGLE] = out[OUT_A];
  out[END_SPEED] = out[OUT_B];
  out[END_TIME] = h;
  return error;
}

/** A step of `h` radians in the direction of motion. Returns its error over tolerance, NaN where the flap would turn before. */
export function moveByAngle(
  system: SwingSystem,
  forces: Forces,
  angle: number,
  speed: number,
  h: number,
  out: Float64Array,
): number {
  const kinetic = 0.5 * system.inertia * speed * speed;
  const { tolerance } = system;
  step(ANGLE, system, forces, angle, kinetic + wellEnergy(system, angle), 0, h, out);
  const end = angle + h;
  const left = out[OUT_A] - wellEnergy(system, end);
  const time = out[OUT_B];
  const scale =
    2 * tolerance.relative * Math.min(kinetic, left) +
    tolerance.absolute * system.inertia * tolerance.absolute;
  const error =
    left > 0
      ? stepError(out, h, scale, tolerance.time + tolerance.relative * time, lossAllowed(system, out))
      : Number.NaN;
  out[END_ANGLE] = end;
  out[END_SPEED] = forces.sign * Math.sqrt((2 * left) / system.inertia);
  out[END_TIME] = time;
  return error;
}

/** A step of `h` rad/s. Returns its error over tolerance, NaN or huge where the acceleration changes its sign. */
export function moveBySpeed(
  system: SwingSystem,
  forces: Forces,
  angle: number,
  speed: number,
  h: number,
  out: Float64Array,
): number {
  const { tolerance } = system;
  step(SPEED, system, forces, speed, angle, 0, h, out);
  const time = out[OUT_B];
  const error =
    time > 0
      ? stepError(
          out,
          h,
          allowed(system, angle, out[OUT_A]),
          tolerance.time + tolerance.relative * time,
          lossAllowed(system, out),
        )
      : Number.NaN;
  out[END_ANGLE] = out[OUT_A];
  out[END_SPEED] = speed + h;
  out[END_TIME] = time;
  return error;
}
