/** Ticks of a picture's axis at round numbers. */
import { decimalsOf, niceStep } from "../strip/time-axis.ts";
import type { Axis } from "./figure.ts";

export interface AxisTick {
  readonly value: number;
  readonly text: string;
}

/** At most `most` ticks, 1, 2 or 5 times a power of ten apart. */
export function axisTicks({ from, to }: Pick<Axis, "from" | "to">, most: number): AxisTick[] {
  if (!(to > from)) return [];
  const step = niceStep((to - from) / Math.max(1, most));
  const places = decimalsOf(step);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const value = (first + i) * step;
    return { value, text: tickText(value, places) };
  });
}

/** With a real minus and no minus zero. */
export function tickText(value: number, places: number): string {
  const text = Math.abs(value).toFixed(places);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
