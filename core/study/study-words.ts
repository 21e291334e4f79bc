/** What a study says in sentences: why no hold will do, and what its probability means. */
import type { Door } from "../door/door.ts";
import { counted } from "../quantity/format.ts";
import { lowerBound, samplesNeeded } from "./binomial.ts";
import type { AnimalAnswer, HoldAnswer } from "./hold-study.ts";
import { CAUSES, type Cause } from "./tally.ts";

/** 99.9 %, 93.2 %, 0.004 %: no digit that says nothing, none lost near 100 %. */
export function percent(share: number): string {
  const size = 100 * share;
  const fromEnd = Math.min(size, 100 - size);
  const digits = fromEnd <= 0 ? 0 : Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(fromEnd))));
  return `${Number(size.toFixed(digits))} %`;
}

/** Seconds to a hundredth. */
export function seconds(time: number): string {
  return `${Number(time.toFixed(2))} s`;
}

export interface SettleWords {
  readonly time: string;
  readonly error: string;
}

/** A settle time and its error, s: the error to a hundredth of a second, upwards; `null` is never, or no error to tell. */
export function settleWords(time: number | null, error: number | null): SettleWords {
  if (time === null) return { time: "never", error: "" };
  if (error === null) return { time: `${time.toFixed(2)} s`, error: "" };
  return { time: time.toFixed(2), error: `± ${(Math.ceil(100 * error - 1e-9) / 100).toFixed(2)} s` };
}

/** What each cause is, said of samples that are not caught. */
const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  "cannot work": "the latch as made cannot work (bolt, slot, edge, stroke or spring)",
  "rests outside": "the flap comes to rest where the bolt does not find its slot",
  "under the animal": "the hold ends before the flap is let go",
  stuck: "the flap stops with the bolt riding on its edge",
  "shut out": "the bolt comes up beside the flap",
};

export interface NoneCase {
  readonly reliability: number;
  readonly samples: number;
  /** Samples caught at the longest hold. */
  readonly caughtAtEnd: number;
  readonly causes: Readonly<Record<Cause, number>>;
  readonly causesAt: number;
}

/** Why there is no recommendation. */
export function whyNone(none: NoneCase): string {
  const { reliability, samples, caughtAtEnd, causesAt } = none;
  const target = percent(reliability);
  const needed = samplesNeeded(reliability);
  if (samples < needed) {
    return `${counted(samples, "sample")} cannot show ${target} with 95 % confidence, whatever comes out: at least ${needed} are needed, and then not one may fail.`;
  }
  const share = caughtAtEnd / samples;
  const bound = percent(lowerBound(caughtAtEnd, samples));
  if (share > reliability) {
    return `No hold is shown to do yet: at the longest ${percent(share)} of ${samples} samples are caught, which proves no more than ${bound}, short of ${target}. More samples may show it: about ${samplesToShow(share, reliability)} are needed if that share holds.`;
  }
  return `No hold will do: even at the longest only ${percent(share)} of the samples are caught (at least ${bound}), short of ${target}. At ${seconds(causesAt)}: ${causeList(none.causes)}.`;
}

/** The causes that occur, the most frequent first. */
export function causeList(causes: Readonly<Record<Cause, number>>): string {
  const present = CAUSES.filter((cause) => causes[cause] > 0).sort((a, b) => causes[b] - causes[a]);
  if (present.length === 0) return "every sample is caught";
  return present.map((cause) => `${percent(causes[cause])} ${cause}, ${CAUSE_WORDS[cause]}`).join("; ");
}

/** Samples after which a share above the target would prove the target, to two figures, upwards. */
export function samplesToShow(share: number, reliability: number): number {
  let low = 1;
  let high = samplesNeeded(reliability);
  const shows = (samples: number) => lowerBound(share * samples, samples) >= reliability;
  while (!shows(high) && high < 2 ** 40) {
    low = high;
    high *= 2;
  }
  while (high - low > low / 100) {
    const middle = Math.floor((low + high) / 2);
    if (shows(middle)) high = middle;
    else low = middle;
  }
  const step = 10 ** Math.max(0, Math.floor(Math.log10(high)) - 1);
  return Math.ceil(high / step) * step;
}

const MIXED =
  "The probability mixes what differs from door to door (friction, masses, slot, plumb) with what differs from pass to pass (angle, speed, direction): one door in a thousand may fail at every pass rather than every door once in a thousand.";
const MIXED_ANIMALS = "Each passage is taken to be of any of the animals with equal chance (assumption).";
const NO_CLAMP =
  "The coil has no clamp, so its release time does not exist; the bolt is taken to be free the moment the hold ends.";
const NO_TIMER = "The door has no timer: settings are the hold itself, of a timer that retriggers.";

export interface NoteCase {
  readonly door: Door;
  readonly mixture: HoldAnswer;
  readonly worst: AnimalAnswer | null;
  readonly unused: readonly { readonly key: string; readonly why: string }[];
}

/** Sentences to stand beside the figures. */
export function studyNotes({ door, worst, unused }: NoteCase): string[] {
  const notes = [MIXED];
  if (worst !== null) notes.push(MIXED_ANIMALS, worstWords(worst));
  if (door.solenoid !== null && door.driver?.clamp === "none") notes.push(NO_CLAMP);
  if (door.timer === null) notes.push(NO_TIMER);
  for (const { key, why } of unused) notes.push(`The tolerance of ${key} is not used: ${why}.`);
  return notes;
}

function worstWords(worst: AnimalAnswer): string {
  const { name, samples, recommended } = worst;
  if (recommended === null) return `${name} by itself (${samples} samples): ${worst.whyNone}`;
  return `${name} needs the longest hold: ${seconds(recommended)} by itself, on ${samples} samples.`;
}
