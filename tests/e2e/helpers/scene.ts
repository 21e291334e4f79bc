// The 3D door in the page: its canvas, its tools, and what of a colour is to be seen in it.
import type { Locator, Page } from "playwright-core";
import { pixelsOf } from "../harness/pixels.ts";

export const doorCanvas = (page: Page): Locator => page.locator(".slot canvas");

/** Presses one of the buttons over the picture, by its words. */
export const stageTool = (page: Page, words: string): Promise<void> =>
  page.locator(".stage-tools").getByText(words, { exact: true }).click();

/** The picture once it stands: two looks in a row see the same. */
export async function standingPicture(page: Page): Promise<string> {
  let last = "";
  for (let i = 0; i < 40; i++) {
    const { digest } = await pixelsOf(doorCanvas(page));
    if (digest === last) return digest;
    last = digest;
    await page.waitForTimeout(300);
  }
  throw new Error("the picture never stands still");
}

/** Part of the canvas's pixels that are within `tolerance` (of 255, each channel) of a colour. */
export async function shareOf(
  page: Page,
  colour: readonly [number, number, number],
  tolerance: number,
): Promise<number> {
  const canvas = doorCanvas(page);
  const png = (await canvas.screenshot()).toString("base64");
  return canvas.evaluate(
    async (_node, { source, wanted, within }) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const copy = document.createElement("canvas");
      copy.width = image.width;
      copy.height = image.height;
      const pen = copy.getContext("2d", { willReadFrequently: true });
      if (pen === null) throw new Error("no 2d context");
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let i = 0; i < data.length; i += 4) {
        if (wanted.every((channel, k) => Math.abs((data[i + k] ?? 0) - channel) <= within)) count++;
      }
      return count / (data.length / 4);
    },
    { source: `data:image/png;base64,${png}`, wanted: [...colour], within: tolerance },
  );
}
