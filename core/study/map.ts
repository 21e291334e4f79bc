/**
 * A figure or a verdict over one or two inputs of a door.
 *
 * Levels: `map-axis` (a range as text and as values) · `map-order` (coarse to fine) · `map-door` (the door at a point) ·
 * `map-magnets` (cheap magnet tables) · `map-review` (what computes and judges a door) · here (the map) · `map-table`
 * (the map as a table).
 */
import type { Door } from "../door/door.ts";
import { type DoorFault, doorFault } from "../door/fault.ts";
import type { DoorFile } from "../door/file.ts";
import { nearestName } from "../door/nearest.ts";
import { axisValue, checkedAxis, type MapAxis, numericField } from "./map-axis.ts";
import { changedDoor } from "./map-door.ts";
import { MapMagnets } from "./map-magnets.ts";
import { type GridPoint, gridOrder } from "./map-order.ts";
import type { Concern, Figure, KnownDoor, Review, Status } from "./map-review.ts";

/** What is asked for, as plain data. */
export interface MapRequest {
  readonly x: MapAxis;
  /** `null` for a map over one input. */
  readonly y: MapAxis | null;
  /** Name of a result ("swing.settleTime") or id of a finding ("wind.gust"). */
  readonly of: string;
}

/** What a map shows: a number with its unit, or a status. */
export interface MapSubject {
  readonly name: string;
  readonly kind: "result" | "finding";
  /** SI; "1" for a plain number and for a status. */
  readonly unit: string;
  readonly title: string;
}

export type MapValue = number | Status;

export interface MapPoint extends GridPoint {
  /** `null` where the door has no such figure, or is no door. */
  readonly value: MapValue | null;
  /** Why this point is no door, a sentence; `null` where it is one. */
  readonly invalid: string | null;
}

/** Most points of a map. */
export const MOST_POINTS = 1_000_000;

/** One point's value out of a computed door. */
type Reading<C> = (computed: C) => MapValue | null;

/** A map ready to be computed point by point, in any order and in parts: each worker makes its own. */
export class DoorMap<C extends KnownDoor> {
  readonly request: MapRequest;
  readonly subject: MapSubject;
  /** Every point once, coarse to fine. */
  readonly order: readonly GridPoint[];
  private readonly file: DoorFile;
  private readonly door: Door;
  private readonly review: Review<C>;
  private readonly read: Reading<C>;
  private readonly magnets: MapMagnets;

  constructor(
    file: DoorFile,
    door: Door,
    request: MapRequest,
    review: Review<C>,
    subject: MapSubject,
    read: Reading<C>,
  ) {
    this.file = file;
    this.door = door;
    this.request = request;
    this.review = review;
    this.subject = subject;
    this.read = read;
    this.order = gridOrder(request.x.count, request.y?.count ?? 1);
    this.magnets = new MapMagnets(familyRange(request));
  }

  /** The point at a place of `order`. */
  point(place: number): MapPoint {
    const at = this.order[place];
    const { x, y } = this.request;
    const inputs = [{ key: x.key, value: axisValue(x, at.x) }];
    if (y !== null) inputs.push({ key: y.key, value: axisValue(y, at.y) });
    const changed = changedDoor(this.file, this.door, inputs);
    if (!changed.ok) return { ...at, value: null, invalid: changed.reason };
    return {
      ...at,
      value: this.read(this.review.compute(changed.door, this.known(changed.door))),
      invalid: null,
    };
  }

  /** The door's magnets, made only if they are asked for. */
  private known(door: Door): KnownDoor {
    const { magnets } = this;
    return {
      door,
      get centring() {
        return magnets.centring(door);
      },
    };
  }

  /** The points from one place of `order` to before another, one at a time: stop asking, and it has stopped. */
  *points(from = 0, to = this.order.length): Generator<MapPoint, void, void> {
    for (let place = from; place < Math.min(to, this.order.length); place++) yield this.point(place);
  }
}

/** What a family of magnet tables has to cover: all gaps that a map asks for; see `MapMagnets`. */
function familyRange({ x, y }: MapRequest): { low: number; high: number } | "fixed" | null {
  const axes = y === null ? [x] : [x, y];
  const gap = axes.find(({ key }) => key === "magnets.gap");
  if (gap !== undefined) return { low: Math.min(gap.from, gap.to), high: Math.max(gap.from, gap.to) };
  const strength = axes.some(({ key }) => key === "magnets.remanence" || key === "magnets.temperature");
  return strength ? "fixed" : null;
}

export type MapMade<C extends KnownDoor> =
  | { readonly ok: true; readonly map: DoorMap<C> }
  | { readonly ok: false; readonly errors: readonly DoorFault[] };

/** Makes a map of a door that was read from `file`, or tells everything that is wrong with the request. */
export function doorMap<C extends KnownDoor>(
  file: DoorFile,
  door: Door,
  request: MapRequest,
  review: Review<C>,
): MapMade<C> {
  const axes = request.y === null ? [request.x] : [request.x, request.y];
  const errors = axes.flatMap((axis) => axisFaults(axis, door));
  if (errors.length === 0) errors.push(...gridFaults(request));
  const figure = review.figures.find(({ name }) => name === request.of);
  const concern = review.concerns.find(({ id }) => id === request.of);
  if (figure === undefined && concern === undefined) errors.push(unknownSubject(request.of, review));
  if (errors.length > 0) return { ok: false, errors };
  const { subject, read } = figure === undefined ? ofConcern(concern as Concern<C>) : ofFigure(figure);
  return { ok: true, map: new DoorMap(file, door, request, review, subject, read) };
}

function axisFaults(axis: MapAxis, door: Door): DoorFault[] {
  const field = numericField(axis.key, door);
  if ("message" in field) return [field];
  const checked = checkedAxis(axis, field);
  return checked.ok ? [] : [checked.error];
}

function gridFaults({ x, y }: MapRequest): DoorFault[] {
  if (y === null) return [];
  const points = x.count * y.count;
  const faults: DoorFault[] = [];
  if (x.key === y.key) {
    faults.push(doorFault("range", `"${x.key}" along both axes`, "two different inputs"));
  }
  if (points > MOST_POINTS) faults.push(doorFault("range", `${points} points`, `at most ${MOST_POINTS}`));
  return faults;
}

function unknownSubject<C extends KnownDoor>(of: string, review: Review<C>): DoorFault {
  const names = [...review.figures.map(({ name }) => name), ...review.concerns.map(({ id }) => id)];
  const near = nearestName(of, names);
  const hint = near === undefined ? "" : `; the nearest is "${near}"`;
  const expected = `the name of a result, such as "swing.settleTime", or of a finding${hint}`;
  return doorFault("of", `"${of.slice(0, 60)}"`, expected);
}

function ofFigure<C>({ name, unit, title, value }: Figure<C>): { subject: MapSubject; read: Reading<C> } {
  return { subject: { name, kind: "result", unit, title }, read: value };
}

function ofConcern<C>({ id, concern, judge }: Concern<C>): { subject: MapSubject; read: Reading<C> } {
  return {
    subject: { name: id, kind: "finding", unit: "1", title: concern },
    read: (computed) => judge(computed)?.status ?? null,
  };
}
