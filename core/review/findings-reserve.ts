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
  const hold = system.staticRatio * frictionAt(system, angle);
  const torque = Math.abs(staticTorque(system, angle));
  return hold > 0 ? torque / hold : torque > 0 ? Number.POSITIVE_INFINITY : 0;
}

export interface Reserve {
  /** Least ratio at the two ends of the bolt's play. */
  readonly edge: number;
  /** Least ratio further out, once it has begun to fall again; +∞ where it only rises. */
  readonly elsewhere: number;
  /** Where that is, rad. */
  readonly angle: number;
}

interface Walk {
  least: number;
  angle: number;
}

/** The least ratio on one side beyond where it first falls; stops are ends, not resting places of this kind. */
function beyondTheRise(system: SwingSystem, from: number, sign: number): Walk {
  const step = Math.min(STEP, system.magnets?.fineWidth ?? STEP);
  const end = system.stopAngle;
  const count = Math.max(0, Math.ceil((end - sign * from) / step));
  const found: Walk = { least: Number.POSITIVE_INFINITY, angle: sign * end };
  let before = returnRatio(system, from);
  let pull = staticTorque(system, from);
  let falling = false;
  for (let i = 1; i <= count; i++) {
    const angle = sign * Math.min(end, sign * from + i * step);
    const next = staticTorque(system, angle);
    // Between two places with opposite torques there is one with none.
    const ratio = pull * next < 0 ? 0 : returnRatio(system, angle);
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

/**
 * The reserve of a door about its slot: half-width `capture` about `centre`, rad. `near` is the set around the slot where
 * that reaches out of it: what lies beyond it counts as elsewhere.
 */
export function frictionReserve(
  system: SwingSystem,
  centre: number,
  capture: number,
  near: RestSet = { low: centre, high: centre },
): Reserve {
  const [low, high] = [centre - capture, centre + capture];
  const edge = Math.min(returnRatio(system, low), returnRatio(system, high));
  const sides = [
    beyondTheRise(system, Math.min(low, near.low), -1),
    beyondTheRise(system, Math.max(high, near.high), 1),
  ];
  const [inner, outer] = sides;
  const worse = outer.least <= inner.least ? outer : inner;
  return { edge, elsewhere: worse.least, angle: worse.angle };
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

/** The value nearest `bad` that still passes, by halving; `good` must pass. */
export function narrowed(passes: (value: number) => boolean, good: number, bad: number): number {
  if (passes(bad)) return bad;
  let [pass, fail] = [good, bad];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (pass + fail) / 2;
    if (passes(middle)) pass = middle;
    else fail = middle;
  }
  return pass;
}
