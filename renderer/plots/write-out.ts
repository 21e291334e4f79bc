/** Pictures and tables on their way out of the page: SVG, PNG, clipboard. */
import type { ExportType } from "../../electron/bridge.ts";
import { download } from "../bridge/pickers.ts";
import { drawFigure } from "./draw.ts";
import type { Colours, Figure } from "./figure.ts";
import { canvasPen } from "./pen-canvas.ts";
import { svgPen } from "./pen-svg.ts";

/** Asks for a place and writes the bytes there; answers the file's name, `null` where the person thought better of it. */
export type SaveBytes = (name: string, bytes: Uint8Array, type: ExportType) => Promise<string | null>;

/** Size of a written picture, px, and of its letters; a PNG has twice as many pixels each way. */
const SIZE = { width: 960, height: 560, letters: 15 } as const;
const PNG_DENSITY = 2;

export type Measure = (text: string) => number;

/** The figure as a document of its own. Pure. */
export function figureSvg(figure: Figure, colours: Colours, face: string, measure: Measure): string {
  const pen = svgPen(SIZE.width, SIZE.height, { colours, face });
  drawFigure(pen, figure, SIZE.width, SIZE.height, SIZE.letters, measure);
  return pen.finish(figure.title);
}

export function measureWith(face: string): Measure {
  const context = document.createElement("canvas").getContext("2d");
  if (context === null) return (text) => text.length * SIZE.letters * 0.55;
  context.font = `420 ${SIZE.letters}px ${face}`;
  return (text) => context.measureText(text).width;
}

export async function figurePng(figure: Figure, colours: Colours, face: string): Promise<Uint8Array> {
  const canvas = document.createElement("canvas");
  canvas.width = SIZE.width * PNG_DENSITY;
  canvas.height = SIZE.height * PNG_DENSITY;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("The browser gave no canvas for the picture.");
  context.scale(PNG_DENSITY, PNG_DENSITY);
  const pen = canvasPen(context, { colours, face }, PNG_DENSITY);
  drawFigure(pen, figure, SIZE.width, SIZE.height, SIZE.letters, measureWith(face));
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (blob === null) throw new Error("The browser gave no picture.");
  return new Uint8Array(await blob.arrayBuffer());
}

/** On the desktop by its dialog, in a browser as a download. */
export const saveHere: SaveBytes = async (name, bytes, type) => {
  if (window.swingstill !== undefined) return window.swingstill.saveBytes(name, bytes, type);
  download(window, name, bytes, type);
  return name;
};

/** Throws where neither way to the clipboard is open. */
export async function copyText(text: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
  } catch {
    copyBySelection(text);
  }
}

/** The older way, for where the newer one is not allowed. */
function copyBySelection(text: string): void {
  const area = document.createElement("textarea");
  area.value = text;
  area.style.position = "fixed";
  area.style.opacity = "0";
  document.body.append(area);
  area.select();
  const copied = document.execCommand("copy");
  area.remove();
  if (!copied) throw new Error("The clipboard is not open to this page.");
}
