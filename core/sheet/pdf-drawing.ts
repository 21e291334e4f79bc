/** A drawing on a PDF page, as vectors, at full size. */
import type { PDFPage } from "pdf-lib";
import { clipEvenOdd, endPath, lineTo, moveTo, popGraphicsState, pushGraphicsState } from "pdf-lib";
import type { Drawing, LayerName, PlainPrimitive, Point, Text } from "./drawing.ts";
import type { Window } from "./leaf.ts";
import { penOf, textColour } from "./look.ts";
import { colourOf, points, setLine, type TypeCase, typeWidth } from "./pdf-type.ts";
import { plainPrimitives } from "./plain.ts";
import { clearBox } from "./svg.ts";

/** Where a drawing's origin lies on the page: from the page's upper left corner, mm. */
export interface Placing {
  readonly x: number;
  readonly y: number;
}

/** Draws within a window: the rest of the drawing is cut off at its edge. */
export function drawWithin(
  page: PDFPage,
  type: TypeCase,
  drawing: Drawing,
  at: Placing,
  window: Window,
): void {
  const top = page.getHeight() - points(window.top);
  const bottom = top - points(window.height);
  const left = points(window.left);
  const right = left + points(window.width);
  page.pushOperators(
    pushGraphicsState(),
    moveTo(left, bottom),
    lineTo(right, bottom),
    lineTo(right, top),
    lineTo(left, top),
    clipEvenOdd(),
    endPath(),
  );
  drawDrawing(page, type, drawing, at);
  page.pushOperators(popGraphicsState());
}

/** Draws all of it. */
export function drawDrawing(page: PDFPage, type: TypeCase, drawing: Drawing, at: Placing): void {
  for (const layer of drawing.layers) {
    for (const item of plainPrimitives(layer.items)) put(page, type, item, layer.name, drawing.fine, at);
  }
}

function put(
  page: PDFPage,
  type: TypeCase,
  item: PlainPrimitive,
  layer: LayerName,
  fine: boolean | undefined,
  at: Placing,
): void {
  const { colour, width, dash } = penOf(layer, fine);
  const pen = {
    borderColor: colourOf(colour),
    borderWidth: points(width),
    ...(dash.length === 0 ? {} : { borderDashArray: dash.map(points) }),
  };
  // An SVG path has y downwards from its origin, as drawings have.
  const origin = { x: points(at.x), y: page.getHeight() - points(at.y) };
  switch (item.kind) {
    case "text":
      putText(page, type, item, layer, at);
      return;
    case "circle":
      page.drawCircle({
        x: origin.x + points(item.centre[0]),
        y: origin.y - points(item.centre[1]),
        size: points(item.radius),
        ...pen,
      });
      return;
    case "polyline":
      page.drawSvgPath(pathOf(item.points, item.closed), {
        ...origin,
        ...(item.filled === true ? { color: colourOf(colour) } : pen),
      });
      return;
    case "line":
      page.drawSvgPath(pathOf([item.from, item.to], false), { ...origin, ...pen });
      return;
    case "arc":
      page.drawSvgPath(arcPath(item.centre, item.radius, item.start, item.end), { ...origin, ...pen });
  }
}

const place = (value: number): string => points(value).toFixed(4);

function pathOf(run: readonly Point[], closed: boolean): string {
  const [first, ...rest] = run.map(([x, y]) => `${place(x)} ${place(y)}`);
  return `M ${first} ${rest.map((point) => `L ${point}`).join(" ")}${closed ? " Z" : ""}`;
}

function arcPath([x, y]: Point, radius: number, start: number, end: number): string {
  const at = (angle: number) =>
    `${place(x + radius * Math.cos(angle))} ${place(y + radius * Math.sin(angle))}`;
  const large = end - start > Math.PI ? 1 : 0;
  return `M ${at(start)} A ${place(radius)} ${place(radius)} 0 ${large} 1 ${at(end)}`;
}

function putText(page: PDFPage, type: TypeCase, item: Text, layer: LayerName, at: Placing): void {
  const size = points(item.size);
  const strong = item.strong === true;
  const turn = -(item.turn ?? 0);
  const width = typeWidth(type, item.text, size, strong);
  const back = item.anchor === "start" ? 0 : item.anchor === "middle" ? width / 2 : width;
  const x = points(at.x + item.at[0]);
  const y = page.getHeight() - points(at.y + item.at[1]);
  if (item.clear === true) clearBehind(page, item, x, y, turn);
  const ink = { size, strong, colour: colourOf(textColour(layer)), turn };
  setLine(page, type, item.text, x - back * Math.cos(turn), y - back * Math.sin(turn), ink);
}

/** White paper behind the words, turned with them about their anchor. */
function clearBehind(page: PDFPage, item: Text, x: number, y: number, turn: number): void {
  const box = clearBox(item);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const corner = (u: number, v: number) =>
    `${(x + u * cos - v * sin).toFixed(3)} ${(y + u * sin + v * cos).toFixed(3)}`;
  const left = points(box.x - item.at[0]);
  const top = points(item.at[1] - box.y);
  const [right, bottom] = [left + points(box.width), top - points(box.height)];
  const path = [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
  const flipped = path.map((pair) => {
    const [px, py] = pair.split(" ").map(Number);
    return `${px} ${-py}`;
  });
  page.drawSvgPath(`M ${flipped.join(" L ")} Z`, { x: 0, y: 0, color: colourOf("#ffffff") });
}
