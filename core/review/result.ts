/** One figure of a door: what it is, how it comes about, and where that is from. A result exists once, here. */
import type { Computed } from "./compute.ts";

/** Where an input of a result comes from: a key of the door file, or another result. */
export type ResultInput = { readonly key: string } | { readonly result: string };

export interface ResultDefinition {
  readonly name: string;
  /** SI unit as the contract spells it. */
  readonly unit: string;
  /** What the figure is, in a builder's words. */
  readonly title: string;
  /** The formula in the model's symbols. */
  readonly formula: string;
  /** Keys of the door file and names of other results that go into it. `animals` stands for the animal that governs. */
  readonly inputs: readonly ResultInput[];
  readonly source: string;
  /** `null` where the figure does not exist for this door. */
  readonly value: (computed: Computed) => number | null;
}

/** Inputs by name: those with a dot that are results are told apart by the registry. */
export const key = (name: string): ResultInput => ({ key: name });
export const from = (name: string): ResultInput => ({ result: name });
