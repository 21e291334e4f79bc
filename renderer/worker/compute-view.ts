/** A door file's text to the view the page shows: core's functions put together, nothing worked out here. */
import { type Door, type DoorFault, readDoor } from "../../core/door/index.ts";
import { outcomeStretches } from "../../core/passage/outcomes.ts";
import { holdStart } from "../../core/passage/passage.ts";
import { type ReplaySource, replay } from "../../core/passage/replay.ts";
import { type Computed, compute, relatchAt } from "../../core/review/compute.ts";
import type { Finding } from "../../core/review/finding.ts";
import { findings, judgements, worstFirst } from "../../core/review/findings.ts";
import { resultValues } from "../../core/review/results.ts";
import { words } from "../../core/review/words.ts";
import { ledgerSeries } from "../../core/swing/ledger-series.ts";
import { torqueCurve } from "../../core/swing/torque-curve.ts";
import { sampleTrace } from "../../core/swing/trace.ts";
import type { DoorView, HoldView, UnitSystem } from "../state/view.ts";

/** Between two pictures of the film, s, and the most samples a column has. */
const INTERVAL = 1 / 240;
const MOST_SAMPLES = 24_000;
/** Between two holds tried for the outcome, s. */
const OUTCOME_STEP = 0.02;
const MOST_OUTCOMES = 1500;

/** What does not change while only the hold is tried. */
export interface Prepared {
  readonly text: string;
  readonly units: UnitSystem;
  readonly door: Door;
  readonly computed: Computed;
  readonly fixed: Pick<DoorView, "geometry" | "results" | "findings" | "swing" | "torques" | "outcomes">;
}

export type Preparation =
  | { readonly ok: true; readonly prepared: Prepared }
  | { readonly ok: false; readonly faults: readonly DoorFault[] };

/** Reads and computes a door; magnets like those of the door before need no new table. */
export function prepare(text: string, units: UnitSystem, before: Prepared | null = null): Preparation {
  const read = readDoor(text);
  if (!read.ok) return { ok: false, faults: read.errors };
  const door = before === null ? read.door : sharingMagnets(read.door, before.door);
  const computed = compute(door, before?.computed ?? null);
  const fixed = {
    geometry: geometryOf(computed),
    results: resultValues(computed),
    findings: verdicts(computed, units),
    swing: swingOf(computed),
    torques: torqueCurve(computed.system),
    outcomes: outcomesOf(computed),
  };
  return { ok: true, prepared: { text, units, door, computed, fixed } };
}

/** The view of a prepared door at a hold, s; `null` is the timer's own. */
export function viewAt(
  { text, door, computed, fixed }: Prepared,
  hold: number | null,
  serial: number,
): DoorView {
  const { governing, trace, solenoid, timer } = computed;
  const shown = timer === null ? null : (hold ?? timer.nominal);
  const relatch = shown === null ? null : relatchAt(door, computed, governing, trace, shown, solenoid);
  const film = replay(filmSource(computed), shown, intervalFor(governing.passage.letGoTime + trace.endTime));
  return {
    serial,
    text,
    door,
    ...fixed,
    replay: film,
    hold: shown === null ? null : holdOf(computed, shown),
    relatch,
  };
}

/** The findings with their computed ways out, worst first: many doors are tried, so this takes its time. */
export function advise({ computed, units }: Prepared): readonly Finding[] {
  return worstFirst(findings(computed, words(units)));
}

/** The findings without ways out, worst first: what can be said at once. */
function verdicts(computed: Computed, units: UnitSystem): readonly Finding[] {
  const all = [...judgements(computed, words(units))].map(
    ([rule, { status, says, advice, alsoNames = [] }]) => ({
      id: rule.id,
      part: rule.part,
      status,
      message: status === "ok" || advice === undefined ? `${says}.` : `${says}; ${advice}.`,
      results: [...rule.results, ...alsoNames],
      suggestions: [],
    }),
  );
  return worstFirst(all);
}

/** Equal magnets as the very same object, by which `compute` knows them again. */
function sharingMagnets(door: Door, before: Door): Door {
  const same = JSON.stringify(door.magnets) === JSON.stringify(before.magnets);
  return same ? { ...door, magnets: before.magnets } : door;
}

function intervalFor(length: number): number {
  return Math.max(INTERVAL, length / MOST_SAMPLES);
}

function geometryOf(computed: Computed): DoorView["geometry"] {
  const { latch, body } = computed;
  return {
    hingeHeight: computed.hingeHeight,
    reach: body.reach,
    slotAngle: latch?.centre ?? 0,
    captureAngle: latch?.capture ?? null,
    blockAngle: latch?.block ?? null,
    animal: computed.crossings.indexOf(computed.governing),
  };
}

function swingOf({ system, trace, governing }: Computed): DoorView["swing"] {
  const { releaseAngle, releaseSpeed } = governing.swing;
  const sampled = sampleTrace(trace, system, trace.endTime, intervalFor(trace.endTime));
  return { ...sampled, energy: ledgerSeries(system, releaseAngle, releaseSpeed, sampled.time) };
}

function outcomesOf(computed: Computed): DoorView["outcomes"] {
  const { latch, governing, system, trace, solenoid, door, timer } = computed;
  if (latch === null) return [];
  const retriggers = door.timer?.retriggers ?? true;
  const { passage } = governing;
  const untilRest = passage.letGoTime - holdStart(passage, retriggers) + trace.endTime;
  const longest = Math.max(untilRest, computed.hold?.setting ?? 0, timer?.longest ?? 0) * 1.25;
  const source = { passage, system, trace, latch, retriggers, releaseTime: solenoid?.bolt?.releaseTime ?? 0 };
  return outcomeStretches(source, longest, Math.max(OUTCOME_STEP, longest / MOST_OUTCOMES));
}

function holdOf(computed: Computed, shown: number): HoldView | null {
  const { timer, hold, governing, latch, solenoid, door } = computed;
  if (timer === null) return null;
  return {
    start: holdStart(governing.passage, door.timer?.retriggers ?? true),
    shown,
    nominal: timer.nominal,
    shortest: timer.shortest,
    longest: timer.longest,
    need: hold?.need ?? null,
    required: hold?.required ?? null,
    setting: hold?.setting ?? null,
    lag: (solenoid?.bolt?.releaseTime ?? 0) + (latch?.toMouth ?? 0),
  };
}

function filmSource(computed: Computed): ReplaySource {
  const { door, governing, system, trace, latch, solenoid, hingeHeight } = computed;
  const { animal, passage, swing } = governing;
  return {
    door,
    passage,
    walkingSpeed: animal.speed,
    pushLever: hingeHeight - animal.pushHeight,
    releaseAngle: swing.releaseAngle,
    settleTime: swing.settleTime,
    restTime: swing.restTime,
    system,
    trace,
    latch,
    releaseTime: solenoid?.bolt?.releaseTime ?? 0,
    pullInTime: solenoid?.bolt?.pullIn.time ?? null,
  };
}
