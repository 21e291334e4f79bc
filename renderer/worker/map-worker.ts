/** A map's own thread: computes point by point, coarse to fine, and tells them in batches. Cut short by ending the thread. */
import { readDoor } from "../../core/door/read-door.ts";
import { studyView } from "../../core/review/study-view.ts";
import { words } from "../../core/review/words.ts";
import { doorMap, type MapValue } from "../../core/study/map.ts";
import { parseAxis } from "../../core/study/map-axis.ts";
import type { MapAnswer, MapOrder } from "./map-messages.ts";

const BATCH = 8;

function* answers({ text, x, y, of, units }: MapOrder): Generator<MapAnswer> {
  const read = readDoor(text);
  if (!read.ok) return yield { kind: "refused", reasons: read.errors.map(({ message }) => message) };
  const axes = [x, ...(y === null ? [] : [y])].map((axis) => parseAxis(axis, read.door));
  const wrong = axes.flatMap((axis) => (axis.ok ? [] : [axis.error.message]));
  if (wrong.length > 0) return yield { kind: "refused", reasons: wrong };
  const [ax, ay] = axes.flatMap((axis) => (axis.ok ? [axis.axis] : []));
  const request = { x: ax, y: ay ?? null, of };
  const made = doorMap(read.file, read.door, request, studyView(words(units)));
  if (!made.ok) return yield { kind: "refused", reasons: made.errors.map(({ message }) => message) };
  yield { kind: "begun", request, subject: made.map.subject };
  let points: [number, MapValue | null][] = [];
  for (const point of made.map.points()) {
    points.push([point.y * ax.count + point.x, point.value]);
    if (points.length < BATCH) continue;
    yield { kind: "points", points };
    points = [];
  }
  yield { kind: "points", points };
  yield { kind: "done" };
}

self.onmessage = ({ data }: MessageEvent<MapOrder>): void => {
  for (const answer of answers(data)) (self as unknown as Worker).postMessage(answer);
};
