/** Sheets as SVG, true to scale: what the preview shows and the printer gets is what the PDF holds. */
import { FACES_CARRIED } from "./fonts.ts";
import type { DrawingMark, Leaf, Mark, WordsMark } from "./leaf.ts";
import { drawingGroups, escaped, FACES, number } from "./svg.ts";

const MM_PER_POINT = 25.4 / 72;
const MONO = "ui-monospace, 'DejaVu Sans Mono', Consolas, Menlo, monospace";

/** Widths are those the sheet was laid out with: no kerning, no ligatures, no figures of one width. */
const TYPE = "font-kerning:none;font-variant-ligatures:none;font-variant-numeric:normal;font-weight:400";

/** For a page that has the faces: without an address or an id of its own. */
export function leafSvg(leaf: Leaf): string {
  return svg(leaf, FACES_OF_PAGE, "");
}

/** A file of its own, with the faces in it. */
export function leafSvgFile(leaf: Leaf, title: string): string {
  const inside = `<title>${escaped(title)}</title><style>${faces()}</style>`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg(leaf, FACES, inside)}\n`;
}

/** The same face under the names it goes by; Manrope has the Greek letters that Figtree lacks. */
const FACES_OF_PAGE = FACES.replace("sans-serif", "Manrope, sans-serif");

function svg({ widthMm, heightMm, marks }: Leaf, face: string, inside: string): string {
  const [w, h] = [number(widthMm), number(heightMm)];
  const open = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"`;
  const ground = `<rect width="${w}" height="${h}" fill="#fff"/>`;
  return `${open} font-family="${face}" style="${TYPE}">${inside}${ground}${marks.map(put).join("")}</svg>`;
}

function faces(): string {
  return FACES_CARRIED.map(({ family, weight, format, data }) => {
    const range = family === "Manrope" ? "unicode-range:U+370-3FF;" : "";
    return `@font-face{font-family:Figtree;font-weight:${weight};${range}src:url(${data}) format("${format}")}`;
  }).join("");
}

function put(mark: Mark): string {
  switch (mark.kind) {
    case "words":
      return words(mark);
    case "rule": {
      const y = number(mark.y);
      return `<line x1="${number(mark.x)}" y1="${y}" x2="${number(mark.x + mark.length)}" y2="${y}" stroke="${mark.colour}" stroke-width="${number(mark.width)}"/>`;
    }
    case "box":
      return `<rect x="${number(mark.x)}" y="${number(mark.y)}" width="${number(mark.width)}" height="${number(mark.height)}" fill="${mark.fill ?? "none"}" stroke="${mark.edge}" stroke-width="${number(mark.edgeWidth)}"/>`;
    case "drawing":
      return drawn(mark);
  }
}

function words({ text, x, y, size, colour, strong, mono }: WordsMark): string {
  const weight = strong ? ' font-weight="600"' : "";
  const letters = mono === true ? ` font-family="${MONO}" style="white-space:pre"` : "";
  return `<text x="${number(x)}" y="${number(y)}" font-size="${number(size * MM_PER_POINT)}" fill="${colour}"${weight}${letters}>${escaped(text)}</text>`;
}

/** A window is an SVG within: what sticks out of it is not drawn. */
function drawn({ drawing, x, y, window }: DrawingMark): string {
  const groups = drawingGroups(drawing);
  if (window === null) return `<g transform="translate(${number(x)} ${number(y)})">${groups}</g>`;
  const { left, top, width, height } = window;
  const view = [left - x, top - y, width, height].map(number).join(" ");
  return `<svg x="${number(left)}" y="${number(top)}" width="${number(width)}" height="${number(height)}" viewBox="${view}">${groups}</svg>`;
}
