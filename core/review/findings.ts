/**
 * The verdicts of a review, one per concern, each a plain sentence with its figures.
 *
 * Levels: `findings-rule` (what a rule is) · `findings-fit`, `-clearance`, `-swing`, `-hold`, `-coil`, `-supply`, `-care` (the rules) ·
 * `suggest` (what would pass, worked out and tried) · here (all of them together, in order).
 *
 * The ids are `FINDING_RULES` in the order of the list; nothing else names them.
 */
import { counted } from "../quantity/format.ts";
import type { Computed } from "./compute.ts";
import type { Finding, FindingStatus, Suggestion } from "./finding.ts";
import { CARE_RULES } from "./findings-care.ts";
import { CLEARANCE_RULES } from "./findings-clearance.ts";
import { COIL_RULES } from "./findings-coil.ts";
import { FIT_RULES } from "./findings-fit.ts";
import { HOLD_RULES } from "./findings-hold.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { SUPPLY_RULES } from "./findings-supply.ts";
import { SWING_RULES } from "./findings-swing.ts";
import { newBench, suggestionsFor } from "./suggest.ts";
import { listed, type Words } from "./words.ts";

export const FINDING_RULES: readonly Rule[] = [
  ...FIT_RULES,
  ...CLEARANCE_RULES,
  ...SWING_RULES,
  ...HOLD_RULES,
  ...COIL_RULES,
  ...SUPPLY_RULES,
  ...CARE_RULES,
];

/** Every verdict on a computed door, in the rules' order, with no suggestions worked out: what a suggestion is tried by. */
export function judgements(computed: Computed, words: Words): ReadonlyMap<Rule, Verdict> {
  const all = new Map<Rule, Verdict>();
  for (const rule of FINDING_RULES) {
    const verdict = rule.judge(computed, words);
    if (verdict !== null) all.set(rule, verdict);
  }
  return all;
}

/** Every finding of a door, in the rules' order; suggestions are worked out for those that are not ok. */
export function findings(computed: Computed, words: Words): readonly Finding[] {
  const all = judgements(computed, words);
  const bench = newBench(computed, words, judgements, all);
  return [...all].map(([rule, verdict]) =>
    finding(rule, verdict, verdict.status === "ok" ? [] : suggestionsFor(rule, bench)),
  );
}

/** The same without the work of suggestions: for a view that must follow the hand. */
export function findingsAtOnce(computed: Computed, words: Words): readonly Finding[] {
  return [...judgements(computed, words)].map(([rule, verdict]) => finding(rule, verdict, []));
}

function finding(rule: Rule, verdict: Verdict, suggestions: readonly Suggestion[]): Finding {
  const results = [...new Set([...rule.results, ...(verdict.alsoNames ?? [])])];
  const message = sentence(verdict, suggestions);
  return { id: rule.id, part: rule.part, status: verdict.status, message, results, suggestions };
}

/** "What is the case: what to change, or what else." */
function sentence(verdict: Verdict, suggestions: readonly Suggestion[]): string {
  if (verdict.status === "ok") return `${verdict.says}.`;
  const ways = suggestions.map(({ label }) => label[0].toLowerCase() + label.slice(1));
  const change = ways.length > 0 ? listed(ways, "or") : verdict.advice;
  return change === undefined ? `${verdict.says}.` : `${verdict.says}; ${change}.`;
}

const SEVERITY: Readonly<Record<FindingStatus, number>> = { fail: 0, caution: 1, ok: 2 };

/** The findings with the worst first, otherwise in their order. */
export function worstFirst(all: readonly Finding[]): readonly Finding[] {
  return [...all].sort((a, b) => SEVERITY[a.status] - SEVERITY[b.status]);
}

/** One sentence for the whole door. */
export function verdict(all: readonly Finding[], computed: Computed, words: Words): string {
  const count = (status: FindingStatus) => all.filter((one) => one.status === status).length;
  const fails = count("fail");
  const cautions = count("caution");
  const read = cautions === 0 ? "" : `; ${counted(cautions, "caution")} to read`;
  if (fails > 0) {
    const [first] = worstFirst(all);
    return `Not ready: ${counted(fails, "finding")} ${fails === 1 ? "fails" : "fail"}${read}. First: ${first.message}`;
  }
  const { hold, timer, governing } = computed;
  const settle = governing.swing.settleTime;
  if (hold === null || hold.setting === null || timer === null || settle === null) {
    return `Nothing fails in what the file describes${read}.`;
  }
  return `This door works: the flap settles in ${words.time(settle)}, ${words.time(hold.setting)} is the hold to set and the timer has ${words.time(timer.nominal)}${read}.`;
}
