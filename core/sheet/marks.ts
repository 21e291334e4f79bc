/** Marks that several drawings share: magnets in their pockets, poles, centre crosses, blocks of words. */

import type { Pocket } from "./door-plan.ts";
import {
  type Anchor,
  circle,
  filled,
  line,
  type Point,
  type Primitive,
  rectangle,
  type Sketch,
  type TextStyle,
  text,
} from "./drawing.ts";
import { lineWords } from "./line-words.ts";
import { textWidth } from "./text-width.ts";

/** From plan to drawing, mm. */
export type Place = (x: number, y: number) => Point;

export function centreCross([x, y]: Point, reach: number): Primitive[] {
  return [line([x - reach, y], [x + reach, y]), line([x, y - reach], [x, y + reach])];
}

/** A straight arrow with a filled head at `to`. */
export function arrowLine(from: Point, to: Point, head = 2.4): Primitive[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const neck: Point = [to[0] - ux * head, to[1] - uy * head];
  const half = head * 0.32;
  return [
    line(from, neck),
    filled([to, [neck[0] - uy * half, neck[1] + ux * half], [neck[0] + uy * half, neck[1] - ux * half]]),
  ];
}

/** A pocket bored into an edge, seen across its axis: pocket dashed, magnet within, its axis, and an arrow towards its N pole. */
export function pocketAcross(sketch: Sketch, pocket: Pocket, place: Place): void {
  const [lx, ly] = pocket.looks;
  const half = pocket.diameter / 2;
  const box = (from: number, to: number) => {
    // `from` and `to` run along the axis, from the working face; positive is into the material.
    const a = place(pocket.x - lx * from - ly * half, pocket.y - ly * from - lx * half);
    const b = place(pocket.x - lx * to + ly * half, pocket.y - ly * to + lx * half);
    return rectangle(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]));
  };
  if (pocket.depth > 0) sketch.on("HIDDEN", box(-pocket.recess, pocket.thickness));
  sketch.on("MAGNETS", box(0, pocket.thickness));
  const axis = (s: number) => place(pocket.x - lx * s, pocket.y - ly * s);
  sketch.on("CENTRE", line(axis(-pocket.recess - 4), axis(pocket.thickness + 5)));
  poleArrow(sketch, pocket, axis);
}

/** Behind the pocket, within the material, its head towards N. The words stand behind it on the flap, above the pocket on the frame. */
function poleArrow(sketch: Sketch, pocket: Pocket, axis: (s: number) => Point): void {
  const near = pocket.thickness + 5;
  const far = near + 8;
  const [tail, head] = pocket.shows === "N" ? [axis(far), axis(near)] : [axis(near), axis(far)];
  sketch.on("POLARITY", ...arrowLine(tail, head, 3));
  const [lx, ly] = pocket.looks;
  const words = `${pocket.shows} faces the gap`;
  const style = { strong: true, clear: true } as const;
  if (ly !== 0) {
    const [x, y] = axis((near + far) / 2);
    sketch.on("POLARITY", text([x + 2.5, y + 1], words, style));
  } else if (pocket.on === "flap") {
    const [x, y] = axis(far + 2);
    sketch.on("POLARITY", text([x, y + 1], words, { ...style, anchor: lx > 0 ? "end" : "start" }));
  } else {
    const [x, y] = axis(-pocket.recess);
    sketch.on(
      "POLARITY",
      text([x - lx * 1.5, y - pocket.diameter / 2 - 2.2], words, {
        ...style,
        anchor: lx > 0 ? "end" : "start",
      }),
    );
  }
}

/** A pocket seen along its axis: what to drill, and beside it the pole that shows in it. */
export function pocketFace(sketch: Sketch, pocket: Pocket, at: Point, words: Point, anchor: Anchor): void {
  const radius = pocket.diameter / 2;
  sketch.on(pocket.depth > 0 ? "DRILL" : "MAGNETS", circle(at, radius));
  sketch.on("CENTRE", ...centreCross(at, radius + 2.5));
  sketch.on("POLARITY", text(words, `${pocket.shows} faces you`, { anchor, strong: true, clear: true }));
}

/** Lines of words, the first at `at`. */
export function lines(
  at: Point,
  words: readonly string[],
  style: TextStyle = {},
  leading = 1.45,
): Primitive[] {
  const size = style.size ?? 2.8;
  return words.map((one, i) => text([at[0], at[1] + i * size * leading], one, style));
}

/** Words broken into lines that fit a width, mm. */
export function fitted(words: string, width: number, size: number, strong = false): string[] {
  const found: string[] = [];
  let line = "";
  for (const word of lineWords(words)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, strong) > width) {
      found.push(line);
      line = word;
    } else line = longer;
  }
  found.push(line);
  return found;
}

/** Places along the width, the nearest first, so that dimension lines on one side can be stacked. */
export function stackedPlaces(pockets: readonly Pocket[]): readonly Pocket[] {
  return [...pockets].sort((a, b) => Math.abs(a.x) - Math.abs(b.x) || b.x - a.x);
}
