/** Swings the study's low-discrepancy points: their settle times and nothing else, about half of what a sample costs. */
import type { SwingRun } from "../swing/swing.ts";
import type { StudyRequest } from "./request.ts";
import type { SampledDoor } from "./sampled-door.ts";
import { pointsBefore, StudyPoints } from "./study-points.ts";

/** Settle times of points `from` … `from + settle.length − 1`, s; infinite is never. */
export interface PointRow {
  readonly from: number;
  readonly settle: Float64Array;
}

export class PointRun {
  private readonly points: StudyPoints;
  private readonly samples: number;
  private readonly sampled: SampledDoor;
  private readonly swingRun: SwingRun;

  /** `sampled` and `swingRun` may be those of the samples: every swing sets them up anew. */
  constructor(request: StudyRequest, sampled: SampledDoor, swingRun: SwingRun) {
    this.points = new StudyPoints(request);
    this.samples = request.samples;
    this.sampled = sampled;
    this.swingRun = swingRun;
  }

  /** The points that go with samples `from` … `to` − 1. */
  row(from: number, to: number): PointRow {
    const { plan } = this.points;
    const first = pointsBefore(plan, this.samples, from);
    const settle = new Float64Array(pointsBefore(plan, this.samples, to) - first);
    for (let i = 0; i < settle.length; i++) settle[i] = this.settleTime(first + i);
    return { from: first, settle };
  }

  private settleTime(place: number): number {
    const { sampled, swingRun } = this;
    this.points.draw(place, sampled.draws);
    sampled.take();
    if (!sampled.works) return Number.POSITIVE_INFINITY;
    const { settleTime } = swingRun.runUntilSettled(sampled.system, sampled.angle, sampled.speed);
    return settleTime ?? Number.POSITIVE_INFINITY;
  }
}
