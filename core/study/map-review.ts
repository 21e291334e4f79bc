/**
 * What a map and a search ask of the review: a door computed, its figures by name and its verdicts by id. The review is
 * given to them, so that the study stays below it: whoever runs them (command line, worker) puts the two together.
 */
import type { Door } from "../door/door.ts";
import type { Centring } from "../parts/centring.ts";

/** A door whose magnets are computed already. */
export interface KnownDoor {
  readonly door: Door;
  readonly centring: Centring | null;
}

export type Status = "ok" | "caution" | "fail";

/** One named figure of a computed door. */
export interface Figure<C> {
  readonly name: string;
  /** SI, as the results spell it. */
  readonly unit: string;
  readonly title: string;
  /** `null` where the door has no such figure. */
  readonly value: (computed: C) => number | null;
}

export interface Judged {
  readonly status: Status;
  /** A sentence without its full stop. */
  readonly says: string;
}

/** One concern that a computed door is judged by. */
export interface Concern<C> {
  readonly id: string;
  /** The concern in a few words. */
  readonly concern: string;
  /** `null` where the door has nothing to judge here. */
  readonly judge: (computed: C) => Judged | null;
}

export interface Review<C extends KnownDoor> {
  /**
   * The door computed; it may work out each part when it is first read. What it tells is read before the next is
   * computed. `known` is a door with the same magnets and stops.
   */
  readonly compute: (door: Door, known: KnownDoor | null) => C;
  readonly figures: readonly Figure<C>[];
  readonly concerns: readonly Concern<C>[];
}
