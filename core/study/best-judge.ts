/** What a candidate of a search is worth: the hold that its door requires, and the findings that bar it. */
import type { Door } from "../door/door.ts";
import type { DoorFile } from "../door/file.ts";
import type { Worth } from "./best-search.ts";
import { changedDoor, type InputValue } from "./map-door.ts";
import type { MapMagnets } from "./map-magnets.ts";
import type { KnownDoor, Review, Status } from "./map-review.ts";

/** Findings of these rooms judge the timer that is set; a search looks for the hold to set it to. */
const OF_THE_TIMER = /^(hold|timer)\./;

export interface Judgement extends Worth {
  /** hold.required, s; `null` where none is sure, or the door is none. */
  readonly hold: number | null;
  /** Ids of the findings that bar this door. */
  readonly bars: readonly string[];
  /** Why it is no door; `null` where it is one. */
  readonly invalid: string | null;
}

export class BestJudge<C extends KnownDoor> {
  readonly statuses: ReadonlyMap<string, Status>;
  private readonly file: DoorFile;
  private readonly door: Door;
  private readonly review: Review<C>;
  private readonly magnets: MapMagnets;
  private readonly keepCautions: boolean;
  private readonly required: (computed: C) => number | null;

  /** `keepCautions`: a finding that is ok in the door as it stands bars a candidate where it is a caution. */
  constructor(
    file: DoorFile,
    door: Door,
    review: Review<C>,
    magnets: MapMagnets,
    keepCautions: boolean,
    required: (computed: C) => number | null,
  ) {
    this.file = file;
    this.door = door;
    this.review = review;
    this.magnets = magnets;
    this.keepCautions = keepCautions;
    this.required = required;
    this.statuses = this.statusesOf(this.computed(door));
  }

  /** The door at some inputs, computed, or why it is none. */
  at(inputs: readonly InputValue[]): { readonly computed: C } | { readonly reason: string } {
    const changed = changedDoor(this.file, this.door, inputs);
    return changed.ok ? { computed: this.computed(changed.door) } : { reason: changed.reason };
  }

  private computed(door: Door): C {
    const { magnets } = this;
    return this.review.compute(door, {
      door,
      get centring() {
        return magnets.centring(door);
      },
    });
  }

  /** hold.required, s. */
  holdOf(computed: C): number | null {
    return this.required(computed);
  }

  /** Statuses by id of all findings but the timer's. */
  statusesOf(computed: C): Map<string, Status> {
    const statuses = new Map<string, Status>();
    for (const { id, judge } of this.review.concerns) {
      const judged = OF_THE_TIMER.test(id) ? null : judge(computed);
      if (judged !== null) statuses.set(id, judged.status);
    }
    return statuses;
  }

  /** Worth of a candidate. Findings are not asked where its hold cannot better `against` anyway. */
  judge(inputs: readonly InputValue[], against: Worth | null): Judgement {
    const at = this.at(inputs);
    if ("reason" in at) {
      return { barred: NO_DOOR, value: 0, hold: null, bars: [], invalid: at.reason };
    }
    const hold = this.required(at.computed);
    if (hold === null && against !== null && against.barred < NO_HOLD) {
      return { barred: NO_HOLD, value: 0, hold, bars: [], invalid: null };
    }
    if (hold !== null && against !== null && against.barred === 0 && hold >= against.value) {
      return { barred: 0, value: hold, hold, bars: [], invalid: null };
    }
    const bars = this.bars(this.statusesOf(at.computed));
    const barred = bars.length + (hold === null ? NO_HOLD : 0);
    return { barred, value: hold ?? 0, hold, bars, invalid: null };
  }

  /** Ids of the findings that bar a door. */
  private bars(statuses: ReadonlyMap<string, Status>): string[] {
    return [...statuses]
      .filter(
        ([id, status]) =>
          status === "fail" || (this.keepCautions && status === "caution" && this.statuses.get(id) === "ok"),
      )
      .map(([id]) => id);
  }
}

/** Worse than any number of findings. */
const NO_HOLD = 1000;
const NO_DOOR = 1_000_000;
