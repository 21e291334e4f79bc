/** How wide a text of the page's face is, px: measured once per text and size. */
import { readFace } from "./face.ts";

const widths = new Map<string, number>();
/** Fonts that are there for good. To ask for the face or whether it has come costs more than to measure with it. */
const loaded = new Map<string, string>();
let pen: CanvasRenderingContext2D | null = null;

export function textWidth(text: string, size: number, weight = 420): number {
  const kind = `${size}/${weight}`;
  const key = `${kind}/${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  pen ??= document.createElement("canvas").getContext("2d");
  if (pen === null) return text.length * size * 0.6;
  const font = loaded.get(kind) ?? `${weight} ${size}px ${readFace()}`;
  if (pen.font !== font) pen.font = font;
  const { width } = pen.measureText(text);
  if (!loaded.has(kind)) {
    if (!document.fonts.check(font)) return width;
    loaded.set(kind, font);
  }
  widths.set(key, width);
  return width;
}
