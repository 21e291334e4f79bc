/** The moments that the strip names, in words short enough to stand side by side. */
import type { DoorView } from "../state/view.ts";
import { type LabelWish, placeLabels } from "./place-labels.ts";
import { decimalsOf, niceStep, secondsPerPixel, type TimeScale, toX } from "./time-axis.ts";

export interface StripMark {
  readonly id: string;
  readonly word: string;
  /** s from detection. */
  readonly time: number;
  /** Which names stay where there is no room for all. */
  readonly weight: number;
}

/** In rising time. `holdEnds` is the end of the hold shown, s from detection, `null` without a timer. */
export function stripMarks(view: DoorView, holdEnds: number | null): StripMark[] {
  const { marks } = view.replay;
  const all: (Omit<StripMark, "time"> & { time: number | null })[] = [
    { id: "detected", word: "detected", time: 0, weight: 4 },
    { id: "arrives", word: "arrives", time: marks.arrival, weight: 3 },
    { id: "let-go", word: "let go", time: marks.letGo, weight: 6 },
    { id: "settles", word: "settles", time: marks.settled, weight: 5 },
    { id: "rests", word: "rests", time: marks.rest, weight: 2 },
    { id: "with-margin", word: "with margin", time: marginMark(view), weight: 1 },
    { id: "hold-ends", word: "hold ends", time: holdEnds, weight: 7 },
  ];
  return all
    .flatMap(({ time, ...mark }) => (time === null ? [] : [{ ...mark, time }]))
    .sort((a, b) => a.time - b.time);
}

/** Where the hold should end, the review's margin included. */
function marginMark({ hold }: DoorView): number | null {
  return hold === null || hold.required === null ? null : hold.start + hold.required;
}

/** Pixels that a mark's time is told to. */
const LEGIBLE = 20;

export interface PlacedMark extends StripMark {
  readonly x: number;
  /** Left edge of the label, px; `null` where there is no room for it. */
  readonly left: number | null;
  readonly width: number;
  /** The label: the word, with the time where all fit with theirs. */
  readonly text: string;
}

/** Marks in the window with their labels side by side, px. */
export function placedMarks(
  marks: readonly StripMark[],
  scale: TimeScale,
  gap: number,
  measure: (text: string) => number,
): PlacedMark[] {
  const seen = marks.filter(({ time }) => time >= scale.from && time <= scale.to);
  const places = Math.max(1, decimalsOf(niceStep(secondsPerPixel(scale) * LEGIBLE)));
  const timed = seen.map(({ word, time }) => `${word} ${time.toFixed(places)}`);
  const words = seen.map(({ word }) => word);
  const place = (texts: string[]) => {
    const wishes = seen.map((mark, i): LabelWish => {
      return { x: toX(scale, mark.time), width: measure(texts[i]), weight: mark.weight };
    });
    return placeLabels(wishes, scale.left, scale.left + scale.width, gap);
  };
  const lefts = place(timed);
  const roomy = lefts.every((left) => left !== null) && isNear(seen, scale, lefts, timed, measure);
  const texts = roomy ? timed : words;
  const final = roomy ? lefts : place(words);
  return seen.map((mark, i) => {
    return { ...mark, x: toX(scale, mark.time), left: final[i], width: measure(texts[i]), text: texts[i] };
  });
}

/** Whether every label still stands over its mark, or nearly: the longer texts must not push it far away. */
function isNear(
  marks: readonly StripMark[],
  scale: TimeScale,
  lefts: readonly (number | null)[],
  texts: readonly string[],
  measure: (text: string) => number,
): boolean {
  return lefts.every((left, i) => {
    const width = measure(texts[i]);
    const off = Math.abs((left ?? 0) + width / 2 - toX(scale, marks[i].time));
    return left !== null && off <= width;
  });
}
