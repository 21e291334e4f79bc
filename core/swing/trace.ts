/**
 * The swing as it was computed: one row per step of the integrator. Between two rows the solution is had by taking a
 * shorter step of the same method from the earlier row, so that a trace read at any moment is as exact as the swing itself.
 * A whole stretch keeps the polynomial of its time instead, and is read from that.
 */
import { OUT_SIZE } from "./dormand-prince.ts";
import { acceleration } from "./fields.ts";
import { POINTS, PointPolynomial } from "./gauss.ts";
import type { Motion } from "./motion.ts";
import {
  BY_ANGLE,
  BY_TIME,
  END_ANGLE,
  END_SPEED,
  END_TIME,
  moveByAngle,
  moveBySpeed,
  moveByTime,
  WHOLE,
} from "./moves.ts";
import { type Forces, noForces, type SwingSystem } from "./system.ts";
import { placeOf, shareAt, slopeAt } from "./ways.ts";

/** Angle and speed at one moment. */
export interface FlapState {
  time: number;
  angle: number;
  speed: number;
}

/** Searches inside a step end here, s, and after this many tries at the latest. */
const SEARCH_TIME = 1e-13;
const SEARCH_LIMIT = 80;

const COLUMNS = 8;
const SPEED = 1;
const KIND = 2;
const SIGN = 3;
const DAMPING = 4;
const FRICTION = 5;
const LAST_ANGLE = 6;
/** The way of a whole stretch. */
const WAY = 7;

function doubled(values: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(values.length * 2);
  larger.set(values);
  return larger;
}

/** Rows of steps in flat arrays that grow by doubling and are used again by the next swing. */
export class Trace {
  count = 0;
  /** Time and state after the last step. */
  endTime = 0;
  endAngle = 0;
  endSpeed = 0;
  times = new Float64Array(256);
  private rows = new Float64Array(256 * COLUMNS);
  /** Per row, where it is a whole stretch: dt/du at its points. */
  private rates = new Float64Array(256 * POINTS);
  private readonly clock = new PointPolynomial();
  /** Row whose polynomial the clock holds; −1 for none. */
  private clocked = -1;
  private readonly out = new Float64Array(OUT_SIZE);
  private readonly forces: Forces = noForces();

  /** Empties the trace and sets the state it starts from. */
  begin(time: number, angle: number, speed: number): void {
    this.count = 0;
    this.clocked = -1;
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
    rows[row + KIND] = motion.kind;
    rows[row + SIGN] = motion.forces.sign;
    rows[row + DAMPING] = motion.forces.damping;
    rows[row + FRICTION] = motion.forces.friction;
    rows[row + LAST_ANGLE] = motion.angle;
    if (motion.kind === WHOLE) this.addStretch(motion, row);
    this.count++;
    this.endTime = motion.time;
    this.endAngle = motion.angle;
    this.endSpeed = motion.speed;
  }

  private addStretch({ stretch }: Motion, row: number): void {
    const { rates } = this;
    this.rows[row + WAY] = stretch.way;
    const start = this.count * POINTS;
    for (let i = 0; i < stretch.rate.length; i++) rates[start + i] = stretch.rate[i];
  }

  private grow(): void {
    this.times = doubled(this.times);
    this.rows = doubled(this.rows);
    this.rates = doubled(this.rates);
  }

  startAngle(index: number): number {
    return this.rows[index * COLUMNS];
  }

  /** Angle at the end of a step: that at the start of the next. */
  endAngleOf(index: number): number {
    return this.rows[index * COLUMNS + LAST_ANGLE];
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
    if (rows[row + KIND] === WHOLE) return this.withinStretch(index, dt, state);
    if (rows[row + KIND] === BY_TIME) this.part(system, row, dt);
    else this.partLasting(system, index, dt);
    state.time = this.times[index] + dt;
    state.angle = out[END_ANGLE];
    state.speed = out[END_SPEED];
    return state;
  }

  private setClock(index: number): void {
    if (this.clocked === index) return;
    this.clock.take(this.rates, index * POINTS);
    this.clocked = index;
  }

  /** The same within a whole stretch: u by Newton's method inside a bracket, then angle and speed by its way. */
  private withinStretch(index: number, dt: number, state: FlapState): FlapState {
    const { clock, rows } = this;
    const way = rows[index * COLUMNS + WAY];
    const from = this.startAngle(index);
    const length = this.endAngleOf(index) - from;
    this.setClock(index);
    let low = 0;
    let high = 1;
    let u = Math.min(1, dt / (this.endOf(index) - this.times[index]));
    for (let i = 0; i < SEARCH_LIMIT; i++) {
      clock.read(u);
      const late = clock.integral - dt;
      if (Math.abs(late) < SEARCH_TIME) break;
      if (late > 0) high = u;
      else low = u;
      const next = u - late / clock.value;
      u = next > low && next < high ? next : (low + high) / 2;
    }
    state.time = this.times[index] + dt;
    state.angle = from + length * shareAt(way, u);
    state.speed = (length * slopeAt(way, u)) / clock.value;
    return state;
  }

  /** The step in `row` taken again, only `h` long in its own running variable. */
  private part(system: SwingSystem, row: number, h: number): void {
    const { rows, out, forces } = this;
    forces.sign = rows[row + SIGN];
    forces.damping = rows[row + DAMPING];
    forces.friction = rows[row + FRICTION];
    const kind = rows[row + KIND];
    const move = kind === BY_TIME ? moveByTime : kind === BY_ANGLE ? moveByAngle : moveBySpeed;
    move(system, forces, rows[row], rows[row + SPEED], h, out);
  }

  /** The same for a step over angle or speed, as much of it as lasts `dt`. Newton's method inside a bracket. */
  private partLasting(system: SwingSystem, index: number, dt: number): void {
    const row = index * COLUMNS;
    const { rows, out } = this;
    const overAngle = rows[row + KIND] === BY_ANGLE;
    const whole = overAngle ? rows[row + LAST_ANGLE] - rows[row] : -rows[row + SPEED];
    let low = 0;
    let high = 1;
    let share = Math.min(1, dt / (this.endOf(index) - this.times[index]));
    for (let i = 0; i < SEARCH_LIMIT; i++) {
      this.part(system, row, share * whole);
      const late = out[END_TIME] - dt;
      if (Math.abs(late) < SEARCH_TIME) break;
      if (late > 0) high = share;
      else low = share;
      const rate = overAngle
        ? out[END_SPEED]
        : acceleration(system, this.forces, out[END_ANGLE], out[END_SPEED]);
      const next = share - (late * rate) / whole;
      share = next > low && next < high ? next : (low + high) / 2;
    }
  }

  /** State in which the flap passes `target`, which lies between a step's ends. */
  passing(system: SwingSystem, index: number, target: number, state: FlapState): FlapState {
    if (this.rows[index * COLUMNS + KIND] === WHOLE) return this.passingStretch(index, target, state);
    const time = this.timeOf(system, index, target, state);
    this.within(system, index, time - this.times[index], state);
    state.angle = target;
    return state;
  }

  private passingStretch(index: number, target: number, state: FlapState): FlapState {
    const { clock } = this;
    const way = this.rows[index * COLUMNS + WAY];
    const from = this.startAngle(index);
    const length = this.endAngleOf(index) - from;
    const u = placeOf(way, (target - from) / length);
    this.setClock(index);
    clock.read(u);
    state.time = this.times[index] + clock.integral;
    state.angle = target;
    state.speed = (length * slopeAt(way, u)) / clock.value;
    return state;
  }

  /** Moment within a step at which the flap passes `target`, which lies between the step's ends: to the last bits of time. */
  timeOf(system: SwingSystem, index: number, target: number, state: FlapState): number {
    const row = index * COLUMNS;
    if (this.rows[row + KIND] === WHOLE) return this.passingStretch(index, target, state).time;
    if (this.rows[row + KIND] === BY_ANGLE) {
      this.part(system, row, target - this.startAngle(index));
      return this.times[index] + this.out[END_TIME];
    }
    const sign = this.signOf(index);
    let low = 0;
    let high = this.endOf(index) - this.times[index];
    const from = this.startAngle(index);
    let x = (high * (target - from)) / (this.endAngleOf(index) - from);
    for (let i = 0; i < SEARCH_LIMIT; i++) {
      this.within(system, index, x, state);
      const miss = state.angle - target;
      if (miss * sign < 0) low = x;
      else high = x;
      const next = x - miss / state.speed;
      const moved = next > low && next < high ? next : (low + high) / 2;
      const dx = moved - x;
      x = moved;
      if (Math.abs(dx) < SEARCH_TIME || high - low < SEARCH_TIME) break;
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
