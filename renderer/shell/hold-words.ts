/** What the study says of an animal's hold, for the eye: it, or why there is none. */
import type { HoldAnswer, HoldStudy } from "../../core/study/hold-study.ts";
import { seconds } from "../../core/study/study-words.ts";

/** The recommended hold; why there is none in three words, as the study says in a sentence (core/study/study-words.ts). */
export function holdWords(
  { recommended, samples, curve }: Pick<HoldAnswer, "recommended" | "samples" | "curve">,
  { samplesNeeded, reliability }: Pick<HoldStudy, "samplesNeeded" | "reliability">,
): string {
  if (recommended !== null) return seconds(recommended);
  if (samples < samplesNeeded) return "too few tried";
  const atLongest = curve.at(-1)?.[1] ?? 0;
  return atLongest > reliability ? "not shown yet" : "none will do";
}
