/** What was counted as a least-squares problem: where the falling amplitudes of the model reach the bolt's play and nothing. */
import { captureAngle, slotAngle } from "../../parts/latch.ts";
import type { SwingModel } from "./model.ts";
import type { FitKey, Values } from "./parameters.ts";
import { SwingProblem } from "./swing-problem.ts";
import { ParameterVector } from "./vector.ts";

/** Swings that a count can go on for. */
const LONGEST = 400;
/** Step of the derivatives, in typical sizes: large, since a count is a coarse thing. */
const STEP = 1e-2;

/** One thing counted: what the model says there in the same terms, and the standard error of the count. */
export interface Observation {
  readonly name: keyof Predicted;
  readonly value: number;
  readonly error: number;
}

/** What the model says, in the terms of a count. */
export interface Predicted {
  /** Half swings until the amplitude would be nothing. */
  readonly passesUntilStill: number;
  /** When that is, s. */
  readonly restTime: number;
  /** Half swings until the amplitude is that of the bolt's play, or nothing where there is none to stay in. */
  readonly passes: number;
  /** When that is, s. */
  readonly settleTime: number;
}

/**
 * Place in a falling row of amplitudes at which they come to `goal`, counted from 0: on the straight line through the two
 * places about it, or through the last two where the flap rests before.
 */
function placeOf(amplitudes: readonly number[], goal: number): number {
  const below = amplitudes.findIndex((a) => a <= goal);
  if (below === 0 || amplitudes.length < 2) return 0;
  const after = below < 0 ? amplitudes.length - 1 : below;
  const [from, to] = [amplitudes[after - 1], amplitudes[after]];
  return after - 1 + (from - goal) / (from - to);
}

function timeOf(times: readonly number[], place: number): number {
  const before = Math.max(0, Math.min(Math.floor(place), times.length - 2));
  return times[before] + (place - before) * (times[before + 1] - times[before]);
}

/** The bolt's play about the slot's centre, rad; the flap settles on the side that leaves it last. */
export interface Play {
  readonly centre: number;
  readonly half: number;
}

export function predicted(model: SwingModel, values: Values, play: Play): Predicted {
  model.run(values, LONGEST * model.body.smallAnglePeriod);
  const { turnTimes, turnAngles } = model;
  const centre = values["opening.outOfPlumb"];
  const sign = Math.sign(values.release - centre);
  const amplitudes = turnAngles.map((angle, i) => sign * (i % 2 === 1 ? -1 : 1) * (angle - centre));
  if (turnTimes.length < 2) return { passesUntilStill: 0, restTime: 0, passes: 0, settleTime: 0 };
  const still = placeOf(amplitudes, 0);
  const settled = placeOf(amplitudes, Math.max(0, play.half - Math.abs(play.centre - centre)));
  return {
    passesUntilStill: still,
    restTime: timeOf(turnTimes, still),
    passes: settled,
    settleTime: timeOf(turnTimes, settled),
  };
}

export function playOf({ door: { latch } }: SwingModel): Play {
  if (latch === null) return { centre: 0, half: 0 };
  const { offset, slotWidth, boltWidth, distanceFromHinge } = latch;
  return {
    centre: slotAngle(offset, distanceFromHinge),
    half: captureAngle(slotWidth, boltWidth, distanceFromHinge),
  };
}

export class CountProblem extends SwingProblem {
  private readonly seen: readonly Observation[];
  private readonly play: Play;

  constructor(
    model: SwingModel,
    seen: readonly Observation[],
    play: Play,
    free: readonly FitKey[],
    base: Values,
  ) {
    super(model, seen.length, new ParameterVector(model, free, base, []), STEP);
    this.seen = seen;
    this.play = play;
  }

  protected compare(values: Values, out: Float64Array): void {
    const said = predicted(this.model, values, this.play);
    this.seen.forEach(({ name, value, error }, i) => {
      out[i] = (said[name] - value) / error;
    });
  }
}
