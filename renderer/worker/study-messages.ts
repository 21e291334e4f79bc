/** What the page and the threads of a study say to each other. */
import type { HoldStudy } from "../../core/study/hold-study.ts";
import type { PackedTally } from "../../core/study/pack.ts";

export type StudyOrder =
  | { readonly kind: "begin"; readonly text: string; readonly samples: number; readonly seed: number }
  /** Samples `from` … `to` − 1. */
  | { readonly kind: "count"; readonly from: number; readonly to: number }
  | { readonly kind: "add"; readonly tally: PackedTally }
  | { readonly kind: "finish" };

export type StudyAnswer =
  | { readonly kind: "ready" }
  | { readonly kind: "refused"; readonly reasons: readonly string[] }
  | { readonly kind: "counted"; readonly tally: PackedTally }
  | { readonly kind: "study"; readonly study: HoldStudy }
  | { readonly kind: "failed"; readonly message: string };
