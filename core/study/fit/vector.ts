/** The parameters that a fit adjusts, as a vector with limits and sizes. */
import type { SwingModel } from "./model.ts";
import { lowerLimit, type ParameterName, typicalSize, upperLimit, type Values } from "./parameters.ts";

/** Holds a parameter near a value: a residual of `stiffness` times the distance, rad. */
export interface Tie {
  readonly name: ParameterName;
  readonly to: number;
  readonly stiffness: number;
}

export class ParameterVector {
  readonly free: readonly ParameterName[];
  readonly size: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly scale: Float64Array;
  readonly ties: readonly Tie[];
  private readonly base: Values;

  /** `base` gives the parameters that are not `free`. */
  constructor(model: SwingModel, free: readonly ParameterName[], base: Values, ties: readonly Tie[]) {
    this.free = free;
    this.size = free.length;
    this.lower = Float64Array.from(free, lowerLimit);
    this.upper = Float64Array.from(free, upperLimit);
    this.scale = Float64Array.from(free, (name) => typicalSize(name, model.body));
    this.ties = ties.filter(({ name }) => free.includes(name));
    this.base = base;
  }

  values(p: ArrayLike<number>): Values {
    const values: Record<ParameterName, number> = { ...this.base };
    this.free.forEach((name, i) => {
      values[name] = p[i];
    });
    return values;
  }

  vector(values: Values): Float64Array {
    return Float64Array.from(this.free, (name) => values[name]);
  }

  /** Residuals of the ties, from place `at`. */
  tieResiduals(p: Float64Array, out: Float64Array, at: number): void {
    this.ties.forEach(({ name, to, stiffness }, i) => {
      out[at + i] = stiffness * (p[this.free.indexOf(name)] - to);
    });
  }

  /** Their rows of the Jacobian, from row `at`. */
  tieRows(out: Float64Array, at: number): void {
    out.fill(0, at * this.size);
    this.ties.forEach(({ name, stiffness }, i) => {
      out[(at + i) * this.size + this.free.indexOf(name)] = stiffness;
    });
  }
}

/** How far from its start a parameter is let go in a rough stage before that costs as much as `TIE` of reading, in typical sizes. */
const REACH: Readonly<Partial<Record<ParameterName, number>>> = {
  "hinge.frictionTorque": 5,
  "hinge.viscousDamping": 5,
  "air.swingFactor": 2,
  "seal.frictionTorque": 3,
  "opening.outOfPlumb": 2,
  pace: 2,
};
/** rad. */
const TIE = 0.01;

/** Ties that keep a rough stage from running off where it sees too little of the swing. */
export function tiesTo(values: Values, model: SwingModel): Tie[] {
  return (Object.keys(REACH) as ParameterName[]).map((name) => ({
    name,
    to: values[name],
    stiffness: TIE / ((REACH[name] as number) * typicalSize(name, model.body)),
  }));
}
