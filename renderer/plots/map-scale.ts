/**
 * The colour scale of a map: light for the least, dark for the greatest value, even steps to the eye. Between its stops
 * colours are mixed in OKLab (Ottosson 2020), where equal steps look equal and lightness never turns back.
 */

/** From least to greatest; lightness falls evenly, so the scale can be read in grey as well. */
const STOPS: readonly (readonly [lightness: number, a: number, b: number])[] = [
  [0.96, -0.002, 0.045],
  [0.8, -0.055, 0.035],
  [0.62, -0.065, -0.03],
  [0.44, -0.02, -0.075],
  [0.26, 0.03, -0.07],
];

/** sRGB colour at a share from 0 to 1. */
export function mapColour(share: number): string {
  const at = Math.min(1, Math.max(0, share)) * (STOPS.length - 1);
  const i = Math.min(STOPS.length - 2, Math.floor(at));
  const rest = at - i;
  const mixed = STOPS[i].map((value, k) => value + rest * (STOPS[i + 1][k] - value));
  const [r, g, b] = okLabToSrgb(mixed[0], mixed[1], mixed[2]);
  return `rgb(${r} ${g} ${b})`;
}

/** OKLab to sRGB of 0 to 255, cut to what a screen has (Ottosson, "A perceptual color space for image processing"). */
export function okLabToSrgb(lightness: number, a: number, b: number): [number, number, number] {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    encoded(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    encoded(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    encoded(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

/** The transfer curve of sRGB (IEC 61966-2-1). */
function encoded(linear: number): number {
  const cut = Math.min(1, Math.max(0, linear));
  const value = cut <= 0.0031308 ? 12.92 * cut : 1.055 * cut ** (1 / 2.4) - 0.055;
  return Math.round(255 * value);
}

/** Whether letters on the colour must be light. */
export function isDarkAt(share: number): boolean {
  return share > 0.45;
}

/** Least and greatest of the values there are; `null` where there is none. */
export function mapRange(values: readonly (number | null)[]): { least: number; most: number } | null {
  const there = values.filter((value): value is number => value !== null && Number.isFinite(value));
  if (there.length === 0) return null;
  return { least: Math.min(...there), most: Math.max(...there) };
}

/** Whether a range is a single value to the digits that are read off. */
export function isSingle({ least, most }: { least: number; most: number }): boolean {
  return least.toPrecision(4) === most.toPrecision(4);
}

/** Share of a value in a range; the middle where the range is a single value. */
export function shareOf(value: number, range: { least: number; most: number }): number {
  const { least, most } = range;
  return isSingle(range) ? 0.5 : (value - least) / (most - least);
}
