/** A map as rows and as text: the whole grid in the order of its axes, however it was computed. */
import type { MapPoint, MapRequest, MapSubject, MapValue } from "./map.ts";
import { axisUnit, axisValue } from "./map-axis.ts";

/** A map as plain data, filled point by point. */
export interface MapTable {
  readonly request: MapRequest;
  readonly subject: MapSubject;
  /** x fastest; `undefined` not computed yet, `null` absent. */
  readonly values: (MapValue | null | undefined)[];
  /** Why a point is no door, by its place in `values`. */
  readonly invalid: Map<number, string>;
}

export function emptyMapTable(request: MapRequest, subject: MapSubject): MapTable {
  const size = request.x.count * (request.y?.count ?? 1);
  return { request, subject, values: new Array(size).fill(undefined), invalid: new Map() };
}

/** Puts a computed point in its place. */
export function addPoint(table: MapTable, point: MapPoint): void {
  const place = point.y * table.request.x.count + point.x;
  table.values[place] = point.value;
  if (point.invalid !== null) table.invalid.set(place, point.invalid);
}

/**
 * The table as CSV (RFC 4180, a line feed at each line's end): a header with the units, one row per point, x fastest, SI.
 * An absent value is an empty field; the note says where the point is no door.
 */
export function mapCsv({ request, subject, values, invalid }: MapTable): string {
  const { x, y } = request;
  const headed = (name: string, unit: string) => csvField(unit === "1" ? name : `${name} (${unit})`);
  const axes = y === null ? [x] : [x, y];
  const header = [...axes.map(({ key }) => headed(key, axisUnit(key))), headed(subject.name, subject.unit)];
  const rows = values.map((value, place) => {
    const inputs = [axisValue(x, place % x.count)];
    if (y !== null) inputs.push(axisValue(y, Math.floor(place / x.count)));
    return [...inputs.map(numberText), valueText(value), csvField(invalid.get(place) ?? "")].join(",");
  });
  return [[...header, "note"].join(","), ...rows, ""].join("\n");
}

/** Digits of a computed number: more than any part is known to, less than rounding noise. */
const DIGITS = 12;

function numberText(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}

function valueText(value: MapValue | null | undefined): string {
  if (value === null || value === undefined) return "";
  return typeof value === "number" ? numberText(value) : value;
}

function csvField(text: string): string {
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
