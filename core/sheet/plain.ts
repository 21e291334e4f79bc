/** Dimensions and hatches taken apart into lines, arrows and text, so that every renderer draws the same. */
import {
  type DimensionLine,
  filled,
  type Hatch,
  line,
  type PlainPrimitive,
  type Point,
  type Primitive,
  text,
} from "./drawing.ts";
import { textWidth } from "./text-width.ts";

/** Drafting habits of ISO 129, mm: gap to the feet, overshoot, arrow length and half width. */
const FOOT_GAP = 0.8;
const OVERSHOOT = 1.4;
const ARROW = 2.2;
const ARROW_HALF = 0.4;
/** From a dimension line up to its text's baseline, mm. */
const LIFT = 0.8;

export function plainPrimitives(items: readonly Primitive[]): PlainPrimitive[] {
  return items.flatMap((item) => {
    if (item.kind === "dimension") return dimensionParts(item);
    return item.kind === "hatch" ? hatchLines(item) : [item];
  });
}

/** In the frame of the dimension: `u` along it, `v` across. */
function dimensionParts(d: DimensionLine): PlainPrimitive[] {
  const place = (u: number, v: number): Point => (d.along === "x" ? [u, v] : [v, u]);
  const [u1, v1] = d.along === "x" ? d.from : [d.from[1], d.from[0]];
  const [u2, v2] = d.along === "x" ? d.to : [d.to[1], d.to[0]];
  const [low, high] = u1 <= u2 ? [u1, u2] : [u2, u1];
  const inside = high - low >= 2 * ARROW + 1;
  const parts: PlainPrimitive[] = [extension(place, u1, v1, d.at), extension(place, u2, v2, d.at)].flat();
  const reach = inside ? 0 : 2 * ARROW;
  parts.push(line(place(low - reach, d.at), place(high + reach, d.at)));
  parts.push(arrow(place, low, d.at, inside ? 1 : -1), arrow(place, high, d.at, inside ? -1 : 1));
  parts.push(label(d, low, high, inside));
  return parts;
}

function extension(
  place: (u: number, v: number) => Point,
  u: number,
  foot: number,
  at: number,
): PlainPrimitive[] {
  const way = Math.sign(at - foot);
  if (Math.abs(at - foot) <= FOOT_GAP) return [];
  return [line(place(u, foot + way * FOOT_GAP), place(u, at + way * OVERSHOOT))];
}

/** An arrow whose point is at u; its shaft lies towards `way`. */
function arrow(place: (u: number, v: number) => Point, u: number, at: number, way: number): PlainPrimitive {
  return filled([
    place(u, at),
    place(u + way * ARROW, at - ARROW_HALF),
    place(u + way * ARROW, at + ARROW_HALF),
  ]);
}

/** Above the line where it fits between the arrows, else beyond its far end. Upright dimensions read from the right. */
function label(d: DimensionLine, low: number, high: number, inside: boolean): PlainPrimitive {
  const width = textWidth(d.text, d.size);
  const fits = inside && width <= high - low - 1;
  const turned = d.along === "y";
  if (fits) {
    const middle = (low + high) / 2;
    const at: Point = turned ? [d.at - LIFT, middle] : [middle, d.at - LIFT];
    return text(at, d.text, {
      size: d.size,
      anchor: "middle",
      clear: true,
      ...(turned ? { turn: -Math.PI / 2 } : {}),
    });
  }
  const style = { size: d.size, clear: true, anchor: d.before === true ? "end" : "start" } as const;
  const way = d.before === true ? -1 : 1;
  // Level text beside a short upright dimension, which has no room along it.
  if (turned) return text([d.at + way * 1.2, (low + high) / 2 + d.size * 0.35], d.text, style);
  const beyond = 2 * ARROW + 0.8;
  return text([d.before === true ? low - beyond : high + beyond, d.at + d.size * 0.35], d.text, style);
}

/** Lines over a simple polygon, spaced evenly, by the even-odd rule. */
function hatchLines({ points, spacing, turn }: Hatch): PlainPrimitive[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const turned = points.map(([x, y]): Point => [x * cos + y * sin, -x * sin + y * cos]);
  const back = ([u, v]: Point): Point => [u * cos - v * sin, u * sin + v * cos];
  const heights = turned.map((p) => p[1]);
  const last = Math.max(...heights);
  const lines: PlainPrimitive[] = [];
  for (let v = (Math.floor(Math.min(...heights) / spacing) + 0.5) * spacing; v < last; v += spacing) {
    const hits = crossings(turned, v);
    for (let i = 0; i + 1 < hits.length; i += 2) lines.push(line(back([hits[i], v]), back([hits[i + 1], v])));
  }
  return lines;
}

function crossings(points: readonly Point[], v: number): number[] {
  const hits: number[] = [];
  points.forEach(([x1, y1], i) => {
    const [x2, y2] = points[(i + 1) % points.length];
    if (y1 > v !== y2 > v) hits.push(x1 + ((v - y1) / (y2 - y1)) * (x2 - x1));
  });
  return hits.sort((a, b) => a - b);
}
