/** A drawing as SVG text, true to scale: a millimetre of the drawing is a millimetre of paper. */
import type { Drawing, Layer, LayerName, PlainPrimitive, Point, Text } from "./drawing.ts";
import { INK, LAYER_STROKE, penOf, textColour } from "./look.ts";
import { plainPrimitives } from "./plain.ts";
import { textWidth } from "./text-width.ts";

/** Faces asked for, the sheet's own first. */
export const FACES = "Figtree, 'Figtree Variable', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif";

/** Thousandths of a millimetre: finer than anybody drills. */
export const number = (value: number): string => String(Math.round(value * 1000) / 1000 || 0);
const pair = ([x, y]: Point): string => `${number(x)},${number(y)}`;

export function escaped(words: string): string {
  return words
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** A file of its own: layers are groups named as layers, also to drawing programs that keep the name in `inkscape:label`. */
export function svgFile(drawing: Drawing): string {
  const groups = drawing.layers.map(
    (layer) =>
      `<g id="${layer.name}" inkscape:groupmode="layer" inkscape:label="${layer.name}"${strokeOf(layer.name, drawing.fine)}>${shapes(layer)}</g>`,
  );
  const spaces =
    'xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"';
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg ${spaces} ${sizeOf(drawing)} font-family="${FACES}">\n<title>${escaped(drawing.title)}</title>\n<rect width="100%" height="100%" fill="#fff" stroke="none"/>\n${groups.join("\n")}\n</svg>\n`;
}

/** For a page: no ids, which several drawings of one page would share. */
export function svgElement(drawing: Drawing): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${sizeOf(drawing)} role="img" aria-label="${escaped(drawing.title)}" font-family="${FACES}">${drawingGroups(drawing)}</svg>`;
}

/** The layers of a drawing as groups, without ids. */
export function drawingGroups(drawing: Drawing): string {
  return drawing.layers
    .map((layer) => `<g data-layer="${layer.name}"${strokeOf(layer.name, drawing.fine)}>${shapes(layer)}</g>`)
    .join("");
}

function sizeOf({ widthMm, heightMm }: Drawing): string {
  const [w, h] = [number(widthMm), number(heightMm)];
  return `width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"`;
}

function strokeOf(name: LayerName, fine: boolean | undefined): string {
  const { colour, width, dash } = penOf(name, fine);
  const dashes = dash.length === 0 ? "" : ` stroke-dasharray="${dash.map(number).join(" ")}"`;
  return ` fill="none" stroke="${colour}" stroke-width="${number(width)}"${dashes} stroke-linejoin="round"`;
}

function shapes(layer: Layer): string {
  return plainPrimitives(layer.items)
    .map((item) => shape(item, layer.name))
    .join("");
}

function shape(item: PlainPrimitive, layer: LayerName): string {
  switch (item.kind) {
    case "line":
      return `<line x1="${number(item.from[0])}" y1="${number(item.from[1])}" x2="${number(item.to[0])}" y2="${number(item.to[1])}"/>`;
    case "polyline": {
      const fill = item.filled === true ? ` fill="${LAYER_STROKE[layer].colour}" stroke="none"` : "";
      return `<${item.closed ? "polygon" : "polyline"} points="${item.points.map(pair).join(" ")}"${fill}/>`;
    }
    case "circle":
      return `<circle cx="${number(item.centre[0])}" cy="${number(item.centre[1])}" r="${number(item.radius)}"/>`;
    case "arc": {
      const at = (angle: number): Point => [
        item.centre[0] + item.radius * Math.cos(angle),
        item.centre[1] + item.radius * Math.sin(angle),
      ];
      const large = item.end - item.start > Math.PI ? 1 : 0;
      const r = number(item.radius);
      return `<path d="M${pair(at(item.start))}A${r},${r} 0 ${large} 1 ${pair(at(item.end))}"/>`;
    }
    case "text":
      return textShape(item, layer);
  }
}

function textShape(item: Text, layer: LayerName): string {
  const [x, y] = item.at;
  const weight = item.strong === true ? ' font-weight="600"' : "";
  const turn =
    item.turn === undefined
      ? ""
      : ` transform="rotate(${number((item.turn * 180) / Math.PI)} ${pair(item.at)})"`;
  const behind = item.clear === true ? clearing(item, turn) : "";
  return `${behind}<text x="${number(x)}" y="${number(y)}" font-size="${number(item.size)}" text-anchor="${item.anchor}" fill="${textColour(layer) || INK}" stroke="none"${weight}${turn}>${escaped(item.text)}</text>`;
}

function clearing(item: Text, turn: string): string {
  const box = clearBox(item);
  return `<rect x="${number(box.x)}" y="${number(box.y)}" width="${number(box.width)}" height="${number(box.height)}" fill="#fff" stroke="none"${turn}/>`;
}

/** The paper that a text's words clear, before it is turned, mm. */
export function clearBox({ at: [x, y], text: words, size, anchor, strong }: Text) {
  const width = textWidth(words, size, strong);
  const left = anchor === "start" ? x : x - (anchor === "middle" ? width / 2 : width);
  return { x: left - 0.4, y: y - 0.78 * size, width: width + 0.8, height: 1.02 * size };
}
