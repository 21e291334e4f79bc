/** A trace as a least-squares problem: one residual per sample, the model read at the sample's own moment. */
import type { Problem } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { ParameterVector, type Tie } from "./vector.ts";

/** Samples in rising time, s, and what was read, rad. */
export interface Samples {
  readonly time: Float64Array;
  readonly angle: Float64Array;
}

/** Step of the derivatives in typical sizes, and the change of a reading that is too much for it, rad. */
const STEP = 1e-3;
const LEAP = 0.02;

export class TraceProblem implements Problem {
  readonly parameters: ParameterVector;
  readonly count: number;
  private readonly model: SwingModel;
  private readonly samples: Samples;
  private readonly speeds: Float64Array;
  private readonly moved: Float64Array;

  constructor(
    model: SwingModel,
    samples: Samples,
    free: readonly ParameterName[],
    base: Values,
    ties: readonly Tie[] = [],
  ) {
    this.parameters = new ParameterVector(model, free, base, ties);
    this.model = model;
    this.samples = samples;
    this.count = samples.time.length + this.parameters.ties.length;
    this.speeds = new Float64Array(samples.time.length);
    this.moved = new Float64Array(samples.time.length);
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
    this.compare(this.parameters.values(p), out, null);
    this.parameters.tieResiduals(p, out, this.samples.time.length);
  }

  jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void {
    const { samples, speeds, parameters } = this;
    const values = parameters.values(p);
    const here = r.subarray(0, samples.time.length);
    this.compare(values, this.moved, speeds);
    parameters.free.forEach((name, column) => {
      if (name === "zero") this.fill(out, column, () => 1);
      else if (name === "start") this.fill(out, column, (i) => -speeds[i] / values.pace);
      else if (name === "pace") {
        const lag = (i: number) => (samples.time[i] - values.start) / values.pace ** 2;
        this.fill(out, column, (i) => -speeds[i] * lag(i));
      } else this.difference(name, column, values, here, out);
    });
    parameters.tieRows(out, samples.time.length);
  }

  /**
   * A column by a small step forward. A step that changes a reading far more than its kind is one over which the flap is
   * just held or just not held at a turn: there the step backward is taken, if it changes less.
   */
  private difference(
    name: ParameterName,
    column: number,
    values: Values,
    here: Float64Array,
    out: Float64Array,
  ): void {
    const { moved } = this;
    const step = STEP * this.scale[column];
    const put = (h: number) => this.fill(out, column, (i) => (moved[i] - here[i]) / h);
    const most = () => moved.reduce((far, angle, i) => Math.max(far, Math.abs(angle - here[i])), 0);
    this.compare({ ...values, [name]: values[name] + step }, moved, null);
    put(step);
    const forward = most();
    if (forward <= LEAP || values[name] - step < this.lower[column]) return;
    this.compare({ ...values, [name]: values[name] - step }, moved, null);
    if (most() < forward) put(-step);
  }

  private fill(out: Float64Array, column: number, value: (row: number) => number): void {
    const { size, samples } = this;
    for (let row = 0; row < samples.time.length; row++) out[row * size + column] = value(row);
  }

  /** Model less measurement, and the model's speeds where they are asked for. */
  private compare(values: Values, out: Float64Array, speeds: Float64Array | null): void {
    const { model, samples } = this;
    const { time, angle } = samples;
    const { start, pace, zero } = values;
    model.run(values, Math.max(0, (time[time.length - 1] - start) / pace) + 1e-9);
    for (let i = 0; i < time.length; i++) {
      const state = model.at((time[i] - start) / pace);
      out[i] = state.angle + zero - angle[i];
      if (speeds !== null) speeds[i] = state.speed;
    }
  }
}
