/** The registry of every result of a review, in the contract's order, and their values for a door. */
import type { Computed } from "./compute.ts";
import type { ResultDefinition } from "./result.ts";
import { ELECTRICAL_RESULTS } from "./results-electrics.ts";
import { MECHANICAL_RESULTS } from "./results-mechanics.ts";

export const RESULTS: readonly ResultDefinition[] = [...MECHANICAL_RESULTS, ...ELECTRICAL_RESULTS];

const BY_NAME: ReadonlyMap<string, ResultDefinition> = new Map(RESULTS.map((r) => [r.name, r]));

export interface ResultValue {
  readonly value: number | null;
  readonly unit: string;
}

/** The definition of a result; `undefined` for an unknown name. */
export function resultNamed(name: string): ResultDefinition | undefined {
  return BY_NAME.get(name);
}

/** Every result of a door by name. */
export function resultValues(computed: Computed): Readonly<Record<string, ResultValue>> {
  return Object.fromEntries(RESULTS.map((r) => [r.name, { value: r.value(computed), unit: r.unit }]));
}
