/** A sheet as a picture of dots. */
import type { SheetView } from "../worker/sheet-messages.ts";
import { withResolution } from "./png.ts";

/** Dots to the millimetre: 300 to the inch, what a printer shows. */
const PER_MM = 300 / 25.4;

/** The SVG, its words outlines, drawn at 300 dpi; the picture knows that. */
export async function sheetPng(
  svg: Uint8Array,
  { widthMm, heightMm }: Pick<SheetView, "widthMm" | "heightMm">,
): Promise<Uint8Array> {
  const url = URL.createObjectURL(new Blob([svg as Uint8Array<ArrayBuffer>], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(widthMm * PER_MM);
    canvas.height = Math.round(heightMm * PER_MM);
    const pen = canvas.getContext("2d");
    if (pen === null) throw new Error("The browser gave no canvas for the picture.");
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
    if (blob === null) throw new Error("The browser gave no picture.");
    return withResolution(new Uint8Array(await blob.arrayBuffer()), PER_MM);
  } finally {
    URL.revokeObjectURL(url);
  }
}
