// The passage strip and the pictures of the swing in the built app: the hold dragged and keyed against core's own answer.
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { readDoor } from "../../core/door/index.ts";
import { type Computed, compute, relatchAt } from "../../core/review/compute.ts";
import { setUpApp } from "./harness/app.ts";
import { pixelsOf } from "./harness/pixels.ts";
import { exampleText, openBench, SOON } from "./helpers/bench.ts";

const app = setUpApp();

function exampleDoor(): Computed {
  const read = readDoor(exampleText("medium-dog"));
  if (!read.ok) throw new Error("the example is no door");
  return compute(read.door);
}

const door = exampleDoor();
const need = door.hold?.need ?? Number.NaN;

/** What core says of a hold, in the strip's words. */
function answer(hold: number): { outcome: string; time: string } {
  const relatch = relatchAt(door.door, door, door.governing, door.trace, hold, door.solenoid);
  if (relatch === null) throw new Error("the example has no latch");
  const inPassing = relatch.outcome === "caught" && hold < need;
  return {
    outcome: inPassing ? "caught in passing" : relatch.outcome,
    time: Math.abs(relatch.time).toFixed(1),
  };
}

const grip = (page: Page): Locator => page.getByRole("slider", { name: "Hold time" });
const verdict = (page: Page): Locator => page.locator(".strip-verdict");
const holdOf = async (page: Page): Promise<number> => Number(await grip(page).getAttribute("aria-valuenow"));

async function openStrip(): Promise<Page> {
  const page = await openBench(app);
  await grip(page).waitFor();
  return page;
}

/** Presses on the bar's end and moves it so many px, in steps; it is not let go yet. */
async function drag(page: Page, by: number): Promise<void> {
  const box = await grip(page).boundingBox();
  if (box === null) throw new Error("the bar has no end");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + by, y, { steps: 6 });
}

/** The page says of the hold shown what core says of it, once it has settled on one. */
async function agrees(page: Page): Promise<string> {
  const told = async () => {
    const { outcome, time } = answer(await holdOf(page));
    const words = `${outcome} ${time} s`;
    const band = (await verdict(page).textContent())?.toLowerCase() ?? "";
    const value = (await grip(page).getAttribute("aria-valuetext"))?.toLowerCase() ?? "";
    return { outcome, agree: band.includes(words) && value.includes(`: ${words}`) };
  };
  await expect.poll(async () => (await told()).agree, SOON).toBe(true);
  return (await told()).outcome;
}

test("dragged across the threshold, the hold is told shut out and caught as core tells it, one undo a drag", async () => {
  const page = await openStrip();
  const undo = page.getByRole("button", { name: /^Undo/ });
  const first = await holdOf(page);
  expect(await agrees(page)).toBe("caught");

  const seen = new Set<string>();
  await drag(page, -520);
  for (let move = 0; move < 14; move++) {
    seen.add(await agrees(page));
    const box = await grip(page).boundingBox();
    await page.mouse.move((box?.x ?? 0) + (box?.width ?? 0) / 2 + 23, (box?.y ?? 0) + 10);
  }
  expect([...seen]).toContain("shut out");
  // Nothing is changed while the bar is held.
  expect(await undo.isDisabled()).toBe(true);
  await page.mouse.up();
  const second = await holdOf(page);
  expect(second).not.toBe(first);
  await expect.poll(() => undo.getAttribute("aria-label"), SOON).toContain("Set the hold");
  await agrees(page);

  await page.keyboard.press("Control+z");
  await expect.poll(() => holdOf(page), SOON).toBe(first);
  expect(await undo.isDisabled()).toBe(true);
  expect(await agrees(page)).toBe("caught");
});

test("by keyboard: tenths, seconds, ends; Escape gives up; one undo a key held", async () => {
  const page = await openStrip();
  const first = await holdOf(page);
  await grip(page).focus();
  await page.keyboard.press("ArrowLeft");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 0.1, 6);
  await page.keyboard.press("PageDown");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);
  await agrees(page);
  await page.keyboard.press("Home");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(0, 6);
  await expect.poll(() => verdict(page).textContent(), SOON).toContain("Under the animal");
  // A hold of nothing at all cannot be set: the least that can is a hundredth.
  await page.keyboard.press("Control+z");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);

  await page.keyboard.down("ArrowLeft");
  await page.keyboard.down("ArrowLeft");
  await page.keyboard.press("Escape");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);
  await page.keyboard.up("ArrowLeft");
  await page.waitForTimeout(500);
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);
});

/** Holds back the page's questions to the computation; each `next` lets one go, once it is asked. */
async function heldQuestions(
  page: Page,
): Promise<{ next: () => Promise<void>; asked: () => Promise<number> }> {
  await page.evaluate(() => {
    const held: (() => void)[] = [];
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (this: Worker, message: { kind?: string }) {
      const go = () => postMessage.call(this, message);
      if (message.kind === "compute") held.push(go);
      else go();
    } as typeof postMessage;
    Object.assign(window, { held });
  });
  const asked = () => page.evaluate(() => (window as unknown as { held: unknown[] }).held.length);
  return {
    asked,
    next: async () => {
      await expect.poll(asked, SOON).toBe(1);
      await page.evaluate(() => (window as unknown as { held: (() => void)[] }).held.shift()?.());
    },
  };
}

test("of quick changes one after another, no older hold is shown once a newer one was", async () => {
  const page = await openStrip();
  const first = await holdOf(page);
  const questions = await heldQuestions(page);
  await grip(page).focus();
  await page.keyboard.press("ArrowLeft");
  // The hold tried is answered, the one set is asked; before its answer comes, the next is set.
  await questions.next();
  await expect.poll(questions.asked, SOON).toBe(1);
  await page.keyboard.press("PageDown");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);
  await questions.next();
  await expect.poll(questions.asked, SOON).toBe(1);
  expect(await holdOf(page)).toBeCloseTo(first - 1.1, 6);
  // Back by keys to what the view says, but not to what is set by now: that is a change like any other.
  await page.keyboard.press("PageUp");
  await questions.next();
  await questions.next();
  expect(await holdOf(page)).toBeCloseTo(first - 0.1, 6);
  await agrees(page);
  await page.keyboard.press("Control+z");
  await questions.next();
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 1.1, 6);
});

test("given up, the old hold is back at once, whatever is still on its way", async () => {
  const page = await openStrip();
  const first = await holdOf(page);
  const questions = await heldQuestions(page);
  await grip(page).focus();
  await page.keyboard.down("ArrowLeft");
  await page.keyboard.down("ArrowLeft");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first - 0.2, 6);
  await page.keyboard.press("Escape");
  await expect.poll(() => holdOf(page), SOON).toBeCloseTo(first, 6);
  await questions.next();
  await expect.poll(questions.asked, SOON).toBe(1);
  expect(await holdOf(page)).toBeCloseTo(first, 6);
  await questions.next();
  expect(await agrees(page)).toBe("caught");
  expect(await holdOf(page)).toBeCloseTo(first, 6);
});

test("the moment is scrubbed by pointer and keys, and the axis zooms and fits", async () => {
  const page = await openStrip();
  const moment = page.getByRole("slider", { name: "Moment shown" });
  const now = async (): Promise<number> => Number(await moment.getAttribute("aria-valuenow"));
  await page.locator(".transport button").nth(1).click();
  const stage = await page.locator(".strip-stage").boundingBox();
  if (stage === null) throw new Error("no stage");
  await page.mouse.click(stage.x + stage.width / 2, stage.y + 60);
  await expect.poll(now, SOON).toBeGreaterThan(3);
  const before = await now();
  await moment.focus();
  await page.keyboard.press("PageUp");
  await expect.poll(now, SOON).toBeCloseTo(before + 0.5, 1);

  const fit = page.getByRole("button", { name: "Fit" });
  expect(await fit.isDisabled()).toBe(true);
  await page.getByRole("button", { name: "Show less time" }).click();
  await page.getByRole("scrollbar", { name: "Stretch of time shown" }).waitFor();
  await page.keyboard.press("0");
  await expect.poll(() => fit.isDisabled(), SOON).toBe(true);
});

test("the four pictures draw, are read off, follow the replay and leave as SVG", async () => {
  const page = await openStrip();
  await page.getByRole("radio", { name: "Swing" }).click();
  const cards = page.locator("figure.plot");
  await expect.poll(() => cards.count(), SOON).toBe(4);
  for (let i = 0; i < 4; i++) {
    await cards.nth(i).scrollIntoViewIfNeeded();
    await expect
      .poll(async () => (await pixelsOf(cards.nth(i).locator(".plot-live"))).colours, SOON)
      .toBeGreaterThan(5);
  }
  const live = cards.first().locator(".plot-live");
  await live.scrollIntoViewIfNeeded();
  const before = await pixelsOf(live);
  await expect.poll(async () => (await pixelsOf(live)).digest, SOON).not.toBe(before.digest);

  const box = await live.boundingBox();
  await page.mouse.move((box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + 40);
  await expect
    .poll(() => cards.first().locator(".plot-reading").textContent(), SOON)
    .toMatch(/at \d+\.\d+ s\s+.*angle −?\d+\.\d°/s);

  const download = page.waitForEvent("download");
  await cards.first().getByRole("button", { name: "SVG" }).click();
  expect((await download).suggestedFilename()).toMatch(/-angle\.svg$/);
});
