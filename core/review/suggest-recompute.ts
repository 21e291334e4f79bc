/** A door computed anew after an edit, with all of the old swing where the edit does not touch what moves the flap. */
import type { Door } from "../door/door.ts";
import { latchMechanics } from "../parts/latch.ts";
import { holdResult } from "../passage/passage.ts";
import type { SwingRun } from "../swing/swing.ts";
import { type Computed, computeElectrics, relatchAt } from "./compute.ts";
import { computeLazily } from "./lazy.ts";

/** Sections that the swing, its rest sets, the passage and the push are made of. */
const MOVING = [
  "animals",
  "opening",
  "flap",
  "hinge",
  "seal",
  "damper",
  "air",
  "magnets",
  "detection",
  "release",
  "study",
] as const;
/** What of the latch the swing is judged by. */
const SLOT = ["slotWidth", "boltWidth", "distanceFromHinge", "offset", "edgeHalfWidth"] as const;

/** Whether two doors swing alike. Sections an edit did not touch are the very same objects. */
function swingsAlike(a: Door, b: Door): boolean {
  const latch = a.latch === b.latch || SLOT.every((k) => a.latch?.[k] === b.latch?.[k]);
  const retriggers = (a.timer?.retriggers ?? true) === (b.timer?.retriggers ?? true);
  return latch && retriggers && MOVING.every((key) => a[key] === b[key]);
}

/**
 * `compute(door)` by way of a door computed before that has the same sections, some of them edited. Each part is worked
 * out when it is first read, in the run's workspace: read what is needed before the next door is computed in it.
 */
export function recompute(door: Door, known: Computed, run: SwingRun): Computed {
  return swingsAlike(door, known.door) ? sameSwing(door, known) : computeLazily(door, known, run);
}

function sameSwing(door: Door, known: Computed): Computed {
  const electrics = computeElectrics(door);
  const latch = door.latch === null ? null : latchMechanics(door.latch);
  const { governing, restsOutside, system, centring, body, trace } = known;
  const retriggers = door.timer?.retriggers ?? true;
  const timer = electrics.timer === null ? null : { ...electrics.timer, retriggers };
  const settle = restsOutside.length > 0 ? null : governing.swing.settleTime;
  const { detection, study } = door;
  const hold =
    timer === null
      ? null
      : holdResult(governing.passage, settle, timer, detection.pulseInterval, study.margin);
  const parts = { body, centring, latch, system };
  const relatch =
    timer === null ? null : relatchAt(door, parts, governing, trace, timer.nominal, electrics.solenoid);
  return { ...known, door, latch, ...electrics, hold, relatch };
}
