/** What the page and the thread of a trial on the bench say to each other. */
import type { InsulationClass } from "../../core/door/door.ts";
import type { SampledLimits } from "../../core/sheet/bench-limits.ts";
import type { Fit } from "../../core/study/fit/fit-types.ts";
import type { TrialReadings, TrialTexts } from "../state/trial-readings.ts";
import type { UnitSystem } from "../state/view.ts";

export interface FitOrder {
  /** The door file. */
  readonly text: string;
  /** What was written on the bench. */
  readonly texts: TrialTexts;
  /** A measured swing as its file has it; it comes before a count. */
  readonly csv: string | null;
  /** Whether the door is to be fitted to it. */
  readonly fit: boolean;
  /** Whether the limits of nine finished doors in ten are wanted too: they take a second or two. */
  readonly limits: boolean;
}

/** What the door as computed would show on the bench, SI. */
export interface Expected {
  /** rad. */
  readonly letGo: number;
  /** The let-go is the bench card's: its limits hold. */
  readonly asOnCard: boolean;
  readonly passes: number;
  /** s; `null` is never. */
  readonly settle: number | null;
  readonly still: number | null;
  /** Farthest from the slot's centre that friction can hold the flap, rad. */
  readonly offCentre: number;
  /** Within which the bolt finds its slot, rad; `null` without a latch. */
  readonly capture: number | null;
  /** Hinge to the flap's lower edge, m. */
  readonly reach: number;
  readonly push: ExpectedPush | null;
  /** `null` without the circuit and the bolt it pulls. */
  readonly pull: ExpectedPull | null;
  /** `null` without the circuit. */
  readonly coil: ExpectedCoil | null;
  /** s; `null` without a timer. */
  readonly hold: { readonly nominal: number; readonly shortest: number; readonly longest: number } | null;
}

/** V, coil at its ambient. */
export interface ExpectedPull {
  /** The supply's low end. */
  readonly low: number;
  /** It draws the bolt back there. */
  readonly atLow: boolean;
  /** Least voltage that draws it back; `null`: none does. */
  readonly from: number | null;
}

/** °C, after ten minutes on. */
export interface ExpectedCoil {
  /** Around it: as measured, else as in the file. */
  readonly ambient: number;
  readonly hot: number;
  readonly insulation: InsulationClass;
  /** Its class ends here. */
  readonly limit: number;
  /** Above this it is guarded. */
  readonly touch: number;
  /** As in the file, K/W. */
  readonly thermalResistance: number;
  /** With which the measured temperature is reached; `null` where none was measured or none reaches it. */
  readonly measuredResistance: number | null;
}

/** N, m; `words` as a scale shows them. */
export interface ExpectedPush {
  readonly animal: string;
  readonly height: number;
  readonly force: number;
  readonly words: Readonly<Record<UnitSystem, string>>;
  readonly limit: number;
  readonly limitWords: Readonly<Record<UnitSystem, string>>;
}

export type FitAnswer =
  | { readonly kind: "expected"; readonly expected: Expected; readonly readings: TrialReadings }
  /** What is wrong with the measured file. */
  | { readonly kind: "unreadable"; readonly reasons: readonly string[] }
  | { readonly kind: "fit"; readonly fit: Fit; readonly gaps: number }
  | { readonly kind: "limits"; readonly limits: SampledLimits | null }
  | { readonly kind: "done" }
  /** What is wrong with the door, or with the program. */
  | { readonly kind: "refused"; readonly reasons: readonly string[] };
