/** What stops an input at the best place: what each step on, either way, would cost. */

import type { Place } from "./best-search.ts";
import type { MapAxis } from "./map-axis.ts";
import type { Status } from "./map-review.ts";

/** One finding that gets worse. */
export interface Worse {
  readonly id: string;
  readonly from: Status | null;
  readonly to: Status | null;
}

/** One input moved on one way from the best place. */
export interface Binding {
  readonly key: string;
  readonly direction: "up" | "down";
  /** The value to which it was moved, SI; `null` where its range ends here. */
  readonly at: number | null;
  /** What stops it: its range, the door's own rules, findings that get worse, a longer hold, or nothing within the range. */
  readonly stops: "range" | "no door" | "findings" | "longer hold" | "nothing";
  readonly worse: readonly Worse[];
  /** hold.required there, s. */
  readonly hold: number | null;
  /** Why it is no door there. */
  readonly invalid: string | null;
}

/** Steps that are tried, as parts of the range: the first that changes something is told. */
const STEPS = [1 / 512, 1 / 128, 1 / 32, 1 / 8];
/** A hold longer by less than this part is the same. */
const SAME = 1e-3;

interface Best<C> {
  readonly statuses: ReadonlyMap<string, Status>;
  readonly statusesOf: (computed: C) => ReadonlyMap<string, Status>;
  readonly holdOf: (computed: C) => number | null;
  readonly hold: number | null;
}

/** Every input moved on both ways. Of several effects the first met counts, a finding before a longer hold. */
export function bindings<C>(
  over: readonly MapAxis[],
  place: Place,
  at: (place: Place) => { readonly computed: C } | { readonly reason: string },
  best: Best<C>,
): Binding[] {
  return over.flatMap((axis, i) =>
    (["up", "down"] as const).map((direction) => {
      const rises = axis.to > axis.from;
      const sign = (direction === "up") === rises ? 1 : -1;
      return moved(axis, i, direction, sign, place, at, best);
    }),
  );
}

function moved<C>(
  axis: MapAxis,
  i: number,
  direction: "up" | "down",
  sign: number,
  place: Place,
  at: (place: Place) => { readonly computed: C } | { readonly reason: string },
  best: Best<C>,
): Binding {
  const nothing = { key: axis.key, direction, worse: [], hold: best.hold, invalid: null };
  let last: Binding = { ...nothing, at: null, stops: "range" };
  for (const step of STEPS) {
    const x = place[i] + sign * step;
    if (x < 0 || x > 1) break;
    const value = axis.from + (axis.to - axis.from) * x;
    const there = at(place.map((old, j) => (j === i ? x : old)));
    if ("reason" in there)
      return { ...nothing, at: value, stops: "no door", hold: null, invalid: there.reason };
    const hold = best.holdOf(there.computed);
    const worse = worsened(best.statuses, best.statusesOf(there.computed));
    if (worse.length > 0) return { ...nothing, at: value, stops: "findings", worse, hold };
    if (isLonger(hold, best.hold)) return { ...nothing, at: value, stops: "longer hold", hold };
    last = { ...nothing, at: value, stops: "nothing", hold };
  }
  return last;
}

function isLonger(hold: number | null, than: number | null): boolean {
  if (hold === null) return than !== null;
  return than !== null && hold > than * (1 + SAME);
}

const SEVERITY: Readonly<Record<Status, number>> = { ok: 0, caution: 1, fail: 2 };

function worsened(before: ReadonlyMap<string, Status>, after: ReadonlyMap<string, Status>): Worse[] {
  return [...after]
    .filter(([id, status]) => SEVERITY[status] > SEVERITY[before.get(id) ?? "ok"])
    .map(([id, to]) => ({ id, from: before.get(id) ?? null, to }));
}
