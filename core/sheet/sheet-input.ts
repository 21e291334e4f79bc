/** Everything a sheet is written from: one computed door, its findings and, where they ran, the study and the bench's samples. */
import type { Door } from "../door/door.ts";
import type { DoorFile } from "../door/file.ts";
import type { UnitSystem } from "../quantity/format.ts";
import { type Computed, compute } from "../review/compute.ts";
import type { Finding } from "../review/finding.ts";
import { findings, verdict } from "../review/findings.ts";
import { type Words, words } from "../review/words.ts";
import type { HoldStudy } from "../study/hold-study.ts";
import { type BenchLimits, benchLimits } from "./bench-limits.ts";
import { type DoorPlan, doorPlan } from "./door-plan.ts";
import { type Sizes, sizes } from "./sizes.ts";

export interface SheetInput {
  readonly door: Door;
  /** Tells what the person wrote and what was taken by default. */
  readonly file: DoorFile;
  readonly computed: Computed;
  readonly findings: readonly Finding[];
  readonly verdict: string;
  readonly plan: DoorPlan;
  readonly words: Words;
  readonly sizes: Sizes;
  /** `null` where no study ran: `hold.setting` then stands in, said so. */
  readonly study: HoldStudy | null;
  readonly bench: BenchLimits;
}

/** Computes what a sheet needs of a valid door. A door computed before may be given, and the bench's samples of it. */
export function sheetInput(
  door: Door,
  file: DoorFile,
  system: UnitSystem,
  study: HoldStudy | null = null,
  computed: Computed = compute(door),
  bench: BenchLimits = benchLimits(computed),
): SheetInput {
  const w = words(system);
  const found = findings(computed, w);
  return {
    door,
    file,
    computed,
    findings: found,
    verdict: verdict(found, computed, w),
    plan: doorPlan(door),
    words: w,
    sizes: sizes(system),
    study,
    bench,
  };
}

/** The hold to set, s, and on what grounds; `null` where none is sure or there is no bolt or timer. */
export function holdToSet({ study, computed }: Pick<SheetInput, "study" | "computed">): {
  readonly time: number;
  readonly grounds: "study" | "first setting";
} | null {
  // Too few samples show nothing either way: the first setting stands, said to be one.
  if (study !== null && (study.recommended !== null || study.samples >= study.samplesNeeded)) {
    return study.recommended === null ? null : { time: study.recommended, grounds: "study" };
  }
  const setting = computed.hold?.setting ?? null;
  return setting === null || computed.latch === null ? null : { time: setting, grounds: "first setting" };
}
