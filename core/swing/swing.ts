/**
 * One swing from let-go to rest: the driver. It asks `motion.ts` for the next thing that happens, applies what the model
 * says happens there (sticking, stops), and keeps the record of the latch's view: inside or outside the capture band.
 */
import {
  advance,
  type Motion,
  OUT_OF_WORK,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type StepObserver,
  startFromRest,
} from "./motion.ts";
import { basinFloor } from "./rest.ts";
import { bounce, passCut, pressesStop } from "./stops.ts";
import type { SwingSystem } from "./system.ts";
import { potentialEnergy, staticEnergy } from "./torque.ts";
import type { FlapState, Trace } from "./trace.ts";

/** Door time after which a run ends whatever the flap does, s (model, section 2). */
export const TIME_LIMIT = 600;
/** A flap without dry friction is called done when its energy above the minimum is below this, J (model, section 2). */
export const DONE_ENERGY = 1e-9;

export type SwingStatus = "at rest" | "faded" | "settled" | "time limit" | "work limit";

/** Where the energy went, J. Sum of all but `initial` equals `initial`; `air` may be negative (wind or pressure gave). */
export interface EnergyLedger {
  readonly initial: number;
  readonly hinge: number;
  readonly viscous: number;
  readonly seal: number;
  readonly air: number;
  readonly stops: number;
  readonly left: number;
}

export interface Swing {
  readonly status: SwingStatus;
  readonly message: string;
  /** Signed let-go angle, rad, and speed, rad/s. */
  readonly releaseAngle: number;
  readonly releaseSpeed: number;
  /** s from let-go; `null` where the flap does not end inside the capture band, or there is no latch. */
  readonly settleTime: number | null;
  /** s and rad; `null` without dry friction, or where the run ended before rest. */
  readonly restTime: number | null;
  readonly restAngle: number | null;
  readonly centrePasses: number;
  readonly ledger: EnergyLedger;
  /** Work counts. */
  readonly steps: number;
  readonly rejected: number;
  /** s from let-go at which the run ended. */
  readonly endTime: number;
}

/** Follows the capture band and the centre step by step; a step is monotonic, so its two ends tell all. */
class LatchView implements StepObserver {
  passes = 0;
  passesAtEntry = 0;
  lastEntry = -1;
  entryTarget = 0;
  private low = 0;
  private high = 0;
  private centre = 0;
  private readonly trace: Trace;

  constructor(trace: Trace) {
    this.trace = trace;
  }

  begin(system: SwingSystem): void {
    const { capture } = system;
    this.centre = capture?.centre ?? 0;
    const half = capture?.half ?? 0;
    this.low = this.centre - half;
    this.high = this.centre + half;
    this.passes = 0;
    this.passesAtEntry = 0;
    this.lastEntry = -1;
  }

  inside(angle: number): boolean {
    return angle >= this.low && angle <= this.high;
  }

  onStep(motion: Motion): void {
    const from = motion.fromAngle;
    const to = motion.angle;
    const { low, high, centre } = this;
    if (from < low && to >= low) this.enter(low);
    else if (from > high && to <= high) this.enter(high);
    if ((from < centre && to >= centre) || (from > centre && to <= centre)) this.passes++;
    this.trace.add(motion);
  }

  private enter(target: number): void {
    this.lastEntry = this.trace.count;
    this.entryTarget = target;
    this.passesAtEntry = this.passes;
  }
}

/** Everything a swing needs and can use again: one per worker, so that many swings allocate nothing. */
export class SwingRun {
  readonly motion: Motion;
  readonly trace: Trace;
  private readonly view: LatchView;
  private readonly state: FlapState = { time: 0, angle: 0, speed: 0 };

  constructor(motion: Motion, trace: Trace) {
    this.motion = motion;
    this.trace = trace;
    this.view = new LatchView(trace);
  }

  /**
   * Swings the flap from a signed angle (rad, within the stops) and speed (rad/s, in the direction of the angle's sign
   * where positive values go outwards) until rest, and leaves the trace of it in `trace`.
   */
  run(system: SwingSystem, releaseAngle: number, releaseSpeed: number): Swing {
    return this.swing(system, releaseAngle, releaseSpeed, Number.NEGATIVE_INFINITY);
  }

  /**
   * The same, but a flap that turns inside the capture band with too little energy to leave it is not followed any further: all
   * of the swing that matters to the bolt.
   */
  runUntilSettled(system: SwingSystem, releaseAngle: number, releaseSpeed: number): Swing {
    return this.swing(system, releaseAngle, releaseSpeed, energyToLeave(system));
  }

  /** Follows a settled flap of `runUntilSettled` to its end, as `run` would have; returns that moment, s from let-go. */
  goOn(system: SwingSystem): number {
    goOn(this.motion, system, this.view, Number.NEGATIVE_INFINITY);
    return this.motion.time;
  }

  private swing(system: SwingSystem, releaseAngle: number, releaseSpeed: number, settled: number): Swing {
    const { motion, trace, view } = this;
    const angle = Math.max(-system.stopAngle, Math.min(system.stopAngle, releaseAngle));
    place(motion, system, 0, angle, releaseSpeed);
    trace.begin(0, angle, releaseSpeed);
    view.begin(system);
    const initial = potentialEnergy(system, angle) + 0.5 * system.inertia * releaseSpeed ** 2;
    const startedInside = view.inside(angle);
    const status = carry(motion, system, view, settled);
    return this.report(system, status, angle, releaseSpeed, initial, startedInside);
  }

  private report(
    system: SwingSystem,
    status: SwingStatus,
    releaseAngle: number,
    releaseSpeed: number,
    initial: number,
    startedInside: boolean,
  ): Swing {
    const { motion, view } = this;
    const rests = status === "at rest";
    const settles = system.capture !== null && this.staysInside(system, status);
    const entered = view.lastEntry >= 0;
    const settleTime = settles ? (entered ? this.entryTime(system) : startedInside ? 0 : null) : null;
    const { viscous, air, hinge, seal, stops } = motion;
    const left = potentialEnergy(system, motion.angle) + 0.5 * system.inertia * motion.speed ** 2;
    return {
      status,
      message: MESSAGES[status],
      releaseAngle,
      releaseSpeed,
      settleTime,
      restTime: rests ? motion.time : null,
      restAngle: rests ? motion.angle : null,
      centrePasses: settleTime === null ? view.passes : view.passesAtEntry,
      ledger: { initial, hinge, viscous, seal, air, stops, left },
      steps: motion.steps,
      rejected: motion.rejected,
      endTime: motion.time,
    };
  }

  private entryTime(system: SwingSystem): number {
    return this.trace.timeOf(system, this.view.lastEntry, this.view.entryTarget, this.state);
  }

  /** At rest inside; or still moving with too little energy to leave the band again. */
  private staysInside(system: SwingSystem, status: SwingStatus): boolean {
    const { motion, view } = this;
    const { capture } = system;
    if (capture === null || !view.inside(motion.angle)) return false;
    if (status === "at rest" || status === "faded") return true;
    const energy = staticEnergy(system, motion.angle) + 0.5 * system.inertia * motion.speed ** 2;
    return energy < energyToLeave(system);
  }
}

/** Least energy with which a flap inside the capture band can leave it, J; none (−∞) without a band. */
function energyToLeave(system: SwingSystem): number {
  const { capture } = system;
  if (capture === null) return Number.NEGATIVE_INFINITY;
  const low = staticEnergy(system, capture.centre - capture.half);
  const high = staticEnergy(system, capture.centre + capture.half);
  return Math.min(low, high);
}

const MESSAGES: Record<SwingStatus, string> = {
  "at rest": "the flap came to rest",
  faded: "no dry friction: the swing faded to less than 1 nJ without ever resting",
  settled: "inside the bolt's play with too little energy to leave it; not followed to rest",
  "time limit": `still moving after ${TIME_LIMIT} s of door time`,
  "work limit": "the integrator used up its steps before the flap came to rest",
};

/** Drives a placed motion to its end, or until it turns inside the band with less than the energy `settled`, J. */
function carry(motion: Motion, system: SwingSystem, view: LatchView, settled: number): SwingStatus {
  if (motion.speed === 0 && !startFromRest(motion, system)) return restStatus(motion, system);
  if (pressesStop(motion, system) && bounce(motion, system)) return "at rest";
  return goOn(motion, system, view, settled);
}

/** The same for a motion under way. */
function goOn(motion: Motion, system: SwingSystem, view: LatchView, settled: number): SwingStatus {
  for (;;) {
    const reached = advance(motion, system, TIME_LIMIT, view);
    if (reached === REACHED_TIME) return "time limit";
    if (reached === OUT_OF_WORK) return "work limit";
    if (reached === REACHED_TURN && !startFromRest(motion, system)) return restStatus(motion, system);
    if (reached === REACHED_CUT && passCut(motion, system)) return "at rest";
    if (fades(motion, system)) return "faded";
    if (reached === REACHED_TURN && view.inside(motion.angle)) {
      if (staticEnergy(system, motion.angle) < settled) return "settled";
    }
  }
}

/** A flap that stays put without any dry friction to hold it balances: it has faded, not come to rest, unless a stop holds it. */
function restStatus(motion: Motion, system: SwingSystem): SwingStatus {
  const held = Math.abs(motion.angle) >= system.stopAngle || system.friction.some((f) => f > 0);
  return held ? "at rest" : "faded";
}

/** True where no dry friction acts and the energy above the basin's floor is used up. */
function fades(motion: Motion, system: SwingSystem): boolean {
  if (system.friction[motion.region] > 0) return false;
  const energy = staticEnergy(system, motion.angle) + 0.5 * system.inertia * motion.speed ** 2;
  return energy - basinFloor(system, motion.angle) < DONE_ENERGY;
}

/**
 * The swing that is reported (model, section 2): where the two directions differ both are run and the one that settles
 * later counts; never is later than any time; if neither settles, the positive one. Leaves that one's trace in `run`.
 */
export function laterSwing(
  run: SwingRun,
  system: SwingSystem,
  angle: number,
  speed: number,
  symmetric: boolean,
): Swing {
  const outwards = run.run(system, angle, speed);
  if (symmetric || outwards.settleTime === null) return outwards;
  const inwards = run.run(system, -angle, -speed);
  const later = inwards.settleTime === null || inwards.settleTime > outwards.settleTime;
  return later ? inwards : run.run(system, angle, speed);
}
