/** What happens at the stops: an impact with restitution, and rest against them (model, section 2). */
import { head, type Motion, startFromRest } from "./motion.ts";
import type { SwingSystem } from "./system.ts";
import { staticTorque } from "./torque.ts";

/** At a stop, below this speed and pressed outwards, the flap is at rest, rad/s (model, section 2). */
const STOP_REST_SPEED = 1e-6;

/** True where a flap at a stop moves, or is pushed, outwards. */
export function pressesStop(motion: Motion, system: SwingSystem): boolean {
  return motion.angle * motion.sign >= system.stopAngle;
}

/** At a cut: into the next region, or off a stop. True where the stop brings the flap to rest. */
export function passCut(motion: Motion, system: SwingSystem): boolean {
  if (pressesStop(motion, system)) return bounce(motion, system);
  motion.region += motion.sign;
  return false;
}

/** ω → −e ω at a stop; true where the flap stays there. */
export function bounce(motion: Motion, system: SwingSystem): boolean {
  const before = motion.speed;
  motion.speed = -system.restitution * before;
  const outwards = staticTorque(system, motion.angle) * motion.sign > 0;
  const rests = outwards && Math.abs(motion.speed) < STOP_REST_SPEED;
  if (rests) motion.speed = 0;
  motion.stops += 0.5 * system.inertia * (before * before - motion.speed * motion.speed);
  if (rests) return true;
  if (motion.speed === 0) return !startFromRest(motion, system);
  head(motion, system, -motion.sign);
  return false;
}
