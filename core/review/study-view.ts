/** The review as maps and searches take it: doors computed lazily in one workspace, figures by name, concerns by id. */
import type { Door } from "../door/door.ts";
import type { Computed, Known } from "./compute.ts";
import { FINDING_RULES } from "./findings.ts";
import type { Verdict } from "./findings-rule.ts";
import { computeLazily, swingRun } from "./lazy.ts";
import type { ResultDefinition } from "./result.ts";
import { RESULTS } from "./results.ts";
import type { Words } from "./words.ts";

export interface StudyView {
  readonly compute: (door: Door, known: Known | null) => Computed;
  readonly figures: readonly ResultDefinition[];
  readonly concerns: readonly {
    readonly id: string;
    readonly concern: string;
    readonly judge: (computed: Computed) => Verdict | null;
  }[];
}

/** A view with a workspace of its own: what a computed door tells is read before the next is computed. One per worker. */
export function studyView(words: Words): StudyView {
  const run = swingRun();
  return {
    compute: (door, known) => computeLazily(door, known, run),
    figures: RESULTS,
    concerns: FINDING_RULES.map(({ id, concern, judge }) => ({
      id,
      concern,
      judge: (computed) => judge(computed, words),
    })),
  };
}
