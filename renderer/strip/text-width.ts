/** How wide a text of the page's face is, px: measured once per text and size. */
import { readFace } from "./face.ts";

const widths = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

export function textWidth(text: string, size: number, weight = 420): number {
  const key = `${size}/${weight}/${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  pen ??= document.createElement("canvas").getContext("2d");
  if (pen === null) return text.length * size * 0.6;
  pen.font = `${weight} ${size}px ${readFace()}`;
  const { width } = pen.measureText(text);
  if (document.fonts.check(pen.font)) widths.set(key, width);
  return width;
}
