/** What a hovered place of a figure reads: one text per entry of the legend, with its unit. */
import { decimalsOf, niceStep } from "../strip/time-axis.ts";
import type { Axis, Figure } from "./figure.ts";

/** Share of an axis that a reading is told to. */
const FINE = 1 / 400;

/** A value with as many places as the axis can tell apart. */
export function readingText(value: number, { from, to, unit }: Axis): string {
  const places = decimalsOf(niceStep((to - from) * FINE));
  const text = Math.abs(value).toFixed(places);
  const sign = value < 0 && Number(text) !== 0 ? "−" : "";
  return unit === "°" ? `${sign}${text}°` : `${sign}${text} ${unit}`;
}

/** Texts by label at a sample of the figure's x values; entries that have no value there are left out. */
export function readingsAt(figure: Figure, index: number): Map<string, string> {
  const { lines, layers, eitherWay, y } = figure;
  const texts = new Map<string, string>();
  for (const { label, values, x } of lines) {
    if (label !== "" && x === undefined && !Number.isNaN(values[index])) {
      texts.set(label, readingText(values[index], y));
    }
  }
  // From the top down, as they lie in the picture.
  for (const { label, values } of [...layers].reverse()) texts.set(label, readingText(values[index], y));
  for (const { label, values } of eitherWay) texts.set(label, `±${readingText(values[index], y)}`);
  return texts;
}

/** The sample of a curve that is nearest to a place, all in px; `null` where none is within `reach`. */
export function nearestSample(
  points: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> },
  toX: (value: number) => number,
  toY: (value: number) => number,
  at: { readonly x: number; readonly y: number },
  reach: number,
): number | null {
  let nearest: number | null = null;
  let least = reach * reach;
  for (let i = 0; i < points.x.length; i++) {
    const dx = toX(points.x[i]) - at.x;
    const dy = toY(points.y[i]) - at.y;
    const away = dx * dx + dy * dy;
    if (away < least) {
      least = away;
      nearest = i;
    }
  }
  return nearest;
}
