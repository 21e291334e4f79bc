/** Turning points as a least-squares problem: the angle of each turn against that of the same turn of the model. */
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { SwingProblem } from "./swing-problem.ts";
import { ParameterVector, type Tie } from "./vector.ts";

/** Turns in rising place, the first being 0, and what was read there, rad. */
export interface TurnReadings {
  readonly turn: readonly number[];
  readonly angle: readonly number[];
}

const STEP = 1e-3;
/** Small swings that one turn may take. */
const LONGEST_HALF = 1.5;

export class TurnsProblem extends SwingProblem {
  private readonly readings: TurnReadings;

  constructor(
    model: SwingModel,
    readings: TurnReadings,
    free: readonly ParameterName[],
    base: Values,
    ties: readonly Tie[] = [],
  ) {
    super(model, readings.turn.length, new ParameterVector(model, free, base, ties), STEP);
    this.readings = readings;
  }

  /** A flap that has come to rest before a turn reads where it rests. */
  protected compare(values: Values, out: Float64Array): void {
    const { model, readings } = this;
    const { turn, angle } = readings;
    const most = turn[turn.length - 1];
    model.run(values, (most + 1) * LONGEST_HALF * model.body.smallAnglePeriod);
    const { turnAngles } = model;
    for (let i = 0; i < turn.length; i++) {
      out[i] = turnAngles[Math.min(turn[i], turnAngles.length - 1)] + values.zero - angle[i];
    }
  }
}
