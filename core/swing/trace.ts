/**
 * The swing as it was computed: one row per step of the integrator. Between two rows the solution is had by taking a
 * shorter step of the same method from the earlier row, so that a trace read at any moment is as exact as the swing itself.
 */
import { OUT_ANGLE, OUT_SIZE, OUT_SPEED, step } from "./dormand-prince.ts";
import type { Motion } from "./motion.ts";
import type { SwingSystem } from "./system.ts";

/** Angle and speed at one moment. */
export interface FlapState {
  time: number;
  angle: number;
  speed: number;
}

const COLUMNS = 6;
const SPEED = 1;
const ACCELERATION = 2;
const DAMPING = 3;
const FRICTION = 4;
const END_ANGLE = 5;

/** Rows of steps in flat arrays that grow by doubling and are used again by the next swing. */
export class Trace {
  count = 0;
  /** Time and state after the last step. */
  endTime = 0;
  endAngle = 0;
  endSpeed = 0;
  times = new Float64Array(256);
  private rows = new Float64Array(256 * COLUMNS);
  private readonly out = new Float64Array(OUT_SIZE);

  /** Empties the trace and sets the state it starts from. */
  begin(time: number, angle: number, speed: number): void {
    this.count = 0;
    this.endTime = time;
    this.endAngle = angle;
    this.endSpeed = speed;
  }

  /** Adds the motion's last accepted step. */
  add(motion: Motion): void {
    if (this.count === this.times.length) this.grow();
    const row = this.count * COLUMNS;
    const { rows } = this;
    this.times[this.count] = motion.fromTime;
    rows[row] = motion.fromAngle;
    rows[row + SPEED] = motion.fromSpeed;
    rows[row + ACCELERATION] = motion.fromAcceleration;
    rows[row + DAMPING] = motion.damping;
    rows[row + FRICTION] = motion.friction;
    rows[row + END_ANGLE] = motion.angle;
    this.count++;
    this.endTime = motion.time;
    this.endAngle = motion.angle;
    this.endSpeed = motion.speed;
  }

  private grow(): void {
    const times = new Float64Array(this.times.length * 2);
    times.set(this.times);
    const rows = new Float64Array(this.rows.length * 2);
    rows.set(this.rows);
    this.times = times;
    this.rows = rows;
  }

  startAngle(index: number): number {
    return this.rows[index * COLUMNS];
  }

  /** Angle at the end of a step: that at the start of the next. */
  endAngleOf(index: number): number {
    return this.rows[index * COLUMNS + END_ANGLE];
  }

  startSpeed(index: number): number {
    return this.rows[index * COLUMNS + SPEED];
  }

  endOf(index: number): number {
    return index + 1 < this.count ? this.times[index + 1] : this.endTime;
  }

  /** Direction of motion during a step, +1, −1 or 0: the angle is monotonic within each. */
  signOf(index: number): number {
    return Math.sign(this.endAngleOf(index) - this.startAngle(index));
  }

  /** Index of the step that covers `time`; −1 where the trace has none. */
  indexAt(time: number): number {
    let low = 0;
    let high = this.count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.times[middle] <= time) low = middle;
      else high = middle - 1;
    }
    return this.count === 0 ? -1 : low;
  }

  /** State at a moment, exact to the integrator's tolerance; after the end the flap is where it came to rest. */
  at(system: SwingSystem, time: number, state: FlapState): FlapState {
    state.time = time;
    const index = this.indexAt(time);
    if (index < 0 || time >= this.endTime) {
      state.angle = this.endAngle;
      state.speed = this.count === 0 || time > this.endTime ? 0 : this.endSpeed;
      if (index < 0) state.speed = this.endSpeed;
      return state;
    }
    return this.within(system, index, Math.max(0, time - this.times[index]), state);
  }

  /** State `dt` after the start of a step. */
  within(system: SwingSystem, index: number, dt: number, state: FlapState): FlapState {
    const row = index * COLUMNS;
    const { rows, out } = this;
    step(
      system,
      rows[row],
      rows[row + SPEED],
      rows[row + ACCELERATION],
      rows[row + DAMPING],
      rows[row + FRICTION],
      dt,
      out,
    );
    state.time = this.times[index] + dt;
    state.angle = out[OUT_ANGLE];
    state.speed = out[OUT_SPEED];
    return state;
  }

  /**
   * Moment within a step at which the flap passes `target`, which lies between the step's ends. Newton's method inside a
   * bracket, to the last bits of time.
   */
  timeOf(system: SwingSystem, index: number, target: number, state: FlapState): number {
    const sign = this.signOf(index);
    let low = 0;
    let high = this.endOf(index) - this.times[index];
    const from = this.startAngle(index);
    let x = (high * (target - from)) / (this.endAngleOf(index) - from);
    for (let i = 0; i < 60; i++) {
      this.within(system, index, x, state);
      const miss = state.angle - target;
      if (miss * sign < 0) low = x;
      else high = x;
      const next = x - miss / state.speed;
      const moved = next > low && next < high ? next : (low + high) / 2;
      const dx = moved - x;
      x = moved;
      if (Math.abs(dx) < 1e-12 || high - low < 1e-13) break;
    }
    return this.times[index] + x;
  }
}

/** A trace resampled for people, plots and files: columns of equal length. */
export interface SampledTrace {
  readonly time: Float64Array;
  readonly angle: Float64Array;
  readonly speed: Float64Array;
}

/** The swing at equal times from 0 to `end`, `interval` apart, both ends included. */
export function sampleTrace(trace: Trace, system: SwingSystem, end: number, interval: number): SampledTrace {
  const count = Math.floor(end / interval + 1e-9) + 1;
  const time = new Float64Array(count);
  const angle = new Float64Array(count);
  const speed = new Float64Array(count);
  const state: FlapState = { time: 0, angle: 0, speed: 0 };
  for (let i = 0; i < count; i++) {
    trace.at(system, i * interval, state);
    time[i] = state.time;
    angle[i] = state.angle;
    speed[i] = state.speed;
  }
  return { time, angle, speed };
}
