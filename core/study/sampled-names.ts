/** Names, units and titles of the figures with the tolerances in (`sampled-figures`), apart from what computes them. */

export interface SampledName {
  readonly name: SampledKey;
  /** SI; "1" for a share. */
  readonly unit: string;
  readonly title: string;
}

export type SampledKey = `sampled.${"settle50" | "settle95" | "hold95" | "caught" | "restsOutside"}`;

/** What every title ends with: an estimate, and from what. */
const FROM = "tolerances included (estimate from 256 scrambled Sobol' points)";

function named(name: SampledKey, unit: string, title: string): SampledName {
  return { name, unit, title: `${title}, ${FROM}` };
}

export const SAMPLED_FIGURES: readonly SampledName[] = [
  named("sampled.settle50", "s", "settle time that half of all passages keep"),
  named("sampled.settle95", "s", "settle time that 95 in 100 passages keep"),
  named("sampled.hold95", "s", "hold from which on 95 in 100 passages are caught"),
  named("sampled.caught", "1", "share of passages caught at the hold that is set"),
  named("sampled.restsOutside", "1", "share of passages that end at rest outside the slot"),
];
