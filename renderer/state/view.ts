/**
 * What the page shows of a computed door: plain data that crossed from the worker as it is. The 3D door, the passage strip,
 * the plots and the forms all read a DoorView and nothing else of the computation. SI throughout; times in s from detection
 * unless a field says "after let-go".
 */
import type { Door } from "../../core/door/door.ts";
import type { Outcome } from "../../core/passage/relatch.ts";
import type { Replay } from "../../core/passage/replay.ts";
import type { Finding } from "../../core/review/finding.ts";
import type { ResultValue } from "../../core/review/results.ts";
import type { HoldStudy } from "../../core/study/hold-study.ts";

/** Sizes that follow from several parts, so that no view works them out again. */
export interface DoorGeometry {
  /** Hinge axis above the floor, m. */
  readonly hingeHeight: number;
  /** Hinge axis to the flap's bottom edge, m. */
  readonly reach: number;
  /** The slot's centre θ_off, rad; 0 without a latch. */
  readonly slotAngle: number;
  /** θ_c about the slot's centre, rad; `null` without a latch. */
  readonly captureAngle: number | null;
  /** θ_b about the slot's centre, rad; `null` without a latch. */
  readonly blockAngle: number | null;
  /** Which of the door's animals the passage shows. */
  readonly animal: number;
}

/** The free swing from let-go, columns of equal length; `time` is s after let-go. */
export interface SwingColumns {
  readonly time: Float64Array;
  /** rad, positive outwards. */
  readonly angle: Float64Array;
  /** rad/s. */
  readonly speed: Float64Array;
  /** Where the energy has gone by then, J: the seven add up to `initial` at every moment (`air` may be negative). */
  readonly energy: EnergyColumns;
}

export interface EnergyColumns {
  readonly initial: number;
  /** Mechanical energy still there. */
  readonly left: Float64Array;
  readonly hinge: Float64Array;
  readonly viscous: Float64Array;
  readonly seal: Float64Array;
  readonly air: Float64Array;
  readonly stops: Float64Array;
}

/** Torques on a flap at rest against angle, stop to stop, N m, positive outwards. */
export interface TorqueColumns {
  /** rad. */
  readonly angle: Float64Array;
  readonly gravity: Float64Array;
  readonly magnets: Float64Array;
  /** Wind and pressure difference. */
  readonly air: Float64Array;
  /** Static dry friction, a size ≥ 0 that acts either way: k_s τ_fric. */
  readonly friction: Float64Array;
}

/** The hold bar: everything that is about the timer. */
export interface HoldView {
  /** The hold's time zero: the last counted pulse. */
  readonly start: number;
  /** Hold time shown: the timer's nominal, or the one being tried by dragging, s. */
  readonly shown: number;
  readonly nominal: number;
  readonly shortest: number;
  readonly longest: number;
  /** s; `null` where no hold is sure. */
  readonly need: number | null;
  readonly required: number | null;
  readonly setting: number | null;
  /** Release of the coil plus rise of the bolt to the slot's mouth, s: what follows the end of a hold before anything is decided. */
  readonly lag: number;
}

/** What becomes of the bolt for every hold time: stretches of one outcome, rising, without gaps. */
export interface OutcomeStretch {
  /** Hold time, s. */
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
}

/** The relatch at the hold shown; times in s after let-go. */
export interface RelatchView {
  readonly holdEnds: number;
  readonly outcome: Outcome;
  readonly time: number;
  /** Kinetic energy of the flap then, J. */
  readonly energy: number;
}

export interface DoorView {
  /** Counts up with every answer of the worker; two views of one number are the same. */
  readonly serial: number;
  /** The door file's text it was computed from. */
  readonly text: string;
  readonly door: Door;
  readonly geometry: DoorGeometry;
  readonly results: Readonly<Record<string, ResultValue>>;
  /** Worst first. */
  readonly findings: readonly Finding[];
  /** The film of one passage at the hold shown. Never empty. */
  readonly replay: Replay;
  readonly swing: SwingColumns;
  readonly torques: TorqueColumns;
  /** `null` without a timer. */
  readonly hold: HoldView | null;
  /** Empty without a latch. */
  readonly outcomes: readonly OutcomeStretch[];
  /** `null` without a latch or a timer. */
  readonly relatch: RelatchView | null;
}

/** The tolerance study's answer, and the door file's text it was run for: another text means it is out of date. */
export type StudyView = HoldStudy & { readonly text: string };

/** How figures are displayed; inputs always keep the person's own text. */
export type UnitSystem = "metric" | "inch";
export type Theme = "light" | "dark";

/** The 3D door's standpoint. */
export type Camera = "side" | "inside" | "outside" | "latch" | "free";

export interface SceneOptions {
  readonly camera: Camera;
  /** Cut through the latch. */
  readonly section: boolean;
  /** Magnets seen through the flap. */
  readonly magnetsThrough: boolean;
  readonly animal: boolean;
}

/** What the 3D door hands out once it stands, for pictures and films. */
export interface SceneHandle {
  readonly canvas: HTMLCanvasElement;
  /** Draws the passage at a moment (s from detection) at once, for a picture or a film's frame. */
  readonly drawAt: (time: number) => void;
}

/** renderer/three/DoorScene.tsx, default export. It fills its parent. */
export interface DoorSceneProps {
  readonly view: DoorView;
  /** The copy set aside for comparison: its flap swings beside as a ghost. */
  readonly pinned: DoorView | null;
  readonly playhead: import("./playhead.ts").Playhead;
  readonly options: SceneOptions;
  readonly theme: Theme;
  readonly onHandle?: (handle: SceneHandle | null) => void;
  /** The person turned the view by hand: the standpoint is now "free". */
  readonly onFreeOrbit?: () => void;
}

/** renderer/strip/PassageStrip.tsx, default export. It fills its parent (full width, at least 160 px high). */
export interface PassageStripProps {
  readonly view: DoorView;
  readonly pinned: DoorView | null;
  readonly playhead: import("./playhead.ts").Playhead;
  readonly theme: Theme;
  /** The study's answer for this very door, else `null`. */
  readonly study: StudyView | null;
  /** While the hold's end is dragged: the view answers with `hold.shown`. */
  readonly onHoldPreview: (hold: number) => void;
  /** The gesture's end: one undo step. */
  readonly onHoldCommit: (hold: number) => void;
  /** The gesture is given up (Escape): as before. */
  readonly onHoldCancel: () => void;
  /** Whether the view answers what is asked now, so that no other is on its way. */
  readonly isSettled: () => boolean;
}

/** renderer/plots/Plots.tsx, default export. It fills its parent. */
export interface PlotsProps {
  readonly view: DoorView;
  readonly pinned: DoorView | null;
  readonly playhead: import("./playhead.ts").Playhead;
  readonly theme: Theme;
  readonly units: UnitSystem;
}
