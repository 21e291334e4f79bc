/**
 * The same swing carried by another integrator: region by region, the sign of the friction fixed between turning points,
 * cuts and turning points located to 1e-10 s. Only the integrator differs: equation, tables, sticking rule and stops are core's.
 */
import { acceleration } from "../../core/swing/fields.ts";
import { sticks } from "../../core/swing/motion.ts";
import { type Forces, regionOf, type SwingSystem } from "../../core/swing/system.ts";
import { staticTorque } from "../../core/swing/torque.ts";

export type Derivative = (t: number, y: number[]) => number[];

/** A step of a peer: its ends, and the solution between them. */
export interface PeerStep {
  readonly from: number;
  readonly to: number;
  readonly at: (t: number) => readonly [number, number];
}

/** Integrates from (t, y) and hands over every step until `stop` says so. */
export type PeerIntegrator = (
  f: Derivative,
  t: number,
  y: number[],
  stop: (step: PeerStep) => boolean,
) => void;

/** State at the end of a piece; at a turning point the speed is 0. */
export interface Ended {
  time: number;
  angle: number;
  speed: number;
}

/** Settle time of a swing by a peer, s; −1 where it ends outside. */
export function peerSettleTime(system: SwingSystem, release: number, integrate: PeerIntegrator): number {
  let state: Ended = { time: 0, angle: release, speed: 0 };
  let entered = -1;
  const low = (system.capture?.centre ?? 0) - (system.capture?.half ?? 0);
  const high = (system.capture?.centre ?? 0) + (system.capture?.half ?? 0);
  const onStep = ({ from, to, at }: PeerStep) => {
    const [a] = at(from);
    const [b] = at(to);
    const edge = a < low && b >= low ? low : a > high && b <= high ? high : null;
    if (edge !== null) entered = rootIn((t) => at(t)[0] - edge, from, to);
  };
  for (let pieces = 0; pieces < 20000 && state.time < 600; pieces++) {
    if (state.speed === 0 && sticks(system, state.angle)) break;
    const sign = Math.sign(state.speed === 0 ? staticTorque(system, state.angle) : state.speed);
    state = piece(system, state, sign, integrate, Number.POSITIVE_INFINITY, onStep);
    if (Math.abs(state.angle) >= system.stopAngle) state.speed *= -system.restitution;
  }
  return state.angle >= low && state.angle <= high ? entered : -1;
}

/** To the next cut or turning point, or to the moment `latest`. */
export function piece(
  system: SwingSystem,
  start: Ended,
  sign: number,
  integrate: PeerIntegrator,
  latest: number,
  onStep: (step: PeerStep) => void,
): Ended {
  const region = regionOf(system, start.angle, sign);
  const target = system.cuts[sign > 0 ? region + 1 : region];
  const forces: Forces = { sign, damping: system.damping[region], friction: -sign * system.friction[region] };
  const f: Derivative = (_t, [angle, speed]) => [speed, acceleration(system, forces, angle, speed)];
  let end: Ended | null = null;
  integrate(f, start.time, [start.angle, start.speed], (step) => {
    end = eventIn(step, sign, target);
    if ((end?.time ?? step.to) > latest) {
      const [angle, speed] = step.at(latest);
      end = { time: latest, angle, speed };
    }
    const to = end === null ? step.to : end.time;
    onStep({ from: step.from, to, at: step.at });
    return end !== null;
  });
  if (end === null) throw new Error("the peer gave up");
  return end;
}

/** Turning point or cut within a step, whichever is first; `null` for neither. */
function eventIn({ from, to, at }: PeerStep, sign: number, target: number): Ended | null {
  const [angle, speed] = at(to);
  const turned = speed * sign <= 0;
  const turn = turned ? rootIn((t) => at(t)[1], from, to) : to;
  const past = (at(turn)[0] - target) * sign >= 0;
  if (!turned && !past) return null;
  if (!past) return { time: turn, angle: at(turn)[0], speed: 0 };
  const time = (angle - target) * sign >= 0 || turned ? rootIn((t) => at(t)[0] - target, from, turn) : to;
  return { time, angle: target, speed: at(time)[1] };
}

/** Root between two ends of opposite sign: Illinois rule. A start on the root itself is stepped over. */
function rootIn(f: (t: number) => number, a: number, b: number): number {
  let [low, high] = [a + 1e-9 * (b - a), b];
  let [fLow, fHigh] = [f(low), f(high)];
  for (let i = 0; i < 80 && Math.abs(high - low) > 1e-10; i++) {
    const guess = (low * fHigh - high * fLow) / (fHigh - fLow);
    const middle = guess > Math.min(low, high) && guess < Math.max(low, high) ? guess : (low + high) / 2;
    const value = f(middle);
    if (value * fHigh < 0) [low, fLow] = [high, fHigh];
    else fLow /= 2;
    [high, fHigh] = [middle, value];
    if (value === 0) break;
  }
  return high;
}
