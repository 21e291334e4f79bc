/**
 * How much friction a door stands: at each angle outside the bolt's play, the torque that brings the flap back over the
 * static friction that holds it there. Below 1 the flap can rest there (model page, section 2); 1.4 leaves room for
 * 40 % more friction than the file states.
 */
import type { RestSet } from "../swing/rest.ts";
import type { SwingSystem } from "../swing/system.ts";
import { frictionAt } from "../swing/system.ts";
import { staticTorque } from "../swing/torque.ts";

/** Friction this much above the stated must still let the flap come back: the study's default spread of the hinge, +2σ. */
export const FRICTION_SPREAD = 1.4;
/** Widest spacing of the walk, rad. */
const STEP = 0.005;

/** |τ_0|/(k_s τ_fric) at an angle; +∞ without dry friction unless nothing acts there at all. */
export function returnRatio(system: SwingSystem, angle: number): number {
  return ratioOf(system, angle, staticTorque(system, angle));
}

/** The same where τ_0 is known. */
function ratioOf(system: SwingSystem, angle: number, torque: number): number {
  const hold = system.staticRatio * frictionAt(system, angle);
  const size = Math.abs(torque);
  return hold > 0 ? size / hold : size > 0 ? Number.POSITIVE_INFINITY : 0;
}

export interface Walk {
  /** Least ratio, once it has begun to fall again; +∞ where it only rises. */
  least: number;
  /** Where that is, rad. */
  angle: number;
}

/** The least ratio on one side beyond where it first falls; stops are ends, not resting places of this kind. */
function beyondTheRise(system: SwingSystem, from: number, sign: number): Walk {
  const step = Math.min(STEP, system.magnets?.fineWidth ?? STEP);
  const end = system.stopAngle;
  const count = Math.max(0, Math.ceil((end - sign * from) / step));
  const found: Walk = { least: Number.POSITIVE_INFINITY, angle: sign * end };
  let pull = staticTorque(system, from);
  let before = ratioOf(system, from, pull);
  let falling = false;
  for (let i = 1; i <= count; i++) {
    const angle = sign * Math.min(end, sign * from + i * step);
    const next = staticTorque(system, angle);
    // Between two places with opposite torques there is one with none.
    const ratio = pull * next < 0 ? 0 : ratioOf(system, angle, next);
    falling ||= ratio < before;
    if (falling && ratio < found.least) {
      found.least = ratio;
      found.angle = angle;
    }
    before = ratio;
    pull = next;
  }
  return found;
}

/** The least ratio at the two ends of the bolt's play: half-width `capture` about `centre`, rad. */
export function edgeReserve(system: SwingSystem, centre: number, capture: number): number {
  return Math.min(returnRatio(system, centre - capture), returnRatio(system, centre + capture));
}

/**
 * The reserve beyond the bolt's play. `near` is the set around the slot where that reaches out of it: what lies beyond it
 * counts as elsewhere.
 */
export function reserveElsewhere(
  system: SwingSystem,
  centre: number,
  capture: number,
  near: RestSet = { low: centre, high: centre },
): Walk {
  const inner = beyondTheRise(system, Math.min(centre - capture, near.low), -1);
  const outer = beyondTheRise(system, Math.max(centre + capture, near.high), 1);
  return outer.least <= inner.least ? outer : inner;
}

/**
 * The least half-width about `centre` outside whose ends the flap comes back with `spread` times its friction, rad;
 * `null` where none within the stops does. Walks outwards from `from`.
 */
export function playFor(system: SwingSystem, centre: number, from: number, spread: number): number | null {
  const comesBack = (half: number) =>
    returnRatio(system, centre - half) >= spread && returnRatio(system, centre + half) >= spread;
  const most = system.stopAngle - Math.abs(centre);
  let bad = from;
  for (let good = from; good < most; good += Math.max(STEP / 10, good * 0.05)) {
    if (comesBack(good)) return narrowed(comesBack, good, bad);
    bad = good;
  }
  return null;
}

/** Steps that take a bracket below any drill's or rule's resolution. */
const HALVINGS = 30;

/**
 * The value nearest `bad` that still passes, by halving; `good` must pass. Ends early where both ends are `alike`: rounded to
 * the same figure, say, which is then that of everything between.
 */
export function narrowed(
  passes: (value: number) => boolean,
  good: number,
  bad: number,
  alike: (pass: number, fail: number) => boolean = () => false,
): number {
  if (passes(bad)) return bad;
  let [pass, fail] = [good, bad];
  for (let i = 0; i < HALVINGS && !alike(pass, fail); i++) {
    const middle = (pass + fail) / 2;
    if (passes(middle)) pass = middle;
    else fail = middle;
  }
  return pass;
}
