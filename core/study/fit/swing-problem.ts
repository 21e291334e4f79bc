/** What every fit of a swing has in common as a least-squares problem: parameters with limits, ties, derivatives by a step forward. */
import type { Problem } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import type { ParameterVector } from "./vector.ts";

export abstract class SwingProblem implements Problem {
  readonly parameters: ParameterVector;
  readonly count: number;
  readonly size: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly scale: Float64Array;
  protected readonly model: SwingModel;
  /** Residuals that are not ties'. */
  protected readonly rows: number;
  protected readonly moved: Float64Array;
  /** Step of the derivatives, in typical sizes. */
  private readonly step: number;

  constructor(model: SwingModel, rows: number, parameters: ParameterVector, step: number) {
    const { size, lower, upper, scale, ties } = parameters;
    this.parameters = parameters;
    this.count = rows + ties.length;
    this.size = size;
    this.lower = lower;
    this.upper = upper;
    this.scale = scale;
    this.model = model;
    this.rows = rows;
    this.moved = new Float64Array(rows);
    this.step = step;
  }

  residuals(p: Float64Array, out: Float64Array): void {
    this.compare(this.parameters.values(p), out);
    this.parameters.tieResiduals(p, out, this.rows);
  }

  jacobian(p: Float64Array, r: Float64Array, out: Float64Array): void {
    const { parameters } = this;
    const values = parameters.values(p);
    const here = r.subarray(0, this.rows);
    parameters.free.forEach((name, column) => {
      this.column(name, column, values, here, out);
    });
    parameters.tieRows(out, this.rows);
  }

  /** Model less measurement, into the first `rows` places. */
  protected abstract compare(values: Values, out: Float64Array): void;

  /** One column of the Jacobian, where the residuals are `here`. */
  protected column(
    name: ParameterName,
    column: number,
    values: Values,
    here: Float64Array,
    out: Float64Array,
  ): void {
    this.difference(name, column, values, here, out, this.step * this.scale[column]);
  }

  /** A column by one step, forward or (negative) backward; the residuals there are left in `moved`. */
  protected difference(
    name: ParameterName,
    column: number,
    values: Values,
    here: Float64Array,
    out: Float64Array,
    step: number,
  ): void {
    const { moved } = this;
    this.compare({ ...values, [name]: values[name] + step }, moved);
    this.fill(out, column, (row) => (moved[row] - here[row]) / step);
  }

  protected fill(out: Float64Array, column: number, value: (row: number) => number): void {
    for (let row = 0; row < this.rows; row++) out[row * this.size + column] = value(row);
  }
}
