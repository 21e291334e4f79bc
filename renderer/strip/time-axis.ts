/**
 * The strip's time axis as pure functions: which stretch of time is seen, where a moment lies in it, and the ticks along
 * it. Times in s from detection, lengths in CSS pixels from the left edge of the drawing.
 */

/** The stretch of time that is seen. */
export interface TimeWindow {
  readonly from: number;
  readonly to: number;
}

/** Where the window lies on the page. */
export interface TimeScale extends TimeWindow {
  readonly left: number;
  readonly width: number;
}

/** The shortest stretch one can zoom to, s: some twelve of the film's pictures. */
export const SHORTEST_WINDOW = 0.05;

export function toX({ from, to, left, width }: TimeScale, time: number): number {
  return left + ((time - from) / (to - from)) * width;
}

export function toTime({ from, to, left, width }: TimeScale, x: number): number {
  return from + ((x - left) / width) * (to - from);
}

export function secondsPerPixel({ from, to, width }: TimeScale): number {
  return (to - from) / width;
}

/** The window moved, and shortened where it must be, to lie within `whole`. */
export function keptWithin(window: TimeWindow, whole: TimeWindow): TimeWindow {
  const length = Math.min(window.to - window.from, whole.to - whole.from);
  const from = Math.min(Math.max(window.from, whole.from), whole.to - length);
  return { from, to: from + length };
}

/** Zooms so that `time` keeps its place on the page; `factor` below 1 shows less time, larger. */
export function zoomed(window: TimeWindow, whole: TimeWindow, time: number, factor: number): TimeWindow {
  const longest = whole.to - whole.from;
  const shortest = Math.min(SHORTEST_WINDOW, longest);
  const length = window.to - window.from;
  const next = Math.min(longest, Math.max(shortest, length * factor));
  const share = (time - window.from) / length;
  const from = time - share * next;
  return keptWithin({ from, to: from + next }, whole);
}

export function panned(window: TimeWindow, whole: TimeWindow, seconds: number): TimeWindow {
  return keptWithin({ from: window.from + seconds, to: window.to + seconds }, whole);
}

/** The least of 1, 2, 5 times a power of ten that is at least `least`. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const lead = least / power;
  const factor = [1, 2, 5, 10].find((f) => lead <= f * (1 + 1e-9)) ?? 10;
  return factor * power;
}

export interface Tick {
  readonly time: number;
  readonly text: string;
}

/** Ticks at least `room` pixels apart, at whole multiples of a nice step. */
export function timeTicks(scale: TimeScale, room: number): Tick[] {
  const step = niceStep(secondsPerPixel(scale) * room);
  const decimals = decimalsOf(step);
  const first = Math.ceil(scale.from / step - 1e-9);
  const last = Math.floor(scale.to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const time = (first + i) * step;
    return { time, text: time.toFixed(decimals) };
  });
}

/** Decimal places that a nice step needs. */
export function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}
