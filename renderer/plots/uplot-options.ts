/** A figure as the canvas plot library wants it: lines and axes are its own, bands and areas are drawn with our pen. */
import type uPlot from "uplot";
import { decimalsOf } from "../strip/time-axis.ts";
import { axisLabel, drawMarks, drawUnder, type Frame } from "./draw.ts";
import { type Axis, type Colours, type Figure, stacked } from "./figure.ts";
import { canvasPen } from "./pen-canvas.ts";
import { tickText } from "./ticks.ts";

export interface PlotLook {
  readonly colours: Colours;
  readonly face: string;
  /** Letters, px. */
  readonly size: number;
}

/** x values, the lines', then the layers' upper edges. */
export function plotData({ values, lines, layers }: Figure): uPlot.AlignedData {
  const column = (numbers: ArrayLike<number>): (number | null)[] =>
    Array.from(numbers, (value) => (Number.isNaN(value) ? null : value));
  return [Array.from(values), ...lines.map((line) => column(line.values)), ...stacked(layers).map(column)];
}

/** Equal for figures that a plot can show one after the other, with nothing but its data changed. */
export function plotKind({ lines, layers, x, y }: Figure): string {
  const strokes = lines.map(({ label, ink, dash, width }) => [label, ink, dash, width]);
  const edges = layers.map(({ label, ink }) => [label, ink]);
  return JSON.stringify([strokes, edges, axisLabel(x), axisLabel(y)]);
}

/** @param now the figure shown: another one of the same kind may take the place of the first */
export function plotOptions(
  now: () => Figure,
  look: PlotLook,
  box: { readonly width: number; readonly height: number },
  onIndex: (index: number | null) => void,
): uPlot.Options {
  const { colours, size } = look;
  const figure = now();
  return {
    width: box.width,
    height: box.height,
    padding: [size * 0.8, size, 0, 0],
    series: [{}, ...lineSeries(figure, colours), ...layerSeries(figure, colours)],
    scales: {
      x: { time: false, range: (_, least, most) => stretch(now(), least, most) },
      y: { range: () => [now().y.from, now().y.to] },
    },
    axes: [axis(figure.x, look, false), axis(figure.y, look, true)],
    legend: { show: false },
    cursor: {
      y: false,
      drag: { x: true, y: false, dist: 6 },
      points: { size: 7, width: 2 },
      focus: { prox: -1 },
    },
    hooks: {
      drawAxes: [(plot) => withPen(plot, look, (pen, frame) => drawUnder(pen, now(), frame))],
      draw: [(plot) => withPen(plot, look, (pen, frame) => drawMarks(pen, now(), frame, size))],
      setCursor: [(plot) => onIndex(hoveredIndex(plot))],
    },
  };
}

/** Distances between ticks: 1, 2 or 5 times a power of ten, as everywhere in the product. */
const INCREMENTS = Array.from({ length: 13 }, (_, i) => [1, 2, 5].map((f) => Number(`${f}e${i - 6}`))).flat();

/** A zoom asks for its own stretch; one that asks for all of the data gets the figure's axis. */
function stretch({ x, values }: Figure, least: number | null, most: number | null): [number, number] {
  const all = least === null || most === null || (least === values[0] && most === values[values.length - 1]);
  return all ? [x.from, x.to] : [least, most];
}

function hoveredIndex({ cursor }: uPlot): number | null {
  return cursor.left === undefined || cursor.left < 0 ? null : (cursor.idx ?? null);
}

function lineSeries({ lines }: Figure, colours: Colours): uPlot.Series[] {
  return lines.map(({ label, ink, dash, width }) => ({
    label,
    stroke: colours[ink],
    width,
    dash: [...dash],
    points: { show: false },
  }));
}

function layerSeries({ layers }: Figure, colours: Colours): uPlot.Series[] {
  return layers.map(({ label, ink }) => ({
    label,
    stroke: colours[ink],
    width: 1.2,
    points: { show: false },
  }));
}

function axis(of: Axis, { colours, face, size }: PlotLook, upright: boolean): uPlot.Axis {
  return {
    label: axisLabel(of),
    labelFont: `420 ${size}px ${face}`,
    labelSize: 1.5 * size,
    labelGap: 0,
    font: `420 ${size}px ${face}`,
    stroke: colours["ink-soft"],
    size: (_, texts) => (upright ? 1.6 + 0.58 * longest(texts) : 2) * size,
    gap: 4,
    space: (upright ? 2.2 : 4) * size,
    incrs: INCREMENTS,
    grid: { stroke: colours.line, width: 1 },
    ticks: { stroke: colours["line-strong"], width: 1, size: 4 },
    values: (_, splits) => {
      const step = splits.length > 1 ? splits[1] - splits[0] : 1;
      return splits.map((value) => tickText(value, decimalsOf(step)));
    },
  };
}

function longest(texts: readonly string[] | null): number {
  return Math.max(2, ...(texts ?? []).map((text) => text.length));
}

/** Draws with our pen in the library's canvas, in CSS pixels. */
function withPen(
  plot: uPlot,
  { colours, face }: PlotLook,
  draw: (pen: ReturnType<typeof canvasPen>, frame: Frame) => void,
): void {
  const { ctx, bbox } = plot;
  const density = ctx.canvas.width / plot.width;
  const box = {
    x: bbox.left / density,
    y: bbox.top / density,
    width: bbox.width / density,
    height: bbox.height / density,
  };
  const frame: Frame = {
    ...box,
    toX: (value) => box.x + plot.valToPos(value, "x"),
    toY: (value) => box.y + plot.valToPos(value, "y"),
  };
  ctx.save();
  ctx.scale(density, density);
  const pen = canvasPen(ctx, { colours, face }, density);
  pen.clip(box.x, box.y, box.width, box.height);
  draw(pen, frame);
  pen.unclip();
  ctx.restore();
}
