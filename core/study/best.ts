/**
 * The least hold over some inputs that keeps every finding.
 *
 * Levels: `best-search` (the search) · `best-judge` (a candidate's worth) · `best-binding` (what stops it) · here. The search
 * is local from many starts: what it finds is the best found, and how many starts agree says how far to trust it.
 */
import type { Door } from "../door/door.ts";
import { type DoorFault, doorFault } from "../door/fault.ts";
import type { DoorFile } from "../door/file.ts";
import { getValue } from "../door/path.ts";
import { fieldAt, isNumeric } from "../door/schema.ts";
import { type Binding, bindings } from "./best-binding.ts";
import { BestJudge, type Judgement } from "./best-judge.ts";
import { better, type Found, haltonPlace, MOST_INPUTS, type Place, refined } from "./best-search.ts";
import { checkedAxis, type MapAxis, numericField } from "./map-axis.ts";
import type { InputValue } from "./map-door.ts";
import { MapMagnets } from "./map-magnets.ts";
import type { KnownDoor, Review, Status } from "./map-review.ts";

export interface BestRequest {
  /** The inputs and their ranges; of a whole-number input every value counts, of others the `count` is not used. */
  readonly over: readonly MapAxis[];
  /** A finding that is ok in the door as it stands must stay so; otherwise it may become a caution, never a failure. */
  readonly keepCautions?: boolean;
  /** Places looked at first, and how many of them are searched on from. */
  readonly places?: number;
  readonly starts?: number;
}

export interface BestFound {
  readonly ok: true;
  /** Every finding is kept and the hold exists; otherwise the place that comes nearest. */
  readonly kept: boolean;
  readonly inputs: readonly InputValue[];
  /** hold.required there and in the door as it stands, s. */
  readonly hold: number | null;
  readonly holdBefore: number | null;
  /** Ids of the findings that are not kept. */
  readonly bars: readonly string[];
  /** Findings that are cautions there and were ok before. */
  readonly newCautions: readonly string[];
  readonly starts: number;
  /** Starts that ended within 1 % of the best hold. */
  readonly agreeing: number;
  readonly tried: number;
  /** What happens as each input moves on, both ways. */
  readonly binding: readonly Binding[];
}

export interface BestProgress {
  readonly tried: number;
  readonly hold: number | null;
}

export type BestResult = BestFound | { readonly ok: false; readonly errors: readonly DoorFault[] };

const PLACES_PER_INPUT = 24;
const STARTS = 4;
/** Holds this near are one, as a part of the hold. */
const ALIKE = 0.01;

/** Searches step by step: stop asking, and it has stopped. Deterministic. */
export function* searchBest<C extends KnownDoor>(
  file: DoorFile,
  door: Door,
  request: BestRequest,
  review: Review<C>,
): Generator<BestProgress, BestResult, void> {
  const errors = requestFaults(door, request);
  const figure = review.figures.find(({ name }) => name === "hold.required");
  if (figure === undefined) errors.push(doorFault("of", "a review without hold.required", "one with it"));
  if (errors.length > 0 || figure === undefined) return { ok: false, errors };
  const { over, keepCautions = false, places = PLACES_PER_INPUT * over.length, starts = STARTS } = request;
  const magnets = new MapMagnets(familyRange(over));
  const judge = new BestJudge(file, door, review, magnets, keepCautions, figure.value);
  const inputsAt = (place: Place) => over.map((axis, i) => inputAt(axis, place[i]));
  const holdBefore = figure.value(knownComputed(judge, door, over));
  let tried = 0;
  let best: Found<Judgement> | null = null;
  const worth = (place: Place, against: Judgement | null) => {
    tried++;
    return judge.judge(inputsAt(place), against);
  };
  const note = (found: Found<Judgement>): BestProgress => {
    if (best === null || better(found.worth, best.worth)) best = found;
    return { tried, hold: best.worth.barred === 0 ? best.worth.hold : null };
  };
  const first: Found<Judgement>[] = [];
  for (const place of firstPlaces(over, door, places)) {
    const found = { place, worth: worth(place, null) };
    first.push(found);
    yield note(found);
  }
  const chosen = distinct(first, starts);
  const ends: Found<Judgement>[] = [];
  for (const start of chosen) {
    const search = refined(start, worth);
    for (;;) {
      const { done, value } = search.next();
      yield note(value);
      if (done === true) {
        ends.push(value);
        break;
      }
    }
  }
  const end = best as unknown as Found<Judgement>;
  return report(judge, end, ends, { over, inputsAt, holdBefore, tried });
}

/** Runs a search to its end. */
export function findBest<C extends KnownDoor>(
  file: DoorFile,
  door: Door,
  request: BestRequest,
  review: Review<C>,
): BestResult {
  const search = searchBest(file, door, request, review);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

interface Ending {
  readonly over: readonly MapAxis[];
  readonly inputsAt: (place: Place) => InputValue[];
  readonly holdBefore: number | null;
  readonly tried: number;
}

function report<C extends KnownDoor>(
  judge: BestJudge<C>,
  { place, worth }: Found<Judgement>,
  ends: readonly Found<Judgement>[],
  { over, inputsAt, holdBefore, tried }: Ending,
): BestFound {
  const kept = worth.barred === 0;
  const agree = ({ worth: other }: Found<Judgement>) =>
    other.barred === worth.barred && Math.abs(other.value - worth.value) <= ALIKE * worth.value;
  const inputs = inputsAt(place);
  const at = judge.at(inputs);
  const statuses = "computed" in at ? judge.statusesOf(at.computed) : new Map<string, Status>();
  return {
    ok: true,
    kept,
    inputs,
    hold: worth.hold,
    holdBefore,
    bars: worth.bars,
    newCautions: [...statuses]
      .filter(([id, status]) => status === "caution" && judge.statuses.get(id) === "ok")
      .map(([id]) => id),
    starts: ends.length,
    agreeing: ends.filter(agree).length,
    tried,
    binding: bindings(over, place, (moved) => judge.at(inputsAt(moved)), {
      statuses,
      statusesOf: (computed) => judge.statusesOf(computed),
      holdOf: (computed) => judge.holdOf(computed),
      hold: worth.hold,
    }),
  };
}

/** The door as it stands, by its own inputs. */
function knownComputed<C extends KnownDoor>(judge: BestJudge<C>, door: Door, over: readonly MapAxis[]): C {
  const inputs = over.flatMap(({ key }) => {
    const value = getValue(door, key);
    return value === null ? [] : [{ key, value }];
  });
  const at = judge.at(inputs);
  if ("reason" in at) throw new RangeError(`Door of a search must be valid; received ${at.reason}`);
  return at.computed;
}

/** An input at a place of its range; whole numbers stay whole. */
function inputAt({ key, from, to }: MapAxis, share: number): InputValue {
  const field = fieldAt(key);
  const value = from + (to - from) * share;
  const whole = isNumeric(field) && field.kind === "number" && field.whole;
  return { key, value: whole ? Math.round(value) : share === 1 ? to : value };
}

/** The door as it stands where it lies within the ranges, the middle, and places spread out evenly. */
function firstPlaces(over: readonly MapAxis[], door: Door, count: number): Place[] {
  const own = over.map(({ key, from, to }) => ((getValue(door, key) ?? Number.NaN) - from) / (to - from));
  const spread = Array.from({ length: count }, (_, i) => haltonPlace(i + 1, over.length));
  return own.every((x) => x >= 0 && x <= 1) ? [own, ...spread] : spread;
}

/** Places nearer than this are one start, as a part of the ranges. */
const APART = 0.15;

/** The best places that are not near a better one. */
function distinct(places: readonly Found<Judgement>[], count: number): Found<Judgement>[] {
  const ranked = [...places].sort((a, b) =>
    better(a.worth, b.worth) ? -1 : better(b.worth, a.worth) ? 1 : 0,
  );
  const chosen: Found<Judgement>[] = [];
  for (const place of ranked) {
    const near = (other: Found<Judgement>) =>
      Math.max(...other.place.map((x, i) => Math.abs(x - place.place[i]))) < APART;
    if (!chosen.some(near)) chosen.push(place);
    if (chosen.length === count) break;
  }
  return chosen;
}

const CHEAP = new Set(["magnets.gap", "magnets.remanence", "magnets.temperature"]);

/** See `MapMagnets`: a family pays where every candidate has magnets of one form. */
function familyRange(over: readonly MapAxis[]): { low: number; high: number } | "fixed" | null {
  const formKey = ({ key }: MapAxis) =>
    (key.startsWith("magnets.") && !CHEAP.has(key)) || key === "hinge.stopAngle";
  if (over.some(formKey)) return null;
  const gap = over.find(({ key }) => key === "magnets.gap");
  if (gap !== undefined) return { low: Math.min(gap.from, gap.to), high: Math.max(gap.from, gap.to) };
  return over.some(({ key }) => CHEAP.has(key)) ? "fixed" : null;
}

function requestFaults(door: Door, { over }: BestRequest): DoorFault[] {
  if (over.length === 0 || over.length > MOST_INPUTS) {
    return [doorFault("over", `${over.length} inputs`, `from 1 to ${MOST_INPUTS}`)];
  }
  const keys = over.map(({ key }) => key);
  const twice = keys.find((key, i) => keys.indexOf(key) !== i);
  if (twice !== undefined) return [doorFault("over", `"${twice}" twice`, "different inputs")];
  return over.flatMap((axis) => {
    const field = numericField(axis.key, door);
    if ("message" in field) return [field];
    const checked = checkedAxis(axis, field);
    return checked.ok ? [] : [checked.error];
  });
}
