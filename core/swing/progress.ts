/** How far a motion got: what ended it or a part of it, and the books it keeps of every accepted step. */
import { OUT_FIRST_SUM, OUT_SECOND_SUM } from "./dormand-prince.ts";
import type { Motion } from "./motion.ts";
import { END_ANGLE, END_SPEED, END_TIME } from "./moves.ts";
import type { SwingSystem } from "./system.ts";

/** What ended an advance. */
export const REACHED_CUT = 1;
export const REACHED_TURN = 2;
export const REACHED_TIME = 3;
export const OUT_OF_WORK = 4;
export type Reached = typeof REACHED_CUT | typeof REACHED_TURN | typeof REACHED_TIME | typeof OUT_OF_WORK;
/** Within an advance: one step nearer, or a kind of step that does not suit here. */
export const MOVED = 0;
export const REFUSED = -1;
export type Progress = Reached | typeof MOVED | typeof REFUSED;

/** Called with every accepted step: the state it started from is in `motion.from…`, its kind in `motion.kind`. */
export interface StepObserver {
  onStep(motion: Motion): void;
}

/** Books the step whose end is in `out`. */
export function accept(
  motion: Motion,
  system: SwingSystem,
  kind: number,
  observer: StepObserver | null,
): void {
  const { out } = motion;
  const way = Math.abs(out[END_ANGLE] - motion.angle);
  motion.kind = kind;
  motion.fromTime = motion.time;
  motion.fromAngle = motion.angle;
  motion.fromSpeed = motion.speed;
  motion.viscous += out[OUT_FIRST_SUM];
  motion.air += out[OUT_SECOND_SUM];
  motion.hinge += system.hingeFriction * way;
  motion.seal += system.sealFriction[motion.region] * way;
  motion.time += out[END_TIME];
  motion.angle = out[END_ANGLE];
  motion.speed = out[END_SPEED];
  motion.steps++;
  if (observer !== null) observer.onStep(motion);
}
