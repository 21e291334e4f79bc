// The pictures in the README: the medium dog in the doorway, the flap riding on its shoulders. Every run draws them into tests/e2e/out;
// SCREENSHOTS=keep npx vitest run --config tests/vitest.config.ts --project e2e readme-pictures
// also puts them into assets/screenshots, to be committed.
import { copyFileSync, mkdirSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import { openBench, SOON, station } from "./helpers/bench.ts";
import { doorCanvas, stageTool, standingPicture } from "./helpers/scene.ts";

const app = setUpApp();
const KEPT = resolve(import.meta.dirname, "../../assets/screenshots");

/** Bytes: a README that is looked at on a phone. */
const MOST = 300_000;
/** s after detection: the animal fills the doorway. */
const MOMENT = 3.75;
/** So that the large ones stay below that: pixels of the picture in one of the window. */
const DENSITY: Readonly<Record<number, number>> = { 1440: 0.85, 1024: 1 };

async function showMoment(page: Page): Promise<void> {
  const moment = page.getByRole("slider", { name: "Moment shown" });
  await moment.focus();
  await page.keyboard.press("Home");
  const now = async (): Promise<number> => Number(await moment.getAttribute("aria-valuenow"));
  for (let i = 0; i < Math.floor(2 * MOMENT); i++) await page.keyboard.press("PageUp");
  await expect.poll(now, SOON).toBeCloseTo(Math.floor(2 * MOMENT) / 2, 1);
  for (let i = 0; i < 60 && (await now()) < MOMENT; i++) {
    await page.keyboard.press("ArrowRight");
    await page.waitForTimeout(30);
  }
  expect(await now()).toBeCloseTo(MOMENT, 1);
  await moment.blur();
}

test.each([
  ["light", 1440, 900, "Side", "timer"],
  ["dark", 1440, 900, "Side", "magnets"],
  ["light", 1024, 700, "Free", "verdict"],
  ["dark", 1024, 700, "Free", "latch"],
] as const)("%s, %d×%d", async (colorScheme, width, height, standpoint, part) => {
  const page = await openBench(app, {
    colorScheme,
    viewport: { width, height },
    deviceScaleFactor: DENSITY[width],
    reducedMotion: "reduce",
  });
  await doorCanvas(page).waitFor();
  await station(page, part);
  await showMoment(page);
  await stageTool(page, standpoint);
  await page.mouse.move(0, 0);
  await standingPicture(page);
  const name = `${colorScheme}-${width}`;
  const made = await app.picture(page, `readme-${name}`);
  expect(statSync(made).size).toBeLessThan(MOST);
  if (process.env.SCREENSHOTS !== "keep") return;
  mkdirSync(KEPT, { recursive: true });
  copyFileSync(made, join(KEPT, `${name}.png`));
});
