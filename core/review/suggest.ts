/**
 * Ways out of a finding that is not ok: each is solved for, rounded to what a builder can do, and then tried: the door is
 * computed anew with the edits made, and what does not turn the finding ok, or makes another one fail, is dropped.
 *
 * Levels: `suggest-round`, `suggest-apply` (an edit) · `suggest-fit`, `-clearance`, `-swing`, `-hold`, `-coil`, `-supply` (what to try) ·
 * `suggest-cost` (what it costs) · here (the trying).
 */
import type { Computed } from "./compute.ts";
import type { DoorEdit, Suggestion } from "./finding.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { swingRun } from "./lazy.ts";
import { applyEdits } from "./suggest-apply.ts";
import { costOf } from "./suggest-cost.ts";
import { holdSetting } from "./suggest-hold.ts";
import { recompute } from "./suggest-recompute.ts";
import { type Candidate, REMEDIES, type Remedy, type RemedyName } from "./suggest-remedies.ts";
import type { Words } from "./words.ts";

type Verdicts = ReadonlyMap<Rule, Verdict>;
type Judge = (computed: Computed, words: Words) => Verdicts;

/** Most suggestions shown with one finding. */
const MOST_SHOWN = 2;
/** Most doors computed anew for one review: bounds the work whatever the door. */
const MOST_TRIALS = 60;

interface Trial {
  readonly computed: Computed;
  /** Worked out once the rule that asked is ok: most trials end before. */
  verdicts: Verdicts | null;
}

/** One review's trials, each edit tried once. */
export interface Bench {
  readonly computed: Computed;
  readonly words: Words;
  readonly before: Verdicts;
  readonly judge: Judge;
  readonly trials: Map<string, Trial | null>;
  readonly candidates: Map<RemedyName, readonly Candidate[]>;
}

export function newBench(computed: Computed, words: Words, judge: Judge, before: Verdicts): Bench {
  return { computed, words, before, judge, trials: new Map(), candidates: new Map() };
}

/** The suggestions that pass for a rule that is not ok, in the rule's order. */
export function suggestionsFor(rule: Rule, bench: Bench): readonly Suggestion[] {
  const found: Suggestion[] = [];
  for (const name of rule.remedies ?? []) {
    if (found.length === MOST_SHOWN) break;
    for (const candidate of candidatesOf(name, rule, bench)) {
      const suggestion = tried(rule, candidate, bench);
      if (suggestion === null) continue;
      found.push(suggestion);
      break;
    }
  }
  return found;
}

/** A remedy that does not look at the rule gives every rule the same. */
function candidatesOf(name: RemedyName, rule: Rule, bench: Bench): readonly Candidate[] {
  const remedy: Remedy = REMEDIES[name];
  const known = remedy.length < 3 ? bench.candidates.get(name) : undefined;
  const candidates = known ?? remedy(bench.computed, bench.words, rule);
  bench.candidates.set(name, candidates);
  return candidates;
}

/** A change that only leaves the hold too short is offered together with the hold it needs. */
function tried(rule: Rule, candidate: Candidate, bench: Bench): Suggestion | null {
  const trial = passing(rule, candidate, bench);
  if (trial === null) return null;
  const fails = newlyFailing(bench.before, trial.verdicts);
  if (fails.length === 0) return { ...candidate, cost: costOf(bench, trial) };
  const [hold] = fails.every(ofHold) ? holdSetting(trial.computed, bench.words) : [];
  if (hold === undefined) return null;
  const both = {
    label: `${candidate.label} and ${hold.label[0].toLowerCase()}${hold.label.slice(1)}`,
    edits: [...candidate.edits, ...hold.edits],
  };
  const again = passing(rule, both, bench);
  if (again === null || newlyFailing(bench.before, again.verdicts).length > 0) return null;
  return { ...both, cost: costOf(bench, again) };
}

interface Judged {
  readonly computed: Computed;
  readonly verdicts: Verdicts;
}

/** The door with the change, where that turns the rule ok. */
function passing(rule: Rule, { edits }: Candidate, bench: Bench): Judged | null {
  const trial = trialOf(edits, bench);
  if (trial === null || rule.judge(trial.computed, bench.words)?.status !== "ok") return null;
  trial.verdicts ??= bench.judge(trial.computed, bench.words);
  return { computed: trial.computed, verdicts: trial.verdicts };
}

function trialOf(edits: readonly DoorEdit[], bench: Bench): Trial | null {
  const name = JSON.stringify(edits);
  const known = bench.trials.get(name);
  if (known !== undefined) return known;
  const door = bench.trials.size < MOST_TRIALS ? applyEdits(bench.computed.door, edits) : null;
  // Each trial has a run of its own: a trial may be asked again by another rule after others were made.
  const trial =
    door === null ? null : { computed: recompute(door, bench.computed, swingRun()), verdicts: null };
  bench.trials.set(name, trial);
  return trial;
}

/** Rules that fail now and did not. A hold that was already wrong may stay so another way: it is set last, once the swing is right. */
function newlyFailing(before: Verdicts, after: Verdicts): readonly Rule[] {
  const fails = (all: Verdicts, rule: Rule) => all.get(rule)?.status === "fail";
  const holdFails = [...before.keys()].some((rule) => ofHold(rule) && fails(before, rule));
  return [...after.keys()].filter(
    (rule) => fails(after, rule) && !fails(before, rule) && !(holdFails && ofHold(rule)),
  );
}

function ofHold(rule: Rule): boolean {
  return rule.id.startsWith("hold.");
}
