/** One passage as a film: flap, bolt, coil and animal at equal times from detection to the end, all from the computed door. */
import type { Door, Latch } from "../door/door.ts";
import type { LatchMechanics } from "../parts/latch.ts";
import { Motion } from "../swing/motion.ts";
import type { SwingSystem } from "../swing/system.ts";
import { type FlapState, Trace } from "../swing/trace.ts";
import { holdEnd, holdStart, type Passage } from "./passage.ts";
import { boltAtMouth, type Outcome, type Relatch, type RideSystem, relatch, rideSystem } from "./relatch.ts";

/** Moments of a passage, s from detection; `null` where the door has none (no latch, no timer, never rests). */
export interface PassageMarks {
  readonly arrival: number;
  /** The coil has withdrawn the bolt. */
  readonly unlocked: number | null;
  readonly letGo: number;
  /** Last counted pulse: the hold's time zero. */
  readonly holdStarts: number | null;
  readonly holdEnds: number | null;
  /** The bolt's tip is at the slot's mouth again. */
  readonly mouth: number | null;
  /** The relatch is decided. */
  readonly decided: number | null;
  /** The free swing comes inside the bolt's play to stay. */
  readonly settled: number | null;
  readonly rest: number | null;
}

/** Columns of equal length, `interval` apart. Plain data: it may cross to another thread as it is. */
export interface Replay {
  readonly interval: number;
  /** s from detection. */
  readonly time: Float64Array;
  /** Flap, rad, positive outwards. */
  readonly angle: Float64Array;
  /** rad/s. */
  readonly speed: Float64Array;
  /** Bolt extension, m: 0 is withdrawn, `tipGap` at the slot's mouth, `stroke` fully out. */
  readonly bolt: Float64Array;
  /** 1 while the coil is driven. */
  readonly coil: Uint8Array;
  /** Nose of the animal, m past the frame in its direction of travel; negative before it. */
  readonly nose: Float64Array;
  /** +1 where the animal goes outwards (the flap is let go at a positive angle), else −1. */
  readonly direction: 1 | -1;
  readonly marks: PassageMarks;
  readonly outcome: Outcome | null;
}

/** What a film is made from: one animal's passage, its swing, and the latch. */
export interface ReplaySource {
  readonly door: Door;
  readonly passage: Passage;
  /** Walking speed of the animal, m/s, and the height at which it pushes above the hinge's foot: z_h − h_push, m. */
  readonly walkingSpeed: number;
  readonly pushLever: number;
  /** Signed, rad. */
  readonly releaseAngle: number;
  readonly settleTime: number | null;
  readonly restTime: number | null;
  readonly system: SwingSystem;
  readonly trace: Trace;
  readonly latch: LatchMechanics | null;
  /** s; 0 where there is none. */
  readonly releaseTime: number;
  readonly pullInTime: number | null;
}

/** Time that the drawing gives the bolt to withdraw once the current is there, s (drawing only). */
const WITHDRAWAL = 0.03;
/** What follows the last event, s, and the longest film, s. */
const TAIL = 1.5;
const LONGEST = 180;

/** What the relatch does to flap and bolt after the hold; times in s after let-go. */
interface Ending {
  readonly result: Relatch;
  readonly mouth: number;
  readonly ride: RideSystem;
  /** Flap from the mouth to the decision where the bolt rides; empty otherwise. */
  readonly rideTrace: Trace;
  /** Angle when it is decided, rad. */
  readonly decidedAngle: number;
}

/** Films a passage with the hold set to `hold` seconds (`null`: never relatches), `interval` seconds between pictures. */
export function replay(source: ReplaySource, hold: number | null, interval = 1 / 240): Replay {
  const ending = hold === null ? null : endingOf(source, hold);
  const { passage } = source;
  const times = marks(source, hold, ending);
  const last = Math.max(passage.letGoTime + source.trace.endTime, times.decided ?? 0, times.holdEnds ?? 0);
  const count = Math.ceil((Math.min(last, LONGEST) + TAIL) / interval) + 1;
  const film = {
    time: Float64Array.from({ length: count }, (_, i) => i * interval),
    angle: new Float64Array(count),
    speed: new Float64Array(count),
    bolt: new Float64Array(count),
    coil: new Uint8Array(count),
    nose: new Float64Array(count),
  };
  const state: FlapState = { time: 0, angle: 0, speed: 0 };
  for (let i = 0; i < count; i++) {
    const time = film.time[i];
    flapAt(source, ending, time, state);
    film.angle[i] = state.angle;
    film.speed[i] = state.speed;
    film.bolt[i] = source.door.latch === null ? 0 : boltAt(source, source.door.latch, times, ending, time);
    film.coil[i] =
      source.door.solenoid !== null && (times.holdEnds === null || time < times.holdEnds) ? 1 : 0;
    film.nose[i] = (time - passage.arrivalTime) * source.walkingSpeed;
  }
  const direction = source.releaseAngle < 0 ? -1 : 1;
  return { interval, ...film, direction, marks: times, outcome: ending?.result.outcome ?? null };
}

function endingOf(source: ReplaySource, hold: number): Ending | null {
  const { latch, system, trace } = source;
  if (latch === null) return null;
  const ride = rideSystem(system, latch);
  const state: FlapState = { time: 0, angle: 0, speed: 0 };
  const motion = new Motion();
  const ends = holdEnd(source.passage, source.door.timer?.retriggers ?? true, hold);
  const mouth = ends + source.releaseTime + latch.toMouth;
  const result = relatch(ride, system, trace, ends, source.releaseTime, motion, state);
  const rideTrace = new Trace();
  trace.at(system, Math.max(0, mouth), state);
  rideTrace.begin(state.time, state.angle, state.speed);
  if (result.outcome !== "under the animal") {
    boltAtMouth(ride, state, motion, { onStep: (m) => rideTrace.add(m) });
  }
  return { result, mouth, ride, rideTrace, decidedAngle: rideTrace.endAngle };
}

function marks(source: ReplaySource, hold: number | null, ending: Ending | null): PassageMarks {
  const { passage, door } = source;
  const after = (time: number | null) => (time === null ? null : passage.letGoTime + time);
  const retriggers = door.timer?.retriggers ?? true;
  return {
    arrival: passage.arrivalTime,
    unlocked: source.pullInTime,
    letGo: passage.letGoTime,
    holdStarts: hold === null ? null : holdStart(passage, retriggers),
    holdEnds: hold === null ? null : holdStart(passage, retriggers) + hold,
    mouth: ending === null ? null : passage.letGoTime + ending.mouth,
    decided: after(ending?.result.time ?? null),
    settled: after(source.settleTime),
    rest: after(source.restTime),
  };
}

/** Angle that the animal's front gives the flap before let-go: the flap leans on it at push height, then rides on the back. */
function pushedAngle(source: ReplaySource, time: number): number {
  const depth = Math.max(0, time - source.passage.arrivalTime) * source.walkingSpeed;
  const size = Math.abs(source.releaseAngle);
  const leaning = source.pushLever > 0 ? Math.atan2(depth, source.pushLever) : size;
  return Math.sign(source.releaseAngle) * Math.min(size, depth > 0 ? leaning : 0);
}

function flapAt(source: ReplaySource, ending: Ending | null, time: number, state: FlapState): void {
  const since = time - source.passage.letGoTime;
  if (since < 0) {
    const step = 1e-3;
    state.angle = pushedAngle(source, time);
    state.speed = (pushedAngle(source, time + step) - state.angle) / step;
    return;
  }
  if (ending === null || since <= ending.mouth) {
    if (ending?.result.outcome !== "under the animal") {
      source.trace.at(source.system, since, state);
      return;
    }
  }
  if (ending !== null && since <= ending.result.time) {
    ending.rideTrace.at(ending.ride.system, since, state);
    return;
  }
  if (ending !== null) afterwards(source, ending, since, state);
}

/**
 * The flap after the decision, for the eye only: caught, it stays within the bolt's play; shut out, it cannot come back past
 * the bolt; stuck, it stays where it is. Between those walls it is drawn on its free swing.
 */
function afterwards(source: ReplaySource, ending: Ending, since: number, state: FlapState): void {
  const { centre, capture, block } = ending.ride.latch;
  const { outcome } = ending.result;
  if (outcome === "stuck") {
    state.angle = ending.decidedAngle;
    state.speed = 0;
    return;
  }
  source.trace.at(source.system, since, state);
  const free = state.angle;
  if (outcome === "caught") {
    state.angle = Math.max(centre - capture, Math.min(centre + capture, free));
  } else {
    const side = Math.sign(outcome === "shut out" ? ending.decidedAngle - centre : source.releaseAngle) || 1;
    state.angle = centre + side * Math.max(block, side * (free - centre));
  }
  if (state.angle !== free) state.speed = 0;
}

/** Bolt extension at a moment, m. Rises that the slot's wall presses back at once are not drawn. */
function boltAt(
  source: ReplaySource,
  latch: Latch,
  times: PassageMarks,
  ending: Ending | null,
  time: number,
): number {
  const full = source.door.solenoid?.stroke ?? latch.tipGap + latch.engagement;
  const mechanics = source.latch;
  if (mechanics === null) return 0;
  if (times.unlocked !== null && time < times.unlocked + WITHDRAWAL) {
    return full * (1 - Math.max(0, (time - times.unlocked) / WITHDRAWAL));
  }
  if (ending === null || times.holdEnds === null || times.mouth === null || times.decided === null) return 0;
  const rise = (since: number, from: number) =>
    since <= 0 ? from : Math.min(full, from + (mechanics.boltForce * since * since) / (2 * latch.boltMass));
  const sinceRelease = time - times.holdEnds - source.releaseTime;
  if (time <= times.mouth) return rise(sinceRelease, 0);
  const { outcome } = ending.result;
  if (outcome === "stuck") return latch.tipGap;
  const straight = times.mouth + mechanics.toEngagement - mechanics.toMouth;
  const once = outcome === "caught" ? times.decided <= straight + 1e-9 : times.decided <= times.mouth + 1e-9;
  if (once) return rise(sinceRelease, 0);
  const again = outcome === "caught" ? times.decided - mechanics.again : times.decided;
  return rise(time - again, latch.tipGap);
}
