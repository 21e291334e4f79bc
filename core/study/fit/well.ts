/** Where the centring magnets catch the flap, and a measured swing stops telling about friction. */
import type { SwingModel } from "./model.ts";
import type { Values } from "./parameters.ts";

/** Half swings shorter than this part of the small one are the magnets' work, or a stop's. */
const WELL_SHARE = 0.7;
/** Swings looked at for the magnets' catch. */
const MOST_SWINGS = 200;

/**
 * Place of the last turn before the magnets catch the flap; infinite where they do not. From then on it trembles in their well,
 * many times a second: what that and the swing into it tell is the magnets' strength to a part in a thousand, not friction.
 */
export function lastFreeTurn(model: SwingModel, values: Values): number {
  if (model.centring === null) return Number.POSITIVE_INFINITY;
  model.run(values, MOST_SWINGS * model.body.smallAnglePeriod);
  const { turnTimes, turnAngles } = model;
  const least = (WELL_SHARE * model.body.smallAnglePeriod) / 2;
  const nearStop = 0.9 * model.door.hinge.stopAngle;
  const caught = turnTimes.findIndex(
    (time, i) => Math.abs(turnAngles[i]) < nearStop && turnTimes[i + 1] - time < least,
  );
  return caught < 0 ? Number.POSITIVE_INFINITY : Math.max(0, caught - 1);
}

/** When that turn is, on the measurement's clock, s. */
export function lastFreeTime(model: SwingModel, values: Values): number {
  const turn = lastFreeTurn(model, values);
  return Number.isFinite(turn) ? values.start + values.pace * model.turnTimes[turn] : turn;
}
