/** A verdict on one concern, and the changes that would better it, as data that text, page and app share. */

export type FindingStatus = "ok" | "caution" | "fail";

/** The part of the door a finding leads to. */
export type PartName =
  | "animals"
  | "opening"
  | "flap"
  | "hinge"
  | "magnets"
  | "latch"
  | "solenoid"
  | "driver"
  | "timer"
  | "supply"
  | "detection";

/** One edit of the door file: a key's path and the text to write there. */
export interface DoorEdit {
  readonly path: string;
  /** A quantity as a builder would write it, or a plain number for a key without a unit. */
  readonly text: string;
}

/** A computed way out: what to change, and what it costs elsewhere. All edits belong to one undo step. */
export interface Suggestion {
  /** An instruction with its figures: "Bring the magnets to a gap of 3.1 mm". */
  readonly label: string;
  readonly edits: readonly DoorEdit[];
  /** "Push force rises from 6.1 N to 7.4 N (limit 14 N)"; `null` where nothing gets worse. */
  readonly cost: string | null;
}

export interface Finding {
  readonly id: string;
  readonly part: PartName;
  readonly status: FindingStatus;
  /** One plain sentence that carries the figures and, where not ok, says what to change. */
  readonly message: string;
  /** Names of the results it rests on. */
  readonly results: readonly string[];
  readonly suggestions: readonly Suggestion[];
}
