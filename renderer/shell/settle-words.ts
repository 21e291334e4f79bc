/** What the study says of its animals, for the eye: a settle time with its error, a hold or why there is none. */
import type { HoldAnswer, HoldStudy } from "../../core/study/hold-study.ts";
import { seconds } from "../../core/study/study-words.ts";

export interface SettleWords {
  readonly time: string;
  readonly error: string;
}

/** An error is told to a hundredth of a second, upwards; `null` is never, or no error to tell. */
export function settleWords(time: number | null, error: number | null): SettleWords {
  if (time === null) return { time: "never", error: "" };
  if (error === null) return { time: `${time.toFixed(2)} s`, error: "" };
  return { time: time.toFixed(2), error: `± ${(Math.ceil(100 * error - 1e-9) / 100).toFixed(2)} s` };
}

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
