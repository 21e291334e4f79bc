/** What a fit is given and what it gives back. All of it is plain data. */
import type { FitKey, Nuisance, ParameterName } from "./parameters.ts";
import type { Samples } from "./trace-problem.ts";

/** Turning points: their places in the row from the let-go (0), angles as read, rad, and moments, s, where they were taken. */
export interface Turns {
  readonly turn: readonly number[];
  readonly angle: readonly number[];
  readonly time: readonly number[] | null;
}

/** What a person counts: let go at an angle, rad; passes through the centre; when and where it stood still. */
export interface Count {
  readonly releaseAngle: number;
  /** Passes until the flap stays within the bolt's play, as swing.centrePasses and the bench card count; until still without a latch. */
  readonly passes?: number;
  /** Passes until the flap is still. */
  readonly passesUntilStill?: number;
  /** s from let-go. */
  readonly restTime?: number;
  /** rad. */
  readonly restAngle?: number;
  /** s from let-go until the flap stayed within the bolt's play. */
  readonly settleTime?: number;
  /** Standard error of the two times, s; without it that of a stopwatch, 0.2 s (assumption). */
  readonly timeError?: number;
}

export type Measured =
  | { readonly kind: "trace"; readonly samples: Samples }
  | { readonly kind: "turns"; readonly turns: Turns }
  | { readonly kind: "count"; readonly count: Count };

export interface FitOptions {
  /** Keys to fit; the others keep the file's values. Without it: as many as the data tell. */
  readonly keys?: readonly FitKey[];
  /** The camera's zero is the flap in the frame's plane: then a plumb error shows by itself. */
  readonly zeroIsTrue?: boolean;
}

/** A fitted value with its spread, SI. */
export interface FittedValue {
  readonly key: FitKey;
  /** SI unit; "1" for a plain number. */
  readonly unit: string;
  readonly value: number;
  /** Standard error. */
  readonly error: number;
  /** 95 % interval, within the physical range. */
  readonly low: number;
  readonly high: number;
  /** The value is at its physical limit: only `high` says something. */
  readonly atLimit: boolean;
  /** What stood in the file. */
  readonly before: number;
  /** Keys that it cannot be told from and that were kept as in the file: value and interval hold with them there. */
  readonly given: readonly FitKey[];
}

/** A value the data do not tell: it kept the file's. */
export interface Refusal {
  readonly key: FitKey;
  /** What it cannot be told from; empty where the swing hardly depends on it. */
  readonly from: readonly ParameterName[];
  readonly keptAt: number;
  /** What the data cannot tell, and what to measure instead: two sentences. */
  readonly says: string;
  readonly instead: string;
}

export interface Correlation {
  readonly a: ParameterName;
  readonly b: ParameterName;
  readonly value: number;
}

/** What belongs to the measurement, SI. */
export interface MeasurementValue {
  readonly name: Nuisance;
  readonly value: number;
  readonly error: number;
}

/** The measured against the computed, for a plot. */
export interface Compared {
  /** s, on the measurement's clock, or the turn's place where no time was taken. */
  readonly at: readonly number[];
  /** rad, as read. */
  readonly measured: readonly number[];
  /** What the fitted door reads there, rad. */
  readonly computed: readonly number[];
}

export interface FitDone {
  readonly ok: true;
  readonly kind: Measured["kind"];
  readonly values: readonly FittedValue[];
  readonly refused: readonly Refusal[];
  readonly measurement: readonly MeasurementValue[];
  readonly correlations: readonly Correlation[];
  /** Standard deviation of a reading about the computed swing, rad; of the assumed errors where the data are a count. */
  readonly residual: number;
  /** The reading's own noise, rad; `null` where the data do not show it. */
  readonly noise: number | null;
  readonly used: number;
  readonly given: number;
  readonly freedom: number;
  readonly compared: Compared | null;
  /** Sentences for people. */
  readonly says: readonly string[];
}

export interface FitRefused {
  readonly ok: false;
  /** What is wrong with the data, and what to measure instead. */
  readonly says: string;
}

export type Fit = FitDone | FitRefused;
