/**
 * The hold as a program for a microcontroller, in place of a one-shot: complete, short, generated from the door. Every
 * figure in it is the review's; what it may keep the coil on for is worked out in `program-limit`.
 */

import { holdStart } from "../passage/passage.ts";
import type { UnitSystem } from "../quantity/format.ts";
import type { Computed } from "../review/compute.ts";
import { type Words, words } from "../review/words.ts";
import { type OnTimeLimit, onTimeLimit } from "./program-limit.ts";
import { type ProgramNumbers, programText } from "./program-text.ts";

export interface TimerProgram {
  readonly text: string;
  readonly numbers: ProgramNumbers;
  readonly limit: OnTimeLimit;
  /** Where the hold comes from. */
  readonly holdFrom: HoldSource;
}

export type HoldSource = "given" | "timer" | "required";

/** A pulse must last this long, ms: what contacts bounce (common practice, no source) … */
const DEBOUNCE = 20;
/** … and at most this part of the time between two pulses. */
const DEBOUNCE_SHARE = 0.2;
/** Longest hold a program can count, s: the door file's longest. */
const LONGEST_HOLD = 1e6;

/**
 * The program of a door. `hold`, s, is the setting to use; without it the timer's nominal hold, and without a timer the hold the door
 * requires. `null` where there is none of these. Throws a RangeError for a hold that is not positive or above 10⁶ s.
 */
export function timerProgram(
  computed: Computed,
  system: UnitSystem,
  hold: number | null = null,
): TimerProgram | null {
  if (hold !== null && !(hold > 0 && hold <= LONGEST_HOLD)) {
    throw new RangeError(
      `Input hold of a timer program must be above 0 s and at most ${LONGEST_HOLD} s; received ${hold}`,
    );
  }
  const chosen = chosenHold(computed, hold);
  if (chosen === null) return null;
  const limit = onTimeLimit(computed, chosen.seconds);
  const numbers = numbersOf(computed, chosen.seconds, limit);
  const w = words(system);
  const said = {
    name: computed.door.name,
    hold: wrapped([HOLD_WORDS[chosen.from], ...timeline(computed, chosen.seconds, w)]),
    limit: wrapped(limitWords(limit, w)),
  };
  return { text: programText(numbers, said), numbers, limit, holdFrom: chosen.from };
}

function chosenHold(computed: Computed, given: number | null): { seconds: number; from: HoldSource } | null {
  if (given !== null) return { seconds: given, from: "given" };
  if (computed.timer !== null) return { seconds: computed.timer.nominal, from: "timer" };
  const required = computed.holdRequired;
  return required === null || required > LONGEST_HOLD ? null : { seconds: required, from: "required" };
}

/** Whole milliseconds: the hold never shorter than worked out, the debounce at least one reading. */
function numbersOf({ door }: Computed, seconds: number, limit: OnTimeLimit): ProgramNumbers {
  const pulseMs = Math.max(1, Math.round(door.detection.pulseInterval * 1000));
  return {
    holdMs: Math.max(1, Math.ceil(seconds * 1000 - 1e-6)),
    pulseMs,
    debounceMs: Math.max(1, Math.min(DEBOUNCE, Math.floor(pulseMs * DEBOUNCE_SHARE))),
    maxOnS: limit.maxOn,
    restS: limit.rest,
    retriggers: door.timer?.retriggers ?? true,
  };
}

const HOLD_WORDS: Readonly<Record<HoldSource, string>> = {
  given: "The hold, ms: the setting asked for.",
  timer: "The hold, ms: what the door's timer is set to.",
  required: "The hold, ms: what this door requires, margin included (it has no timer yet).",
};

function timeline(computed: Computed, hold: number, w: Words): string[] {
  const { animal, passage } = computed.governing;
  const again = computed.door.timer?.retriggers ?? true;
  const required = computed.holdRequired;
  const start = holdStart(passage, again);
  return [
    `From detection, ${animal.name} is at the door after ${w.time(passage.arrivalTime)} and lets the flap go after ${w.time(passage.letGoTime)}.`,
    again
      ? `Every pulse starts the hold anew; the last one that is sure to come, after ${w.time(start)}, holds until ${w.time(start + hold)}.`
      : `One trigger: the hold starts at the first pulse and ends after ${w.time(hold)}; the next pulse after that starts a new one.`,
    required === null
      ? "No hold is sure for this door: see its findings."
      : `The door requires ${w.time(required)}, margin included.`,
  ];
}

function limitWords(limit: OnTimeLimit, w: Words): string[] {
  const { maxOn, rest, temperature, fromAmbient } = limit;
  const sleeper =
    "When a rest begins the bolt comes back, whoever stands in the door, and it stays out until the rest is over: keep an animal's bed out of range.";
  if (limit.reason === "cap" || temperature === null || fromAmbient === null) {
    return [
      `Longest time on, and the rest after it, s. The coil may stay on for ever; after ${w.time(maxOn)} without a rest of ${w.time(rest)} something is stuck, and a door that never locks is no lock.`,
      sleeper,
    ];
  }
  const what =
    limit.reason === "touch"
      ? `${degrees(w.temperature(temperature))}, above which a surface should not be touched`
      : `${degrees(w.temperature(temperature))}, the limit of its insulation class less a reserve; guard the coil, it is too hot to touch`;
  const promise = limit.kept
    ? "These two keep it below that whatever pulses come, rests cut short included."
    : "NOTHING A PROGRAM COUNTS KEEPS IT BELOW THAT: do not build with this coil at this voltage.";
  return [
    `Longest time on, and the rest after it, s. Driven without a break the coil would reach ${what}, after ${w.time(fromAmbient)}. ${promise}`,
    sleeper,
    ...(limit.shortOfPassage
      ? [
          "ONE PASSAGE IS LONGER THAN THAT: the bolt comes back under the animal. Lower the voltage or take another coil.",
        ]
      : []),
  ];
}

const degrees = (text: string) => text.replace("°", "deg ");

/** Letters of a comment line, its mark left out. */
const COLUMNS = 74;

/** Sentences broken into comment lines. */
function wrapped(sentences: readonly string[]): string[] {
  return sentences.flatMap((one) => {
    const lines: string[] = [];
    for (const word of one.split(" ")) {
      const last = lines[lines.length - 1];
      if (last !== undefined && last.length + word.length < COLUMNS)
        lines[lines.length - 1] = `${last} ${word}`;
      else lines.push(word);
    }
    return lines;
  });
}
