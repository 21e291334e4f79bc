/**
 * One of the threads of a map: computes its share of the points, coarse to fine, and tells them in batches. Cut short by ending
 * the thread.
 */
import { readDoor } from "../../core/door/read-door.ts";
import { studyView } from "../../core/review/study-view.ts";
import { words } from "../../core/review/words.ts";
import { doorMap, type MapValue } from "../../core/study/map.ts";
import { parseAxis } from "../../core/study/map-axis.ts";
import { withSampled } from "../../core/study/sampled-figures.ts";
import type { MapAnswer, MapOrder } from "./map-messages.ts";

/** Points are told this often, ms: a picture that grows, without a drawing for each point. */
const TELL_EVERY = 80;

function* answers({ text, x, y, of, units, share }: MapOrder): Generator<MapAnswer> {
  const read = readDoor(text);
  if (!read.ok) return yield { kind: "refused", reasons: read.errors.map(({ message }) => message) };
  const axes = [x, ...(y === null ? [] : [y])].map((axis) => parseAxis(axis, read.door));
  const wrong = axes.flatMap((axis) => (axis.ok ? [] : [axis.error.message]));
  if (wrong.length > 0) return yield { kind: "refused", reasons: wrong };
  const [ax, ay] = axes.flatMap((axis) => (axis.ok ? [axis.axis] : []));
  const request = { x: ax, y: ay ?? null, of };
  const made = doorMap(read.file, read.door, request, withSampled(studyView(words(units))));
  if (!made.ok) return yield { kind: "refused", reasons: made.errors.map(({ message }) => message) };
  yield { kind: "begun", request, subject: made.map.subject };
  let points: [number, MapValue | null][] = [];
  let told = performance.now();
  for (let place = share.first; place < made.map.order.length; place += share.of) {
    const point = made.map.point(place);
    points.push([point.y * ax.count + point.x, point.value]);
    if (performance.now() - told < TELL_EVERY) continue;
    yield { kind: "points", points };
    points = [];
    told = performance.now();
  }
  yield { kind: "points", points };
  yield { kind: "done" };
}

self.onmessage = ({ data }: MessageEvent<MapOrder>): void => {
  for (const answer of answers(data)) (self as unknown as Worker).postMessage(answer);
};
