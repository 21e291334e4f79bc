/**
 * The energy ledger as it fills: where the energy has gone by each moment of a swing. The flap is swung once more with the
 * integrator made to stop at every moment asked for, so that the columns are as exact as the swing's own ledger and end
 * with its figures.
 */
import {
  advance,
  Motion,
  OUT_OF_WORK,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  startFromRest,
} from "./motion.ts";
import { bounce, passCut, pressesStop } from "./stops.ts";
import type { SwingSystem } from "./system.ts";
import { potentialEnergy } from "./torque.ts";

/** Columns of equal length, J. At every moment `initial` is the sum of the others; `air` may be negative. */
export interface LedgerSeries {
  readonly initial: number;
  /** Mechanical energy still there: gravity, magnets and motion, from rest at θ = 0. */
  readonly left: Float64Array;
  readonly hinge: Float64Array;
  readonly viscous: Float64Array;
  readonly seal: Float64Array;
  readonly air: Float64Array;
  readonly stops: Float64Array;
}

/**
 * The ledger at `times`, s after let-go, rising and not negative, for a let-go at a signed angle (rad, within the stops)
 * and speed (rad/s). After the flap has come to rest nothing changes any more.
 */
export function ledgerSeries(
  system: SwingSystem,
  releaseAngle: number,
  releaseSpeed: number,
  times: ArrayLike<number>,
): LedgerSeries {
  const motion = new Motion();
  place(motion, system, 0, releaseAngle, releaseSpeed);
  const column = () => new Float64Array(times.length);
  const series = {
    initial: mechanicalEnergy(system, motion),
    left: column(),
    hinge: column(),
    viscous: column(),
    seal: column(),
    air: column(),
    stops: column(),
  };
  let moves = starts(motion, system);
  for (let i = 0; i < times.length; i++) {
    if (moves) moves = carryTo(motion, system, times[i]);
    series.left[i] = mechanicalEnergy(system, motion);
    series.hinge[i] = motion.hinge;
    series.viscous[i] = motion.viscous;
    series.seal[i] = motion.seal;
    series.air[i] = motion.air;
    series.stops[i] = motion.stops;
  }
  return series;
}

function mechanicalEnergy(system: SwingSystem, { angle, speed }: Motion): number {
  return potentialEnergy(system, angle) + 0.5 * system.inertia * speed * speed;
}

/** False for a flap that stays where it is let go. */
function starts(motion: Motion, system: SwingSystem): boolean {
  if (motion.speed === 0) return startFromRest(motion, system);
  return !(pressesStop(motion, system) && bounce(motion, system));
}

/** Moves on to a moment; false where the flap came to rest before it. */
function carryTo(motion: Motion, system: SwingSystem, end: number): boolean {
  for (;;) {
    const reached = advance(motion, system, end, null);
    if (reached === REACHED_TIME) return true;
    if (reached === OUT_OF_WORK) return false;
    if (reached === REACHED_TURN && !startFromRest(motion, system)) return false;
    if (reached === REACHED_CUT && passCut(motion, system)) return false;
  }
}
