/** What a rule of the review is: one concern, judged on a computed door. */
import type { Computed, Crossing } from "./compute.ts";
import type { FindingStatus, PartName } from "./finding.ts";
import type { RemedyName } from "./suggest-remedies.ts";
import type { Words } from "./words.ts";

/** What a rule says about one door. */
export interface Verdict {
  readonly status: FindingStatus;
  /** The sentence with its figures, no full stop. */
  readonly says: string;
  /** What to change, where no computed suggestion passes; no full stop. */
  readonly advice?: string;
  /** Results that do not exist for this door for the reason the sentence gives, beside the rule's own. */
  readonly alsoNames?: readonly string[];
}

export interface Rule {
  /** Stable: scripts and the app know a finding by it. Room, dot, concern in kebab case. */
  readonly id: string;
  readonly part: PartName;
  /** The concern in a few words. */
  readonly concern: string;
  /** Results the verdict rests on. */
  readonly results: readonly string[];
  /** `null` where the door has nothing to judge here. */
  readonly judge: (computed: Computed, words: Words) => Verdict | null;
  /** Ways out to try where the verdict is not ok, likeliest first. */
  readonly remedies?: readonly RemedyName[];
}

/** A limit is called near from this part of it on (assumption). */
export const NEAR = 0.9;

/** Lengths closer than this are equal, m: inches and millimetres of one drawing. */
export const SAME_LENGTH = 1e-9;

/** ok up to near the limit, caution up to it, fail above. */
export function againstLimit(value: number, limit: number): FindingStatus {
  if (value > limit) return "fail";
  return value > NEAR * limit ? "caution" : "ok";
}

/** The crossing with the greatest value of a figure; the first of equals. */
export function worstCrossing(computed: Computed, figure: (crossing: Crossing) => number): Crossing {
  return computed.crossings.reduce((worst, one) => (figure(one) > figure(worst) ? one : worst));
}

/** No hold is sure: what then does not exist. */
export const NO_HOLD = ["hold.required", "hold.setting"] as const;
