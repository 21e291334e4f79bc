/**
 * What a person counts and measures on a swing: its turning points, and from them amplitude, period and decrement swing by
 * swing. From a sampled trace, so that a computed swing and a measured one are read in the same way.
 */
import type { SampledTrace } from "./trace.ts";

/** A moment at which the flap turns. */
export interface Turn {
  /** s. */
  readonly time: number;
  /** rad. */
  readonly angle: number;
}

/** One swing there and back, measured peak to peak, so that it does not matter about which angle the flap swings. */
export interface SwingMeasure {
  /** s at which it begins. */
  readonly time: number;
  /** Half the way from one turning point to the next, rad. */
  readonly amplitude: number;
  /** From a turning point to the next but one, s. */
  readonly period: number;
  /** ln(A_n/A_n+2): the logarithmic decrement of one whole swing (Thomson, *Theory of Vibration*, ch. 2). */
  readonly decrement: number;
  /** A_n − A_n+2, rad: constant where dry friction alone brakes. */
  readonly loss: number;
}

/**
 * Turning points in order. A flap let go at rest turns at its first sample. Between two samples of opposite speed the
 * moment is where the speed, taken as even, is 0, and the angle that of the cubic through both samples and their speeds.
 */
export function turningPoints({ time, angle, speed }: SampledTrace): Turn[] {
  const turns: Turn[] = [];
  let before = 0;
  for (let i = 0; i < time.length; i++) {
    if (i === 0 && speed[0] === 0) turns.push({ time: time[0], angle: angle[0] });
    const sign = Math.sign(speed[i]);
    if (sign === 0) continue;
    if (before * sign < 0) turns.push(turnBefore(time, angle, speed, i));
    before = sign;
  }
  return turns;
}

/** The turning point between sample `i` and the one before. */
function turnBefore(time: Float64Array, angle: Float64Array, speed: Float64Array, i: number): Turn {
  const dt = time[i] - time[i - 1];
  const from = speed[i - 1];
  const share = from / (from - speed[i]);
  return {
    time: time[i - 1] + share * dt,
    angle: cubic(angle[i - 1], from * dt, angle[i], speed[i] * dt, share),
  };
}

/** Cubic Hermite interpolation, `share` from 0 to 1; slopes per unit of share. */
function cubic(f0: number, d0: number, f1: number, d1: number, share: number): number {
  const s2 = share * share;
  const s3 = s2 * share;
  return (2 * s3 - 3 * s2 + 1) * f0 + (s3 - 2 * s2 + share) * d0 + (3 * s2 - 2 * s3) * f1 + (s3 - s2) * d1;
}

/** Every whole swing between turning points: one begins at each turning point that three others follow. */
export function swingMeasures(turns: readonly Turn[]): SwingMeasure[] {
  const amplitudes = turns.slice(1).map((turn, i) => Math.abs(turn.angle - turns[i].angle) / 2);
  return amplitudes.slice(2).map((later, i) => ({
    time: turns[i].time,
    amplitude: amplitudes[i],
    period: turns[i + 2].time - turns[i].time,
    decrement: Math.log(amplitudes[i] / later),
    loss: amplitudes[i] - later,
  }));
}
