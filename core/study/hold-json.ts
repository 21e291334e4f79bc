/** The answer of a study as the command line prints it with --json (contract, "Results"). */
import type { HoldStudy } from "./hold-study.ts";

/** Names of the results, with their units. */
export const HOLD_UNITS = {
  "hold.recommended": "s",
  "hold.probability": "1",
  "hold.lowerBound": "1",
} as const;

export type HoldResults = Record<
  keyof typeof HOLD_UNITS,
  { readonly value: number | null; readonly unit: string }
>;

/** Results by name. */
export function holdResults(study: HoldStudy): HoldResults {
  const result = (name: keyof typeof HOLD_UNITS, value: number | null) => ({ value, unit: HOLD_UNITS[name] });
  return {
    "hold.recommended": result("hold.recommended", study.recommended),
    "hold.probability": result("hold.probability", study.probability),
    "hold.lowerBound": result("hold.lowerBound", study.lowerBound),
  };
}

/** What `hold --json` prints: the contract's keys first, what it leaves free after them. */
export function holdJson(study: HoldStudy) {
  const { recommended, probability, lowerBound, animals, worst, ...rest } = study;
  return {
    door: rest.door,
    samples: rest.samples,
    seed: rest.seed,
    results: holdResults(study),
    settle: rest.settle,
    settleError: rest.settleError,
    settleFrom: rest.settleFrom,
    curve: rest.curve,
    causes: rest.causes,
    causesAt: rest.causesAt,
    drivers: rest.drivers,
    holdDrivers: rest.holdDrivers,
    reliability: rest.reliability,
    confidence: rest.confidence,
    samplesNeeded: rest.samplesNeeded,
    settingStep: rest.settingStep,
    settleStep: rest.settleStep,
    whyNone: rest.whyNone,
    worst: worst === null ? null : animals[worst],
    animals: animals.map(
      ({ name, samples, recommended: hold, probability: share, lowerBound: bound, causes, causesAt }) => ({
        name,
        samples,
        recommended: hold,
        probability: share,
        lowerBound: bound,
        causes,
        causesAt,
      }),
    ),
    inputs: rest.inputs,
    notes: rest.notes,
  };
}
