// Changing a door: examples, entries in any unit, wrong entries, undo all the way back, ways out of a finding.
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import {
  entry,
  exampleName,
  exampleText,
  fileName,
  openBench,
  ready,
  SOON,
  saveFile,
  station,
} from "./helpers/bench.ts";

const app = setUpApp();

async function openExample(page: Page, id: string): Promise<void> {
  await page.getByRole("button", { name: "Door", exact: true }).click();
  await page.getByRole("menuitem", { name: /New from an example/ }).click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: exampleName(id) })
    .click();
  await expect.poll(() => page.getByLabel("Name of the door").inputValue(), SOON).toBe(exampleName(id));
  await ready(page);
}

test("a first start shows a door that swings", async () => {
  const page = await openBench(app);
  const clock = page.locator(".clock");
  const before = await clock.textContent();
  await expect.poll(() => clock.textContent(), SOON).not.toBe(before);
});

test("an example opens with its own verdict and findings", async () => {
  const page = await openBench(app);
  await openExample(page, "never-latches");
  await expect.poll(() => page.locator(".verdict-head").textContent(), SOON).toContain("Shut out");
  expect(await page.locator(".finding-fail").count()).toBeGreaterThan(0);
});

test("an inch fraction in a metric door is taken as written and moves the figures", async () => {
  const page = await openBench(app);
  await station(page, "magnets");
  const peak = page.locator(".figure").filter({ hasText: "strongest" }).locator(".figure-value");
  const before = await peak.textContent();
  await entry(page, "magnets.gap").fill("3/8 in");
  await expect.poll(() => peak.textContent(), SOON).not.toBe(before);
  await page.keyboard.press("Enter");
  expect(await entry(page, "magnets.gap").inputValue()).toBe("3/8 in");
  expect(await page.getByRole("button", { name: /^Undo: Change gap \(magnets\) to 3\/8 in$/ }).count()).toBe(
    1,
  );
});

test("a wrong entry keeps its text, is explained, and the last good view stays, said to be older", async () => {
  const page = await openBench(app);
  await station(page, "magnets");
  const verdict = await page.locator(".verdict-sentence").first().textContent();
  await entry(page, "magnets.gap").fill("6 furlongz");
  const fault = page.locator(".entry-fault");
  await fault.waitFor();
  expect(await fault.textContent()).toMatch(/furlongz.*expected a length/);
  expect(await entry(page, "magnets.gap").getAttribute("aria-invalid")).toBe("true");
  expect(await page.locator(".verdict-sentence").first().textContent()).toBe(verdict);
  expect(await page.locator(".verdict-older").textContent()).toContain("before a wrong entry");
  await station(page, "timer");
  await page.getByRole("button", { name: "See what is wrong" }).click();
  await page.getByRole("button", { name: "Go to gap (magnets)" }).click();
  expect(await entry(page, "magnets.gap").inputValue()).toBe("6 furlongz");
  await entry(page, "magnets.gap").fill("6 mm");
  await expect.poll(() => page.locator(".verdict-older").count(), SOON).toBe(0);
});

test("undone all the way back, the door is what it was, byte for byte", async () => {
  const page = await openBench(app);
  await openExample(page, "cat");
  await station(page, "flap");
  await entry(page, "flap.width").fill("9 in");
  await entry(page, "flap.thickness").fill("nonsense");
  await station(page, "animals");
  await page.getByRole("button", { name: "Add an animal" }).click();
  await station(page, "timer");
  await page.getByRole("button", { name: "Take out the timer" }).click();
  await page.getByRole("button", { name: "Add the timer" }).click();
  for (let i = 0; i < 5; i++) await page.keyboard.press("Control+z");
  expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
  expect(await fileName(page)).not.toContain("not saved");
  expect(await saveFile(page)).toBe(exampleText("cat"));
});

test("arrow keys nudge, and one spell of nudging is one step", async () => {
  const page = await openBench(app);
  await station(page, "opening");
  const before = await entry(page, "opening.width").inputValue();
  await entry(page, "opening.width").focus();
  for (const key of ["ArrowUp", "ArrowUp", "ArrowUp", "ArrowDown"]) await page.keyboard.press(key);
  expect(await entry(page, "opening.width").inputValue()).toBe("31 cm");
  await page.keyboard.press("Control+z");
  expect(await entry(page, "opening.width").inputValue()).toBe(before);
});

test("Escape gives up what was typed", async () => {
  const page = await openBench(app);
  await station(page, "opening");
  const before = await entry(page, "opening.width").inputValue();
  await entry(page, "opening.width").fill("77 cm");
  await page.keyboard.press("Escape");
  expect(await entry(page, "opening.width").inputValue()).toBe(before);
});

test("a way out is done as one step and the finding is gone; undo brings both back", async () => {
  const page = await openBench(app);
  await openExample(page, "never-latches");
  const does = page.getByRole("button", { name: /^Do it: Put a diode across the coil/ });
  await does.waitFor();
  const clamp = () =>
    page
      .locator(".finding-fail")
      .filter({ hasText: /clamp|flyback/i })
      .count();
  expect(await clamp()).toBe(1);
  await does.click();
  await expect.poll(clamp, SOON).toBe(0);
  await page.getByRole("button", { name: /^Undo: Put a diode/ }).click();
  await expect.poll(clamp, SOON).toBe(1);
});

test("a figure explains itself and can be copied", async () => {
  const page = await openBench(app, { permissions: ["clipboard-read", "clipboard-write"] });
  await station(page, "flap");
  await page.locator(".figure").filter({ hasText: "small angles" }).click();
  const explanation = page.getByRole("dialog");
  expect(await explanation.textContent()).toMatch(/T0 = 2π √\(I\/\(S g\)\).*Source: /s);
  await explanation.getByRole("button", { name: "Copy the figure" }).click();
  await expect.poll(() => page.evaluate(() => navigator.clipboard.readText()), SOON).toMatch(/^1\.\d+ s$/);
});

test("figures switch to inches, entries stay as they were written", async () => {
  const page = await openBench(app);
  await station(page, "opening");
  const spare = page.locator(".figure").filter({ hasText: "height left" }).locator(".figure-value");
  expect(await spare.textContent()).toMatch(/[cm]m$/);
  await page.getByRole("button", { name: "View" }).click();
  await page.getByRole("menuitemradio", { name: "Inches" }).click();
  await page.keyboard.press("Escape");
  await expect.poll(() => spare.textContent(), SOON).toMatch(/in$/);
  expect(await entry(page, "opening.width").inputValue()).toBe("29 cm");
});

test("a pinned copy stands beside the changed door", async () => {
  const page = await openBench(app);
  await page.getByRole("button", { name: "Pin a copy" }).first().click();
  await station(page, "magnets");
  await entry(page, "magnets.gap").fill("12 mm");
  await page.getByRole("radio", { name: "Compare" }).click();
  const row = page.getByRole("row").filter({ hasText: "must push" });
  await expect.poll(async () => (await row.getByRole("cell").allTextContents())[2], SOON).toMatch(/^[−+]/);
});
