// What tests of the workbench have in common: waiting for the door, reaching its parts and entries, choosing and saving files.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Locator, Page } from "playwright-core";
import type { App, OpenOptions } from "../harness/app.ts";

const root = resolve(import.meta.dirname, "../../..");

/** For `expect.poll`: long enough for a machine that does other things as well. */
export const SOON = { timeout: 20_000 };

export const exampleText = (id: string): string =>
  readFileSync(resolve(root, `assets/examples/${id}.door.json`), "utf8");

/** Example doors are listed by the names in their files. */
export const exampleName = (id: string): string => JSON.parse(exampleText(id)).name;

/**
 * A page with a door on the bench. The pickers of a real browser cannot be answered from outside; without them the page
 * uses a file input and downloads.
 */
export async function openBench(app: App, options: OpenOptions = {}): Promise<Page> {
  const page = await app.open(options);
  // Heard all the time: switched on for each question anew it now and then comes too late.
  page.on("filechooser", () => {});
  await page.evaluate(() =>
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined }),
  );
  await ready(page);
  return page;
}

/** The door is computed and its verdict shown. */
export async function ready(page: Page): Promise<void> {
  await page.locator(".verdict-head").waitFor();
}

export const station = (page: Page, id: string): Promise<void> => page.locator(`#tab-${id}`).click();
export const entry = (page: Page, path: string): Locator => page.locator(`[data-path="${path}"]`);
export const fileName = (page: Page): Promise<string | null> => page.locator(".file-name").textContent();

export async function chooseFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.keyboard.press("Control+o");
  await (await chooser).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** Saves, and answers what was written. */
export async function saveFile(page: Page): Promise<string> {
  const download = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  return readFileSync(await (await download).path(), "utf8");
}
