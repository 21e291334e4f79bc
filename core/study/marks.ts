/**
 * A swing cut into pieces for the latch: marks wherever the flap turns or passes one of the latch's four angles. Between
 * two marks it moves one way through one zone.
 */
import type { LatchMechanics } from "../parts/latch.ts";
import type { SwingSystem } from "../swing/system.ts";
import type { FlapState, Trace } from "../swing/trace.ts";

export const TURN = 0;
export const CAPTURE_EDGE = 1;
export const BLOCK_EDGE = 2;
/** Start or end of the trace. */
export const END = 3;
export type MarkKind = typeof TURN | typeof CAPTURE_EDGE | typeof BLOCK_EDGE | typeof END;

export const INSIDE = 0;
export const RIDING = 1;
export const BEYOND = 2;

export class Marks {
  count = 0;
  private rows = new Int32Array(256);
  private kinds = new Uint8Array(256);
  private angles = new Float64Array(256);
  /** NaN until someone asks: most passages of a swing are too fast to matter. */
  private times = new Float64Array(256);
  private centre = 0;
  private capture = 0;
  private block = 0;
  private readonly edges = new Float64Array(4);
  private readonly scratch: FlapState = { time: 0, angle: 0, speed: 0 };

  /** Marks a trace. A trace without a step has its start and end only. */
  scan(trace: Trace, latch: LatchMechanics): void {
    const { centre, capture, block } = latch;
    this.centre = centre;
    this.capture = capture;
    this.block = block;
    this.edges[0] = centre - block;
    this.edges[1] = centre - capture;
    this.edges[2] = centre + capture;
    this.edges[3] = centre + block;
    this.count = 0;
    const steps = trace.count;
    if (steps === 0) return;
    this.add(0, END, trace.startAngle(0), trace.times[0]);
    let before = 0;
    for (let row = 0; row < steps; row++) {
      const from = trace.startAngle(row);
      const to = trace.endAngleOf(row);
      if (from === to) continue;
      const sign = to > from ? 1 : -1;
      if (before !== 0 && sign !== before) this.add(row, TURN, from, trace.times[row]);
      before = sign;
      this.passed(row, from, to, sign);
    }
    this.add(steps - 1, END, trace.endAngle, trace.endTime);
  }

  private passed(row: number, from: number, to: number, sign: number): void {
    const { edges } = this;
    if ((from > edges[3] && to > edges[3]) || (from < edges[0] && to < edges[0])) return;
    for (let i = 0; i < 4; i++) {
      const edge = sign > 0 ? edges[i] : edges[3 - i];
      const passes = sign > 0 ? from < edge && to >= edge : from > edge && to <= edge;
      if (passes) this.add(row, i === 0 || i === 3 ? BLOCK_EDGE : CAPTURE_EDGE, edge, Number.NaN);
    }
  }

  private add(row: number, kind: MarkKind, angle: number, time: number): void {
    if (this.count === this.rows.length) this.grow();
    const i = this.count++;
    this.rows[i] = row;
    this.kinds[i] = kind;
    this.angles[i] = angle;
    this.times[i] = time;
  }

  private grow(): void {
    const size = this.rows.length * 2;
    const { rows, kinds, angles, times } = this;
    this.rows = new Int32Array(size);
    this.kinds = new Uint8Array(size);
    this.angles = new Float64Array(size);
    this.times = new Float64Array(size);
    this.rows.set(rows);
    this.kinds.set(kinds);
    this.angles.set(angles);
    this.times.set(times);
  }

  kind(mark: number): MarkKind {
    return this.kinds[mark] as MarkKind;
  }

  angle(mark: number): number {
    return this.angles[mark];
  }

  /** Moment of a mark, s from let-go. */
  time(mark: number, trace: Trace, system: SwingSystem): number {
    if (Number.isNaN(this.times[mark])) {
      this.times[mark] = trace.timeOf(system, this.rows[mark], this.angles[mark], this.scratch);
    }
    return this.times[mark];
  }

  /** State of the flap at a mark, at an edge as it passes it, and at a turning point at rest. */
  state(mark: number, trace: Trace, system: SwingSystem, state: FlapState): void {
    const kind = this.kind(mark);
    if (kind === TURN || kind === END) {
      state.time = this.times[mark];
      state.angle = this.angles[mark];
      state.speed = kind === TURN ? 0 : mark === 0 ? trace.startSpeed(0) : trace.endSpeed;
      return;
    }
    trace.passing(system, this.rows[mark], this.angles[mark], state);
    this.times[mark] = state.time;
  }

  /** Direction of motion on the piece after a mark, +1 or −1; 0 where the piece is empty. */
  direction(piece: number): number {
    return Math.sign(this.angles[piece + 1] - this.angles[piece]);
  }

  /** Whether a mark lies on the flap's edge or within it. */
  onEdge(mark: number): boolean {
    return Math.abs(this.angles[mark] - this.centre) <= this.block * (1 + 1e-12);
  }

  /** Angle in the middle of a piece, from the slot's centre. */
  middle(piece: number): number {
    return (this.angles[piece] + this.angles[piece + 1]) / 2 - this.centre;
  }

  zone(piece: number): number {
    const away = Math.abs(this.middle(piece));
    return away <= this.capture ? INSIDE : away <= this.block ? RIDING : BEYOND;
  }
}
