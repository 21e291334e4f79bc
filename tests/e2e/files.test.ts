// Doors as files in a plain browser: open, save, drop, recent, crash recovery, the unsaved question, exports.
import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import {
  chooseFile,
  entry,
  exampleText,
  fileName,
  openBench,
  ready,
  SOON,
  saveFile,
  station,
} from "./helpers/bench.ts";

const app = setUpApp();
/** Written as no program of ours would: other spacing, other line ends, a byte order mark. */
const ODD = `\ufeff${exampleText("cat").replace(/": /g, '"  :  ').replace(/\n/g, "\r\n")}`;

const shown = (page: Page): Promise<string> => page.getByLabel("Name of the door").inputValue();
const hold = (page: Page) => entry(page, "timer.holdTime");

test("open and save gives the file back byte for byte; changed, saved and opened again it is the same door", async () => {
  const page = await openBench(app);
  await chooseFile(page, "mine.door.json", ODD);
  await expect.poll(() => fileName(page), SOON).toContain("mine.door.json");
  expect(await saveFile(page)).toBe(ODD);
  await station(page, "timer");
  await hold(page).fill("11.5 s");
  await page.keyboard.press("Enter");
  expect(await fileName(page)).toContain("not saved");
  const first = await saveFile(page);
  await expect.poll(() => fileName(page), SOON).not.toContain("not saved");
  await chooseFile(page, "again.door.json", first);
  await expect.poll(() => fileName(page), SOON).toContain("again.door.json");
  expect(await hold(page).inputValue()).toBe("11.5 s");
  expect(await saveFile(page)).toBe(first);
});

test("a file that is no door is refused with the place and the reason, and nothing is lost", async () => {
  const page = await openBench(app);
  const before = await shown(page);
  await chooseFile(page, "broken.door.json", '{\n  "format": oops');
  const notice = page.getByRole("alertdialog");
  expect(await notice.textContent()).toMatch(/broken\.door\.json could not be opened.*Line 2, column 13/s);
  await notice.getByRole("button", { name: "Close" }).click();
  expect(await shown(page)).toBe(before);
});

test("a door with wrong entries opens, with each of them explained", async () => {
  const page = await openBench(app);
  await chooseFile(page, "wrong.door.json", ODD.replace("mm", "mmm").replace('"hinge"', '"hingge"'));
  await page.getByRole("heading", { name: /entries to mend/ }).waitFor();
  const text = (await page.locator(".findings").first().textContent()) ?? "";
  expect(text).toContain("hingge");
  expect(text).toContain("mmm");
});

test("a dropped file is opened", async () => {
  const page = await openBench(app);
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "dropped.door.json", { type: "application/json" }));
    return transfer;
  }, ODD);
  await page.dispatchEvent("body", "dragover", { dataTransfer: data });
  await page.getByText("Drop a door file, or a measured swing (CSV)").waitFor();
  await page.dispatchEvent("body", "drop", { dataTransfer: data });
  await expect.poll(() => fileName(page), SOON).toContain("dropped.door.json");
});

test("unsaved work is asked about before another door takes its place", async () => {
  const page = await openBench(app);
  await station(page, "timer");
  await hold(page).fill("11.5 s");
  await chooseFile(page, "mine.door.json", ODD);
  const question = page.getByRole("alertdialog");
  await question.getByRole("button", { name: "Cancel" }).click();
  expect(await hold(page).inputValue()).toBe("11.5 s");
  await chooseFile(page, "mine.door.json", ODD);
  await question.getByRole("button", { name: "Don’t save" }).click();
  await expect.poll(() => fileName(page), SOON).toContain("mine.door.json");
});

test("after a crash the unsaved work is offered and comes back", async () => {
  const page = await openBench(app);
  const context = page.context();
  await station(page, "timer");
  await hold(page).fill("11.5 s");
  await page.waitForTimeout(1500);
  // Closed without being asked, as in a crash.
  await page.close({ runBeforeUnload: false });
  const next = await context.newPage();
  await next.goto(app.url());
  const offer = next.getByRole("dialog");
  expect(await offer.textContent()).toContain("Unsaved work was found");
  await offer.getByRole("button", { name: "Recover" }).click();
  await station(next, "timer");
  expect(await hold(next).inputValue()).toBe("11.5 s");
  expect(await fileName(next)).toContain("not saved");
});

test("work that is still open in another page is not taken for a crash", async () => {
  const page = await openBench(app);
  await station(page, "timer");
  await hold(page).fill("11.5 s");
  await page.waitForTimeout(1500);
  const next = await page.context().newPage();
  await next.goto(app.url());
  await ready(next);
  expect(await next.getByRole("dialog").count()).toBe(0);
});

test("recent doors can be opened again", async () => {
  const page = await openBench(app);
  await chooseFile(page, "mine.door.json", ODD);
  await expect.poll(() => fileName(page), SOON).toContain("mine.door.json");
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Door", exact: true }).click();
  await page.getByRole("menuitem", { name: /mine\.door\.json/ }).click();
  await expect.poll(() => fileName(page), SOON).toContain("mine.door.json");
  // The browser keeps a copy of a file it cannot reach again; saving it is a download.
  expect(await saveFile(page)).toBe(ODD);
});

test("the swing is exported as the command line's table", async () => {
  const page = await openBench(app);
  await page.getByRole("button", { name: "Door", exact: true }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("menuitem", { name: /Swing as CSV/ }).click();
  const rows = readFileSync(await (await download).path(), "utf8")
    .trim()
    .split("\n");
  expect(rows[0]).toBe("time_s,angle_rad,speed_rad_per_s");
  const first = rows[1].split(",").map(Number);
  expect(first[0]).toBe(0);
  expect(Math.abs(first[1])).toBeGreaterThan(0.5);
  expect(rows.length).toBeGreaterThan(500);
});

test("the build sheet is one archive with the pages, the template and the data", async () => {
  const page = await openBench(app);
  await page.getByRole("button", { name: "Door", exact: true }).click();
  const download = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("menuitem", { name: /All sheets and data/ }).click();
  const archive = unzipSync(readFileSync(await (await download).path()));
  const names = Object.keys(archive).map((name) => name.slice(name.indexOf("/") + 1));
  for (const name of ["build-sheet.pdf", "drill-template.pdf", "template-flap.dxf", "results.csv"])
    expect(names).toContain(name);
  expect(strFromU8(archive["medium-dog-build/build-sheet.pdf"].slice(0, 5))).toBe("%PDF-");
});
