/** What becomes of the bolt, in words, signs and patterns: never by colour alone. */
import type { Outcome } from "../../core/passage/relatch.ts";
import type { DoorView, OutcomeStretch, RelatchView } from "../state/view.ts";
import { decimalsOf } from "./time-axis.ts";

export interface OutcomeLook {
  readonly outcome: Outcome;
  /** For class names and pattern ids. */
  readonly id: string;
  readonly word: string;
  /** What it means for door and animal. */
  readonly meaning: string;
}

export const OUTCOMES: Readonly<Record<Outcome, OutcomeLook>> = {
  caught: { outcome: "caught", id: "caught", word: "Caught", meaning: "the bolt finds its slot" },
  stuck: {
    outcome: "stuck",
    id: "stuck",
    word: "Stuck",
    meaning: "the bolt rides on the flap’s edge and stays there: unlatched",
  },
  "shut out": {
    outcome: "shut out",
    id: "shut-out",
    word: "Shut out",
    meaning: "the bolt comes up beside the flap, which stays ajar",
  },
  "under the animal": {
    outcome: "under the animal",
    id: "under",
    word: "Under the animal",
    meaning: "the bolt rises before the flap is let go",
  },
};

/** Caught by a hold that ends before the flap has settled: this time, by where the flap happened to be. */
export const PASSING: OutcomeLook = {
  outcome: "caught",
  id: "passing",
  word: "Caught in passing",
  meaning: "the bolt finds its slot while the flap still swings: not to be relied on",
};
/** The same where no hold is sure, since the flap can come to rest outside. */
const THIS_TIME: OutcomeLook = { ...PASSING, word: "Caught this time" };

/** How the outcome of a hold, s, is shown; `null` without a latch. */
export function lookAt({ outcomes, hold: timer }: DoorView, hold: number): OutcomeLook | null {
  const outcome = outcomeAt(outcomes, hold);
  if (outcome === null) return null;
  return outcome === "caught" ? caughtLook(timer?.need ?? null, hold) : OUTCOMES[outcome];
}

function caughtLook(need: number | null, hold: number): OutcomeLook {
  if (need === null) return THIS_TIME;
  return hold < need ? PASSING : OUTCOMES.caught;
}

export interface LookStretch {
  readonly from: number;
  readonly to: number;
  readonly look: OutcomeLook;
}

/** The stretches of one look: those that are caught are parted where the flap has settled, `need` s after the hold's start. */
export function lookStretches(outcomes: readonly OutcomeStretch[], need: number | null): LookStretch[] {
  return outcomes.flatMap(({ from, to, outcome }) => {
    if (outcome !== "caught") return [{ from, to, look: OUTCOMES[outcome] }];
    const parts = need !== null && from < need && need < to ? [from, need, to] : [from, to];
    return parts.slice(1).map((end, i) => ({ from: parts[i], to: end, look: caughtLook(need, parts[i]) }));
  });
}

/** The outcome of a hold, s; the last stretch's beyond the end, `null` without a latch. */
export function outcomeAt(stretches: readonly OutcomeStretch[], hold: number): Outcome | null {
  const found = stretches.find(({ to }) => hold < to) ?? stretches[stretches.length - 1];
  return found?.outcome ?? null;
}

/** The least hold from which on every longer one is caught, s; `null` where the last stretch is not. */
export function caughtFrom(stretches: readonly OutcomeStretch[]): number | null {
  const last = stretches[stretches.length - 1];
  return last?.outcome === "caught" ? last.from : null;
}

/** Seconds for a person, with as many places as the step they move by, at least one. */
export function seconds(value: number, step = 0.1): string {
  return `${value.toFixed(Math.max(1, decimalsOf(step)))} s`;
}

/** "3.2 s after let-go", "0.4 s before let-go". */
export function aroundLetGo(time: number): string {
  return time < 0 ? `${seconds(-time)} before let-go` : `${seconds(time)} after let-go`;
}

/** The relatch computed for this very hold, else `null`: its answer is still on the way. */
export function relatchFor(view: DoorView, hold: number): RelatchView | null {
  return view.hold !== null && Math.abs(view.hold.shown - hold) < 1e-9 ? view.relatch : null;
}

/** What a hold leads to, for the hold's slider: "12.5 s: caught 3.2 s after let-go". */
export function holdText(view: DoorView, hold: number, step: number): string {
  const look = lookAt(view, hold);
  const relatch = relatchFor(view, hold);
  const value = seconds(hold, step);
  if (look === null || view.hold === null) return value;
  const { outcome } = look;
  const word = look.word.toLowerCase();
  if (relatch !== null && relatch.outcome === outcome && outcome !== "under the animal") {
    return `${value}: ${word} ${aroundLetGo(relatch.time)}`;
  }
  const ends = view.hold.start + hold - view.replay.marks.letGo;
  return `${value}: ${word}, the hold ends ${aroundLetGo(ends)}`;
}

/** Whether the bolt rode on the flap's edge before it was caught. */
export function rodeFirst(view: DoorView, relatch: RelatchView): boolean {
  const rise = view.results["latch.boltRiseTime"]?.value ?? null;
  const release = view.results["solenoid.releaseTime"]?.value ?? 0;
  if (relatch.outcome !== "caught" || rise === null) return false;
  return relatch.time > relatch.holdEnds + release + rise + 1e-6;
}

/** Kinetic energy of the flap from which a catch is worth a word, J: a tenth of a millijoule (assumption). */
const FLICK = 1e-4;

/** One sentence on a hold's end. */
export function outcomeSentence(view: DoorView, hold: number): string {
  const look = lookAt(view, hold);
  if (look === null || view.hold === null) return "";
  const { outcome, meaning } = look;
  const relatch = relatchFor(view, hold);
  const ends = aroundLetGo(view.hold.start + hold - view.replay.marks.letGo);
  if (relatch === null || relatch.outcome !== outcome || outcome === "under the animal") {
    return `hold ends ${ends}; ${meaning}`;
  }
  const when = aroundLetGo(relatch.time);
  if (outcome !== "caught") return `${when}; ${meaning}`;
  const rode = rodeFirst(view, relatch) ? ", after riding on the edge" : "";
  const speed = relatch.energy > FLICK ? `; the bolt takes ${millijoules(relatch.energy)}` : "";
  return `${when}${rode}${speed}`;
}

function millijoules(energy: number): string {
  const value = energy * 1000;
  return `${value < 1 ? value.toFixed(2) : value.toFixed(1)} mJ`;
}
