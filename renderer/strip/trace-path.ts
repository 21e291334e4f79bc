/**
 * A column drawn against time as an SVG path: of the samples under one pixel only the last is kept, and the least and greatest
 * where they lie between, so that the line is the same to the eye and short enough to draw at any zoom.
 */
import { type TimeScale, toX } from "./time-axis.ts";

export interface Column {
  /** Rising, s. */
  readonly time: ArrayLike<number>;
  readonly value: ArrayLike<number>;
}

/** Index of the first sample at or after `time`. */
export function firstFrom(times: ArrayLike<number>, time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The path of `column` between two moments, cut to the scale's window with one sample over at each side. "" where it has
 * fewer than two samples there. `shift` is added to the column's times.
 */
export function tracePath(
  scale: TimeScale,
  column: Column,
  y: (value: number) => number,
  { from, to, shift = 0 }: { from: number; to: number; shift?: number },
): string {
  const { time, value } = column;
  const first = Math.max(firstFrom(time, from - shift), firstFrom(time, scale.from - shift) - 1, 0);
  const last = Math.min(
    firstFrom(time, to - shift + 1e-9),
    firstFrom(time, scale.to - shift) + 1,
    time.length,
  );
  if (last - first < 2) return "";
  const points: string[] = [];
  const add = (i: number): void => {
    points.push(`${toX(scale, time[i] + shift).toFixed(1)} ${y(value[i]).toFixed(1)}`);
  };
  add(first);
  let start = first + 1;
  while (start < last) {
    const pixel = Math.floor(toX(scale, time[start] + shift));
    let end = start + 1;
    while (end < last && Math.floor(toX(scale, time[end] + shift)) === pixel) end++;
    // From the sample before the pixel on: a turn at its edge is a turn all the same.
    addTurns(value, start - 1, end - 1, add);
    add(end - 1);
    start = end;
  }
  return `M${points.join("L")}`;
}

/** Adds the least and the greatest of samples from…to where they lie between the two, in order. */
function addTurns(value: ArrayLike<number>, from: number, to: number, add: (i: number) => void): void {
  let least = from;
  let greatest = from;
  for (let i = from + 1; i <= to; i++) {
    if (value[i] < value[least]) least = i;
    if (value[i] > value[greatest]) greatest = i;
  }
  const first = Math.min(least, greatest);
  const second = Math.max(least, greatest);
  if (first > from) add(first);
  if (second > first && second < to) add(second);
}
