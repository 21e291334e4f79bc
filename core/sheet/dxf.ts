/**
 * A drawing as DXF (AC1021, millimetres), y upwards as drafting programs have it. The layers carry the names of
 * `LayerName`, each with a colour and a line type. Dimensions are exploded into lines and text, which every program reads alike.
 */
import {
  type Colors,
  DxfWriter,
  LineTypes,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from "@tarikjabiri/dxf";
import type { Drawing, LayerName, PlainPrimitive, Point, Text } from "./drawing.ts";
import { DXF_COLOUR, LAYER_STROKE } from "./look.ts";
import { plainPrimitives } from "./plain.ts";

/** DXF states the height of capitals, drawings the type size: Figtree's capitals are 0.7 of it. */
export const CAP_HEIGHT = 0.7;

const ANCHOR = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

/** The file's text. */
export function dxfFile(drawing: Drawing): string {
  const writer = new DxfWriter();
  writer.setUnits(Units.Millimeters);
  // Metric measurement, and what a program shows when it opens the file.
  writer.setVariable("$MEASUREMENT", { 70: 1 });
  writer.setVariable("$EXTMIN", { 10: 0, 20: 0, 30: 0 });
  writer.setVariable("$EXTMAX", { 10: drawing.widthMm, 20: drawing.heightMm, 30: 0 });
  for (const { name, items } of drawing.layers) {
    writer.addLayer(name, DXF_COLOUR[name] as Colors, lineTypeOf(writer, name));
    writer.setCurrentLayerName(name);
    for (const item of plainPrimitives(items)) put(writer, item, drawing.heightMm);
  }
  return writer.stringify();
}

/** Dashes go as positive and gaps as negative lengths. */
function lineTypeOf(writer: DxfWriter, name: LayerName): string {
  const { dash } = LAYER_STROKE[name];
  if (dash.length === 0) return LineTypes.Continuous;
  const elements = dash.map((length, i) => (i % 2 === 0 ? length : -length));
  writer.addLType(`${name}_LINE`, dash.map((_, i) => (i % 2 === 0 ? "__" : " ")).join(""), elements);
  return `${name}_LINE`;
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;

function put(writer: DxfWriter, item: PlainPrimitive, height: number): void {
  const up = ([x, y]: Point) => point3d(x, height - y, 0);
  switch (item.kind) {
    case "line":
      writer.addLine(up(item.from), up(item.to));
      return;
    case "polyline":
      writer.addLWPolyline(
        item.points.map(([x, y]) => ({ point: point2d(x, height - y) })),
        { flags: item.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
      );
      return;
    case "circle":
      writer.addCircle(up(item.centre), item.radius);
      return;
    case "arc":
      // Clockwise with y down is counter-clockwise backwards with y up.
      writer.addArc(up(item.centre), item.radius, degrees(-item.end), degrees(-item.start));
      return;
    case "text":
      putText(writer, item, up(item.at));
  }
}

function putText(writer: DxfWriter, item: Text, at: ReturnType<typeof point3d>): void {
  writer.addText(at, item.size * CAP_HEIGHT, item.text, {
    rotation: degrees(-(item.turn ?? 0)),
    horizontalAlignment: ANCHOR[item.anchor],
    verticalAlignment: TextVerticalAlignment.BaseLine,
    ...(item.anchor === "start" ? {} : { secondAlignmentPoint: at }),
  });
}
