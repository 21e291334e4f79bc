/**
 * Preferred numbers for resistors and capacitors, IEC 60063:2015. E24 is a table of the standard (its 2.7 to 4.7 and
 * 8.2 are not the rounded powers); E12, E6 and E3 take every second, fourth and eighth of it. E96 and E48 are
 * 10^(i/96) and 10^(i/48) to three digits.
 */
export type Series = "E3" | "E6" | "E12" | "E24" | "E48" | "E96";

const E24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8,
  7.5, 8.2, 9.1,
] as const;

const everyOfE24 = (step: number): number[] => E24.filter((_, i) => i % step === 0);
const rounded = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => Number((10 ** (i / count)).toFixed(2)));

/** The values of one decade, 1 to below 10, rising. */
export const SERIES: Readonly<Record<Series, readonly number[]>> = {
  E3: everyOfE24(8),
  E6: everyOfE24(4),
  E12: everyOfE24(2),
  E24,
  E48: rounded(48),
  E96: rounded(96),
};

/** The greatest value of the series at most `value`. Throws a RangeError unless `value` is above 0 and finite. */
export function preferredBelow(value: number, series: Series): number {
  return around(value, series).findLast((candidate) => candidate <= value) as number;
}

/** The least value of the series at least `value`. Throws as `preferredBelow` does. */
export function preferredAbove(value: number, series: Series): number {
  return around(value, series).find((candidate) => candidate >= value) as number;
}

/** The value of the series that differs least from `value`; of two as near, the lesser. Throws as `preferredBelow` does. */
export function nearestPreferred(value: number, series: Series): number {
  const below = preferredBelow(value, series);
  const above = preferredAbove(value, series);
  return value - below <= above - value ? below : above;
}

/** Every value of the series from `low` to `high`, rising. Throws as `preferredBelow` does for either. */
export function preferredWithin(low: number, high: number, series: Series): number[] {
  const size = SERIES[series].length;
  const last = placeOf(high, series) + 1;
  const found: number[] = [];
  for (let place = placeOf(low, series) - 2; place <= last; place++) {
    const value = valueAt(place, size, series);
    if (value >= low && value <= high) found.push(value);
  }
  return found;
}

/** The values next to one, rising: two at or below it and one at or above it are surely among them. */
function around(value: number, series: Series): number[] {
  const size = SERIES[series].length;
  const place = placeOf(value, series);
  return [-2, -1, 0, 1].map((shift) => valueAt(place + shift, size, series));
}

/** How many values of the series, counted on from 1, are at or below a value, give or take one for rounding. */
function placeOf(value: number, series: Series): number {
  if (!(value > 0) || !Number.isFinite(value)) {
    throw new RangeError(`Input value of a preferred number must be above 0 and finite; received ${value}`);
  }
  const decade = Math.floor(Math.log10(value));
  const scaled = value / 10 ** decade;
  return decade * SERIES[series].length + SERIES[series].filter((mantissa) => mantissa <= scaled).length;
}

/** A value by its place, 0 for 1 and `size` for 10. Through text, so that 4.7 kΩ is 4700 to the bit. */
function valueAt(place: number, size: number, series: Series): number {
  const decade = Math.floor(place / size);
  return Number(`${SERIES[series][place - decade * size]}e${decade}`);
}
