/** A trace as a least-squares problem: one residual per sample, the model read at the sample's own moment. */
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { SwingProblem } from "./swing-problem.ts";
import { ParameterVector, type Tie } from "./vector.ts";

/** Samples in rising time, s, and what was read, rad. */
export interface Samples {
  readonly time: Float64Array;
  readonly angle: Float64Array;
}

/** Step of the derivatives in typical sizes, and the change of a reading that is too much for it, rad. */
const STEP = 1e-3;
const LEAP = 0.02;

export class TraceProblem extends SwingProblem {
  private readonly samples: Samples;
  private readonly speeds: Float64Array;

  constructor(
    model: SwingModel,
    samples: Samples,
    free: readonly ParameterName[],
    base: Values,
    ties: readonly Tie[] = [],
  ) {
    super(model, samples.time.length, new ParameterVector(model, free, base, ties), STEP);
    this.samples = samples;
    this.speeds = new Float64Array(samples.time.length);
  }

  override jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void {
    this.compare(this.parameters.values(p), this.moved, this.speeds);
    super.jacobian(p, r, out);
  }

  /** What belongs to the measurement has its derivative in closed form, from the speeds at `values`. */
  protected override column(
    name: ParameterName,
    column: number,
    values: Values,
    here: Float64Array,
    out: Float64Array,
  ): void {
    const { samples, speeds } = this;
    if (name === "zero") this.fill(out, column, () => 1);
    else if (name === "start") this.fill(out, column, (i) => -speeds[i] / values.pace);
    else if (name === "pace") {
      const lag = (i: number) => (samples.time[i] - values.start) / values.pace ** 2;
      this.fill(out, column, (i) => -speeds[i] * lag(i));
    } else this.eitherWay(name, column, values, here, out);
  }

  /**
   * A column by a small step forward. A step that changes a reading far more than its kind is one over which the flap is
   * just held or just not held at a turn: there the step backward is taken, if it changes less.
   */
  private eitherWay(
    name: ParameterName,
    column: number,
    values: Values,
    here: Float64Array,
    out: Float64Array,
  ): void {
    const { moved } = this;
    const step = STEP * this.scale[column];
    const most = () => moved.reduce((far, angle, i) => Math.max(far, Math.abs(angle - here[i])), 0);
    this.difference(name, column, values, here, out, step);
    const forward = most();
    if (forward <= LEAP || values[name] - step < this.lower[column]) return;
    this.difference(name, column, values, here, out, -step);
    if (most() >= forward) this.difference(name, column, values, here, out, step);
  }

  /** Model less measurement, and the model's speeds where they are asked for. */
  protected compare(values: Values, out: Float64Array, speeds: Float64Array | null = null): void {
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
