/** Changes to the hold, to what damps the swing, and to the bolt. */

import { setValue } from "../door/path.ts";
import { STANDARD_GRAVITY } from "../parts/flap.ts";
import { holdNeeded } from "../passage/passage.ts";
import { preferredAbove } from "../quantity/preferred.ts";
import { Motion } from "../swing/motion.ts";
import { laterSwing, SwingRun } from "../swing/swing.ts";
import { isSymmetric, swingSystem } from "../swing/system.ts";
import { Trace } from "../swing/trace.ts";
import type { Computed } from "./compute.ts";
import { LEAST_SPRING_RATIO, STROKE_RESERVE } from "./findings-hold.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { entry } from "./suggest-round.ts";
import { partsName, timerParts } from "./suggest-timer.ts";
import { entryText, type Words } from "./words.ts";

/** What the timer is to be set to, s: the review's setting, or what keeps the bolt from under the animal where no hold settles. */
function wantedHold(computed: Computed): number | null {
  const { hold, timer, governing, door } = computed;
  if (hold === null || timer === null || !(timer.shortest > 0)) return null;
  if (hold.setting !== null) return hold.setting;
  const { letGoTime, lastPulse } = governing.passage;
  const late = letGoTime - (door.timer?.retriggers ? lastPulse : 0);
  return ((1 + door.study.margin) * late * timer.nominal) / timer.shortest;
}

export function holdSetting(computed: Computed, words: Words): readonly Candidate[] {
  const wanted = wantedHold(computed);
  const { timer } = computed.door;
  if (wanted === null || timer === null) return [];
  const edit = entry("timer.holdTime", wanted, "up", words.system);
  if (timer.resistor === null) return [{ label: `Set the hold to ${edit.text}`, edits: [edit] }];
  const rounded = Number.parseFloat(edit.text);
  const choice = timerParts(computed, rounded);
  if (choice === null) return [];
  const { parts } = choice;
  const edits = [
    edit,
    {
      path: "timer.resistor",
      text: entryText("timer.resistor", parts.resistor + parts.trimmerSetting, words.system),
    },
    { path: "timer.capacitor", text: entryText("timer.capacitor", parts.capacitor, words.system) },
  ];
  return [{ label: `Build the timer for ${edit.text} (${partsName(parts, words)})`, edits }];
}

/** Dampers tried, as parts of what would damp the flap critically at small angles under gravity: rising, six a decade (E6). */
const LEAST_DAMPING = 0.004;
const MOST_DAMPING = 2;
const MOST_TRIED = 16;

/** Whether the shortest hold has its margin over the need with a number of the equation of motion changed: one swing. */
function holdsWith(computed: Computed, path: string, value: number, run: SwingRun): boolean {
  const { door, body, centring, latch, governing, timer } = computed;
  const set = setValue(door, path, value);
  if (!set.ok || latch === null || timer === null) return false;
  const capture = { centre: latch.centre, half: latch.capture };
  const system = swingSystem(set.door, body, centring?.table ?? null, capture);
  const { angle, speed } = governing.release;
  const { settleTime } = laterSwing(run, system, angle, speed, isSymmetric(system));
  const { pulseInterval } = door.detection;
  const need = holdNeeded(governing.passage, settleTime, door.timer?.retriggers ?? true, pulseInterval);
  return need !== null && timer.shortest >= (1 + door.study.margin) * need;
}

/** Values past the found one that are offered too, should a trial of the whole door tell against it. */
const SPARE = 2;

/** The least of rising values that hold, by halving (more damping settles sooner, up to critical), and the next ones. */
function fromFirstThatHolds(computed: Computed, path: string, values: readonly number[]): readonly number[] {
  const run = new SwingRun(new Motion(), new Trace());
  let [low, high] = [0, values.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holdsWith(computed, path, values[middle], run)) high = middle;
    else low = middle + 1;
  }
  return values.slice(low, low + 1 + SPARE);
}

/** The weakest damper with which the present timer is long enough. */
export function damper(computed: Computed, words: Words): readonly Candidate[] {
  if (computed.restsOutside.length > 0) return [];
  const { inertia, weightMoment } = computed.system;
  const critical = 2 * Math.sqrt(inertia * weightMoment);
  const present = computed.door.damper.coefficient;
  const values: number[] = [];
  let next = Math.max(present, LEAST_DAMPING * critical);
  while (values.length < MOST_TRIED && next < MOST_DAMPING * critical) {
    values.push(preferredAbove(next, "E6"));
    next = 1.2 * values[values.length - 1];
  }
  return fromFirstThatHolds(computed, "damper.coefficient", values).map((value) => {
    const edit = entry("damper.coefficient", value, "up", words.system);
    return { label: `Damp the flap with ${edit.text}`, edits: [edit] };
  });
}

/** Factors of the present friction to try. */
const STIFFER = [1.25, 1.5, 2, 2.5, 3, 4, 5];

/** A hinge that rubs more settles sooner, as long as it still lets the flap come back. */
export function moreFriction(computed: Computed, words: Words): readonly Candidate[] {
  const present = computed.door.hinge.frictionTorque;
  if (present === 0 || computed.restsOutside.length > 0) return [];
  const values = STIFFER.map((factor) => factor * present);
  return fromFirstThatHolds(computed, "hinge.frictionTorque", values).map((value) => {
    const edit = entry("hinge.frictionTorque", value, "up", words.system);
    return { label: `Take a hinge that rubs with ${edit.text}`, edits: [edit] };
  });
}

export function retriggering(): readonly Candidate[] {
  return [
    {
      label: "Take a timer that each pulse starts anew",
      edits: [{ path: "timer.retriggers", text: "true" }],
    },
  ];
}

export function strongerSpring(computed: Computed, words: Words): readonly Candidate[] {
  const { latch } = computed.door;
  if (latch === null) return [];
  const edit = entry(
    "latch.springForce",
    LEAST_SPRING_RATIO * latch.boltMass * STANDARD_GRAVITY,
    "up",
    words.system,
  );
  return [{ label: `Take a spring of ${edit.text}`, edits: [edit] }];
}

export function smallerTipGap(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, solenoid } = computed.door;
  if (latch === null || solenoid === null) return [];
  const gap = solenoid.stroke - latch.engagement - STROKE_RESERVE;
  if (gap < 0) return [];
  const edit = entry("latch.tipGap", gap, "down", words.system);
  return [{ label: `Bring the bolt's tip to ${edit.text} from the slot`, edits: [edit] }];
}

export function longerStroke(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, solenoid } = computed.door;
  if (latch === null || solenoid === null) return [];
  const edit = entry("solenoid.stroke", latch.tipGap + latch.engagement + STROKE_RESERVE, "up", words.system);
  return [{ label: `Let the bolt out by ${edit.text}`, edits: [edit] }];
}
