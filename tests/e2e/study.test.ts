// The studies on the page: the tolerance study with its answer, what drives it, and maps one reads off and adopts from.
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { type OpenOptions, setUpApp } from "./harness/app.ts";
import { violations } from "./helpers/axe.ts";
import { entry, openBench, SOON, station } from "./helpers/bench.ts";

const app = setUpApp();
/** For studies and maps: thousands of swings. */
const LATER = { timeout: 100_000 };

async function openStudy(options: OpenOptions = {}): Promise<Page> {
  const page = await openBench(app, options);
  await page.getByRole("radio", { name: "Study" }).click();
  return page;
}

async function runStudy(page: Page): Promise<void> {
  await page.getByLabel("Doors tried").selectOption("5000");
  await page.getByRole("button", { name: "Run the study" }).click();
  await page.locator(".study-answer").waitFor(LATER);
}

/** Cells of the map that have a colour, hatching included. */
const filled = (page: Page): Promise<number> =>
  page
    .locator(".map-stage [data-cell]")
    .evaluateAll((cells) => cells.filter((cell) => cell.getAttribute("fill") !== "none").length);

const mapShare = async (page: Page): Promise<number> =>
  Number(await page.getByRole("progressbar", { name: "Map" }).getAttribute("aria-valuenow"));

test("a study tells how far it is, can be cancelled, and recommends a hold that is set as one step", async () => {
  const page = await openStudy();
  await page.getByLabel("Doors tried").selectOption("5000");
  await page.getByRole("button", { name: "Run the study" }).click();
  const progress = page.getByRole("progressbar", { name: "Study" });
  await expect
    .poll(async () => Number(await progress.getAttribute("aria-valuenow")), SOON)
    .toBeGreaterThan(0);
  await page.getByRole("button", { name: "Cancel" }).click();
  expect(await progress.count()).toBe(0);
  await page.getByRole("button", { name: "Run the study" }).click();
  await page.locator(".study-sentence").waitFor(LATER);
  const set = page.getByRole("button", { name: /^Set the hold to / });
  const words = (await set.textContent()) ?? "";
  await set.click();
  await station(page, "timer");
  expect(await entry(page, "timer.holdTime").inputValue()).toBe(words.replace("Set the hold to ", ""));
  expect(await page.getByText("The door was changed since").count()).toBe(1);
});

test("its answer has settle times with their errors and ranked drivers, each part in figures, that lead to their inputs", async () => {
  const page = await openStudy();
  await runStudy(page);
  const times = page.getByRole("table", { name: /^Time after let-go/ }).getByRole("cell");
  const told = (await times.allTextContents()).map((text) => text.match(/^(\d+\.\d\d) ± (\d+\.\d\d) s$/));
  expect(told.length).toBe(4);
  const [quantiles, errors] = [1, 2].map((i) => told.map((match) => Number(match?.[i])));
  expect([...quantiles].sort((a, b) => a - b)).toEqual(quantiles);
  for (const error of errors) expect(error).toBeGreaterThan(0);

  const drivers = page.getByRole("table", { name: /settling time’s spread/ });
  expect(await drivers.getByRole("columnheader").allTextContents()).toEqual(["input", "in all", "by itself"]);
  const rows = drivers.getByRole("row").filter({ has: page.getByRole("rowheader") });
  const wholes = await rows.evaluateAll((found) =>
    found.map((row) => Number.parseFloat(row.querySelector("[data-strong]")?.textContent ?? "")),
  );
  expect(wholes.length).toBe(8);
  expect([...wholes].sort((a, b) => b - a)).toEqual(wholes);
  expect(await page.getByText(/^Measure: total Sobol' index .* Sobol' points/).count()).toBe(1);

  await page.getByRole("button", { name: /^\d+ more, / }).focus();
  await page.keyboard.press("Enter");
  expect(await rows.count()).toBeGreaterThan(8);
  await rows.first().getByRole("button").focus();
  await page.keyboard.press("Enter");
  await entry(page, "damper.coefficient").waitFor();
  expect(await entry(page, "damper.coefficient").evaluate((node) => node === document.activeElement)).toBe(
    true,
  );

  await page.getByRole("radio", { name: "hold needed" }).click();
  await page.getByRole("table", { name: /hold needed’s spread/ }).waitFor();
});

test("a map is drawn, read off and adopted from", async () => {
  const page = await openStudy();
  await page.getByRole("button", { name: "Draw" }).click();
  const map = page.locator(".map-stage");
  await map.scrollIntoViewIfNeeded();
  await map.focus();
  await page.keyboard.press("Home");
  await expect
    .poll(() => page.locator(".map-words").textContent(), SOON)
    .toMatch(/gap \(magnets\) 3 mm: [\d.]+ s/);
  await page.keyboard.press("Enter");
  await station(page, "magnets");
  expect(await entry(page, "magnets.gap").inputValue()).toBe("3 mm");
  expect(await page.getByRole("button", { name: "Undo: Adopt gap (magnets) 3 mm" }).count()).toBe(1);
  // It runs over just that, so that it is this door's map still.
  expect(await page.getByText("The door was changed since").count()).toBe(0);
  await entry(page, "magnets.thickness").fill("5 mm");
  await page.keyboard.press("Tab");
  await page.getByText("The door was changed since").waitFor();
});

test("a map with the tolerances in shows a whole picture early, lets one type, is cancelled, and is adopted from in one step", async () => {
  const page = await openStudy();
  await page.getByLabel("Figure", { exact: true }).selectOption("sampled.hold95");
  await page.getByRole("button", { name: "a second input" }).click();
  // Where magnets far away leave a stiff hinge to itself, there is no such hold.
  await page.getByLabel("over: to").fill("40 mm");
  await page.getByLabel("and: to").fill("60 mN m");
  await page.getByRole("button", { name: "Draw" }).click();
  await expect.poll(() => filled(page), { ...LATER, interval: 20 }).toBe(17 * 17);
  expect(await mapShare(page)).toBeLessThan(50);

  // Typing goes on meanwhile.
  await page.getByLabel("and: from").fill("2 mN m");
  expect(await page.getByLabel("and: from").inputValue()).toBe("2 mN m");
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByRole("button", { name: "Draw" }).waitFor();
  const there = await filled(page);
  expect(there).toBeLessThan(17 * 17);
  await page.waitForTimeout(500);
  expect(await filled(page)).toBe(there);

  const map = page.locator(".map-stage");
  await map.focus();
  for (let i = 0; i < 17; i++) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Home");
  expect(await page.locator(".map-words").textContent()).toMatch(
    /3 mm, dry friction \(hinge\) 2\.5 mN m: [\d.]+ s$/,
  );
  for (let i = 0; i < 17; i++) await page.keyboard.press("ArrowUp");
  await page.keyboard.press("End");
  expect(await page.locator(".map-words").textContent()).toMatch(/40 mm, .* 60 mN m: no hold does it$/);
  expect(await page.locator(".map-bar-absent").textContent()).toContain("no hold does it");

  await map.click({ position: { x: 80, y: 60 } });
  const undo = page.getByRole("button", { name: /^Undo: Adopt gap \(magnets\) .* dry friction \(hinge\) / });
  await undo.waitFor();
  await undo.click();
  await station(page, "magnets");
  expect(await entry(page, "magnets.gap").inputValue()).toBe("6 mm");
  expect(await page.getByRole("button", { name: /^Undo: Adopt/ }).count()).toBe(0);
});

test("a range that is none is refused where it stands, in words of the page", async () => {
  const page = await openStudy();
  await page.getByLabel("over: to").fill("wide");
  await page.getByRole("button", { name: "Draw" }).click();
  await page
    .getByRole("status")
    .getByText(/^gap \(magnets\): .*"wide"/)
    .waitFor();
  expect(await page.locator(".map-stage").count()).toBe(0);
});

test.each(["light", "dark"] as const)(
  "for everyone, %s: axe finds nothing, double text fits",
  async (colorScheme) => {
    const page = await openStudy({ colorScheme, viewport: { width: 1024, height: 700 } });
    await runStudy(page);
    await page.getByLabel("Figure", { exact: true }).selectOption("sampled.settle50");
    await page.getByRole("button", { name: "Draw" }).click();
    await page.locator(".map-point").first().waitFor(LATER);
    expect(await violations(page)).toEqual([]);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = "200%";
    });
    const study = page.locator(".study");
    await expect
      .poll(() => study.evaluate((node) => node.scrollWidth - node.clientWidth), SOON)
      .toBeLessThanOrEqual(0);
    // Nothing out of sight reaches beyond the panel, which would let the whole stage scroll away.
    expect(await page.locator(".stage").evaluate((node) => node.scrollHeight - node.clientHeight)).toBe(0);
    await app.picture(page, `study-double-${colorScheme}`);
  },
);
