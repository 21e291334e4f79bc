/**
 * A column drawn against time as an SVG path: of the samples under one pixel only the first, least, greatest and last are
 * kept, so that the line is the same to the eye and short enough to draw at any zoom.
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
  let start = first;
  while (start < last) {
    const pixel = Math.floor(toX(scale, time[start] + shift));
    let end = start + 1;
    while (end < last && Math.floor(toX(scale, time[end] + shift)) === pixel) end++;
    let told = -1;
    for (const i of telling(value, start, end)) {
      if (i !== told) points.push(`${toX(scale, time[i] + shift).toFixed(1)} ${y(value[i]).toFixed(1)}`);
      told = i;
    }
    start = end;
  }
  return `M${points.join("L")}`;
}

/** Of samples start…end − 1: first, least, greatest, last, in order; some may be the same. */
function telling(value: ArrayLike<number>, start: number, end: number): [number, number, number, number] {
  let least = start;
  let greatest = start;
  for (let i = start; i < end; i++) {
    if (value[i] < value[least]) least = i;
    if (value[i] > value[greatest]) greatest = i;
  }
  return [start, Math.min(least, greatest), Math.max(least, greatest), end - 1];
}
