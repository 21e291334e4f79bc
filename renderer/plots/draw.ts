/** Draws a figure with any pen: the whole of it for files, the picture alone where the page has title and legend of its own. */
import { DASHES, type Dash, type Figure, type Fill, type Ink, stacked } from "./figure.ts";
import type { Lettering, Pen } from "./pen.ts";
import { axisTicks } from "./ticks.ts";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a picture's inside lies in a drawing, and how its values are placed there. */
export interface Frame extends Box {
  readonly toX: (value: number) => number;
  readonly toY: (value: number) => number;
}

export function frameOf(figure: Pick<Figure, "x" | "y">, box: Box): Frame {
  const { x, y } = figure;
  return {
    ...box,
    toX: (value) => box.x + ((value - x.from) / (x.to - x.from)) * box.width,
    toY: (value) => box.y + box.height - ((value - y.from) / (y.to - y.from)) * box.height,
  };
}

/** Room for ticks and axis labels about a picture with letters of `size` px. */
export function innerBox(width: number, height: number, size: number, top = 0): Box {
  const left = 5 * size;
  const bottom = 3.2 * size;
  const above = top + 0.8 * size;
  return { x: left, y: above, width: width - left - size, height: height - above - bottom };
}

const lettering = (size: number, change: Partial<Lettering> = {}): Lettering => {
  return { ink: "ink-soft", size, weight: 420, anchor: "middle", upright: false, ...change };
};

/** Ground, axes and everything in the picture. */
export function drawPicture(pen: Pen, figure: Figure, box: Box, size: number): void {
  const frame = frameOf(figure, box);
  pen.rect(box.x, box.y, box.width, box.height, "well", 1);
  drawAxes(pen, figure, frame, size);
  pen.clip(box.x, box.y, box.width, box.height);
  drawUnder(pen, figure, frame);
  for (const line of figure.lines) {
    const points = pointsOf(line.x ?? figure.values, line.values, frame);
    pen.line(points, { ink: line.ink, width: line.width, dash: line.dash });
  }
  pen.unclip();
  drawMarks(pen, figure, frame, size);
  for (const { x, y, shape } of figure.points) pen.dot(frame.toX(x), frame.toY(y), 4, "ink", shape);
}

/** What lies under the lines: bands and areas. */
export function drawUnder(pen: Pen, figure: Figure, frame: Frame): void {
  drawBands(pen, figure, frame);
  drawAreas(pen, figure, frame);
}

function drawAxes(pen: Pen, { x, y }: Figure, frame: Frame, size: number): void {
  const right = frame.x + frame.width;
  const bottom = frame.y + frame.height;
  const grid = { ink: "line", width: 1, dash: DASHES.solid } as const;
  for (const { value, text } of axisTicks(x, frame.width / (4 * size))) {
    pen.line([frame.toX(value), frame.y, frame.toX(value), bottom], grid);
    pen.text(frame.toX(value), bottom + 1.3 * size, text, lettering(size));
  }
  for (const { value, text } of axisTicks(y, frame.height / (2.2 * size))) {
    pen.line([frame.x, frame.toY(value), right, frame.toY(value)], grid);
    pen.text(frame.x - 0.5 * size, frame.toY(value) + 0.35 * size, text, lettering(size, { anchor: "end" }));
  }
  pen.text(frame.x + frame.width / 2, bottom + 2.7 * size, axisLabel(x), lettering(size));
  pen.text(1.1 * size, frame.y + frame.height / 2, axisLabel(y), lettering(size, { upright: true }));
  const strong = { ink: "line-strong", width: 1, dash: DASHES.solid } as const;
  pen.line([frame.x, frame.y, frame.x, bottom, right, bottom], strong);
}

/** "angle (°)". */
export function axisLabel({ label, unit }: { label: string; unit: string }): string {
  return unit === "" ? label : `${label} (${unit})`;
}

function drawBands(pen: Pen, { bands }: Figure, frame: Frame): void {
  for (const { axis, from, to, ink } of bands) {
    const edge = { ink, width: 1, dash: DASHES.dash } as const;
    if (axis === "x") {
      const [left, right] = [frame.toX(from), frame.toX(to)];
      pen.rect(left, frame.y, right - left, frame.height, ink, 0.2);
      for (const x of [left, right]) pen.line([x, frame.y, x, frame.y + frame.height], edge);
    } else {
      const [top, bottom] = [frame.toY(to), frame.toY(from)];
      pen.rect(frame.x, top, frame.width, bottom - top, ink, 0.2);
      for (const y of [top, bottom]) pen.line([frame.x, y, frame.x + frame.width, y], edge);
    }
  }
}

function drawAreas(pen: Pen, figure: Figure, frame: Frame): void {
  const { values, layers, eitherWay } = figure;
  let below: ArrayLike<number> = new Float64Array(values.length);
  stacked(layers).forEach((edge, i) => {
    const points = between(values, below, edge, frame);
    pen.area(points, layers[i].ink, layers[i].fill);
    pen.line(pointsOf(values, edge, frame), { ink: layers[i].ink, width: 1.2, dash: DASHES.solid });
    below = edge;
  });
  for (const { values: size, ink, fill } of eitherWay) {
    pen.area(
      between(
        values,
        Array.from(size, (value) => -value),
        size,
        frame,
      ),
      ink,
      fill,
    );
  }
}

/** Outline between a lower and an upper edge. */
function between(
  x: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
  frame: Frame,
): number[] {
  const there = pointsOf(x, high, frame);
  const back = pointsOf(x, low, frame);
  const points = [...there];
  for (let i = back.length - 2; i >= 0; i -= 2) points.push(back[i], back[i + 1]);
  return points;
}

/** Shorter moves than this are left out of a line, px. */
const FINE = 0.5;

/** A curve's points in the frame; those too close to the one before are left out, the last one stays. */
export function pointsOf(x: ArrayLike<number>, y: ArrayLike<number>, frame: Frame): number[] {
  const points: number[] = [];
  const count = Math.min(x.length, y.length);
  let px = Number.NaN;
  let py = Number.NaN;
  for (let i = 0; i < count; i++) {
    const nx = frame.toX(x[i]);
    const ny = frame.toY(y[i]);
    const close = Math.abs(nx - px) < FINE && Math.abs(ny - py) < FINE;
    if (close && i < count - 1) continue;
    points.push(nx, ny);
    px = nx;
    py = ny;
  }
  return points;
}

/** Named moments, over everything. */
export function drawMarks(pen: Pen, { marks }: Figure, frame: Frame, size: number): void {
  marks.forEach(({ x, label }, i) => {
    const at = frame.toX(x);
    if (at < frame.x - 0.5 || at > frame.x + frame.width + 0.5) return;
    pen.line([at, frame.y, at, frame.y + frame.height], { ink: "line-strong", width: 1, dash: DASHES.dot });
    const toLeft = at > frame.x + frame.width - 5 * size || i < marks.length - 1;
    const letters = lettering(size, { anchor: toLeft ? "end" : "start", ink: "ink-soft" });
    const y = frame.y + (1.3 + 1.3 * (i % 2)) * size;
    // Letters are half as wide as high, and a little more.
    const wide = 0.58 * size * label.length;
    pen.rect(
      at + (toLeft ? -wide - 0.35 * size : 0.35 * size),
      y - 0.95 * size,
      wide,
      1.25 * size,
      "well",
      0.75,
    );
    pen.text(at + (toLeft ? -0.35 : 0.35) * size, y, label, letters);
  });
}

/** One entry of a legend: a stroke, or a filled area. */
export type LegendEntry = { readonly label: string; readonly ink: Ink } & (
  | { readonly kind: "line"; readonly dash: Dash; readonly width: number }
  | { readonly kind: "area"; readonly fill: Fill }
);

/** What a figure shows, in the order it is drawn; layers from the top down. */
export function legendOf({ lines, layers, bands, eitherWay }: Figure): LegendEntry[] {
  const strokes = lines
    .filter(({ label }) => label !== "")
    .map(({ label, ink, dash, width }): LegendEntry => ({ kind: "line", label, ink, dash, width }));
  const areas = [...[...layers].reverse(), ...eitherWay].map(
    ({ label, ink, fill }): LegendEntry => ({ kind: "area", label, ink, fill }),
  );
  const across = bands.map(({ label, ink }): LegendEntry => ({ kind: "area", label, ink, fill: "even" }));
  return [...strokes, ...areas, ...across];
}

function drawSwatch(pen: Pen, entry: LegendEntry, { x, y, width, height }: Box): void {
  if (entry.kind === "line") {
    const { ink, dash, width: stroke } = entry;
    pen.line([x, y + height / 2, x + width, y + height / 2], { ink, dash, width: stroke });
  } else {
    pen.area([x, y, x + width, y, x + width, y + height, x, y + height], entry.ink, entry.fill);
  }
}

/** A figure for a file: title, legend, picture. `measure` tells how wide a text of `size` px is. */
export function drawFigure(
  pen: Pen,
  figure: Figure,
  width: number,
  height: number,
  size: number,
  measure: (text: string) => number,
): void {
  pen.rect(0, 0, width, height, "bench", 1);
  pen.text(
    size,
    1.9 * size,
    figure.title,
    lettering(1.25 * size, { anchor: "start", weight: 620, ink: "ink" }),
  );
  pen.text(width - size, 1.9 * size, figure.note, lettering(size, { anchor: "end" }));
  const bottom = drawLegend(pen, figure, width, size, measure);
  drawPicture(pen, figure, innerBox(width, height, size, bottom), size);
}

/** Entries side by side under the title, in as many rows as they need; answers where they end. */
function drawLegend(
  pen: Pen,
  figure: Figure,
  width: number,
  size: number,
  measure: (text: string) => number,
): number {
  const swatch = 2 * size;
  let x = size;
  let y = 3.6 * size;
  for (const entry of legendOf(figure)) {
    const { label } = entry;
    // A written SVG may be shown in a wider face than the one measured here.
    const wide = swatch + 0.5 * size + 1.12 * measure(label);
    if (x > size && x + wide > width - size) {
      x = size;
      y += 1.6 * size;
    }
    drawSwatch(pen, entry, { x, y: y - 0.85 * size, width: swatch, height: size });
    pen.text(x + swatch + 0.5 * size, y, label, lettering(size, { anchor: "start", ink: "ink" }));
    x += wide + 1.4 * size;
  }
  return y + 0.8 * size;
}
