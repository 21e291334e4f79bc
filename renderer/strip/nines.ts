/**
 * A probability near one, drawn so that 99 % and 99.9 % can be told apart: the height is −log10(1 − P), one step per
 * nine. What lies above the top counts as the top.
 */

/** Nines at the top of the drawing: a little more than a target of 99.9 % needs. */
export const TOP_NINES = 4;

/** 0 for P = 0 to 1 for P of `TOP_NINES` nines or more. */
export function ninesShare(probability: number): number {
  if (probability >= 1) return 1;
  return Math.min(1, Math.max(0, -Math.log10(1 - probability) / TOP_NINES));
}

/** A probability in percent with as many nines as it has: "99.93 %". */
export function percent(probability: number): string {
  if (probability >= 1) return "100 %";
  const nines = Math.max(1, -Math.log10(1 - probability));
  const places = Math.min(6, Math.ceil(nines) - 1);
  return `${Number((100 * probability).toFixed(places))} %`;
}
