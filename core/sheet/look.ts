/** The look of paper: colours, line weights and dashes, shared by SVG, PDF and HTML. Warm ink, few colours, each with a meaning. */
import type { LayerName } from "./drawing.ts";

/** Contrast on white is at least 4.5 : 1 for everything that is read (tests/core/sheet/look.test.ts). */
export const INK = "#2a2521";
export const INK_SOFT = "#62584d";
export const ACCENT = "#6a4426";
export const RULE = "#d3c7b6";
export const TINT = "#f6f1e9";
/** Cut through here. */
export const CUT = "#a4341f";
/** Drill here. */
export const DRILL = "#2c668c";
export const MAGNET = "#8d4a6b";
export const LATCH = "#3a6b34";

export const STATUS_COLOUR = { ok: "#3a6b34", caution: "#875600", fail: "#a4341f" } as const;

export interface Stroke {
  readonly colour: string;
  /** mm. */
  readonly width: number;
  /** Dashes and gaps, mm; none is a full line. */
  readonly dash: readonly number[];
}

const stroke = (colour: string, width: number, ...dash: readonly number[]): Stroke => ({
  colour,
  width,
  dash,
});

/** Weights in the steps of ISO 128: 0.5 what is made, 0.35 what is seen, 0.18 what explains. */
export const LAYER_STROKE: Readonly<Record<LayerName, Stroke>> = {
  SHADE: stroke(RULE, 0.13),
  CENTRE: stroke(INK_SOFT, 0.18, 6, 1.2, 0.8, 1.2),
  HIDDEN: stroke(INK_SOFT, 0.18, 1.6, 1),
  OUTLINE: stroke(INK, 0.35),
  CUT: stroke(CUT, 0.5),
  LATCH: stroke(LATCH, 0.35),
  DRILL: stroke(DRILL, 0.35),
  MAGNETS: stroke(MAGNET, 0.35),
  DIMENSIONS: stroke(INK_SOFT, 0.18),
  POLARITY: stroke(MAGNET, 0.35),
  TEXT: stroke(INK, 0.18),
  RULER: stroke(INK, 0.25),
  REGISTER: stroke(INK, 0.18),
};

/** Lines of a `fine` drawing are this much of the usual. */
const FINE = 0.55;

/** A layer's pen in a drawing. */
export function penOf(layer: LayerName, fine: boolean | undefined): Stroke {
  const pen = LAYER_STROKE[layer];
  if (fine !== true) return pen;
  return { ...pen, width: Math.max(0.13, pen.width * FINE), dash: pen.dash.map((length) => length * FINE) };
}

/** Words are in ink whatever layer they are on, but for the poles. */
export function textColour(layer: LayerName): string {
  if (layer === "POLARITY") return MAGNET;
  return layer === "DIMENSIONS" ? INK_SOFT : INK;
}

/** AutoCAD colour numbers, the nearest of the standard ones: red cut, blue drill, magenta magnets, green latch. */
export const DXF_COLOUR: Readonly<Record<LayerName, number>> = {
  SHADE: 9,
  CENTRE: 8,
  HIDDEN: 8,
  OUTLINE: 7,
  CUT: 1,
  LATCH: 3,
  DRILL: 5,
  MAGNETS: 6,
  DIMENSIONS: 8,
  POLARITY: 6,
  TEXT: 7,
  RULER: 7,
  REGISTER: 7,
};
