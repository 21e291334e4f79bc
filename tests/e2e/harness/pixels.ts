// What an element really shows, read from a picture of it: a canvas that keeps no drawing buffer cannot be read itself.
import { createHash } from "node:crypto";
import type { Locator } from "playwright-core";

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Different colours, counted in steps of 8 of 255 so that smoothing counts for little. */
  readonly colours: number;
  /** The same for two pictures exactly if every pixel is the same. */
  readonly digest: string;
}

export async function pixelsOf(element: Locator): Promise<Pixels> {
  const png = await element.screenshot();
  const url = `data:image/png;base64,${png.toString("base64")}`;
  const { width, height, data } = await element.evaluate(async (node, source) => {
    const image = new Image();
    image.src = source;
    await image.decode();
    const canvas = node.ownerDocument.createElement("canvas");
    canvas.width = image.width;
    canvas.height = image.height;
    const context = canvas.getContext("2d", { willReadFrequently: true });
    if (context === null) throw new Error("no 2d context");
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    let text = "";
    for (let i = 0; i < data.length; i += 0x8000)
      text += String.fromCharCode(...data.subarray(i, i + 0x8000));
    return { width: image.width, height: image.height, data: btoa(text) };
  }, url);
  const bytes = Buffer.from(data, "base64");
  return {
    width,
    height,
    colours: countColours(bytes),
    digest: createHash("sha256").update(bytes).digest("hex"),
  };
}

function countColours(rgba: Uint8Array): number {
  const seen = new Set<number>();
  for (let i = 0; i + 3 < rgba.length; i += 4)
    seen.add((((rgba[i] ?? 0) >> 3) << 10) | (((rgba[i + 1] ?? 0) >> 3) << 5) | ((rgba[i + 2] ?? 0) >> 3));
  return seen.size;
}
