/** Turning points as a least-squares problem: the angle of each turn against that of the same turn of the model. */
import type { Problem } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { ParameterVector, type Tie } from "./vector.ts";

/** Turns in rising place, the first being 0, and what was read there, rad. */
export interface TurnReadings {
  readonly turn: readonly number[];
  readonly angle: readonly number[];
}

const STEP = 1e-3;
/** Small swings that one turn may take. */
const LONGEST_HALF = 1.5;

export class TurnsProblem implements Problem {
  readonly parameters: ParameterVector;
  readonly count: number;
  private readonly model: SwingModel;
  private readonly readings: TurnReadings;
  private readonly moved: Float64Array;

  constructor(
    model: SwingModel,
    readings: TurnReadings,
    free: readonly ParameterName[],
    base: Values,
    ties: readonly Tie[] = [],
  ) {
    this.parameters = new ParameterVector(model, free, base, ties);
    this.model = model;
    this.readings = readings;
    this.count = readings.turn.length + this.parameters.ties.length;
    this.moved = new Float64Array(readings.turn.length);
  }

  get size(): number {
    return this.parameters.size;
  }
  get lower(): Float64Array {
    return this.parameters.lower;
  }
  get upper(): Float64Array {
    return this.parameters.upper;
  }
  get scale(): Float64Array {
    return this.parameters.scale;
  }

  residuals(p: Float64Array, out: Float64Array): void {
    this.compare(this.parameters.values(p), out);
    this.parameters.tieResiduals(p, out, this.readings.turn.length);
  }

  jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void {
    const { parameters, moved, readings } = this;
    const values = parameters.values(p);
    const rows = readings.turn.length;
    parameters.free.forEach((name, column) => {
      const step = STEP * parameters.scale[column];
      this.compare({ ...values, [name]: values[name] + step }, moved);
      for (let row = 0; row < rows; row++) {
        out[row * parameters.size + column] = (moved[row] - r[row]) / step;
      }
    });
    parameters.tieRows(out, rows);
  }

  /** Model less reading; a flap that has come to rest before a turn reads where it rests. */
  private compare(values: Values, out: Float64Array): void {
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
