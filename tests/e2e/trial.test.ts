// The built door back on the page: the bench's readings and a filmed swing fitted and put in as one step, tolerances of one's own.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readDoor } from "../../core/door/index.ts";
import { fitSwing } from "../../core/study/fit/fit.ts";
import { readMeasured } from "../../core/study/fit/measured.ts";
import { fitEdits } from "../../core/study/fit/write-back.ts";
import { setUpApp } from "./harness/app.ts";
import { chooseFile, entry, openBench, ready, SOON, saveFile, station } from "./helpers/bench.ts";

const app = setUpApp();
const MEASURED = resolve(import.meta.dirname, "../../assets/measured");
const DOOR = readFileSync(resolve(MEASURED, "bare-flap.door.json"), "utf8");
const SWING = readFileSync(resolve(MEASURED, "bare-flap-swing.csv"), "utf8");

const reading = (page: Page, field: string) => page.locator(`[data-trial="${field}"]`);
const put = (page: Page) => page.getByRole("button", { name: "Put into the door" });

async function chooseSwing(page: Page, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: /^Choose (a table|another)/ }).click();
  await (await chooser).setFiles({ name: "swing.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
}

/** The page loaded anew, as in another session. */
async function again(page: Page): Promise<void> {
  await page.reload();
  await ready(page);
}

/** Drops a door on the window: no chooser that a page just loaded may be slow to answer with. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ({ name, text }) => {
      const data = new DataTransfer();
      data.items.add(new File([text], name, { type: "application/json" }));
      window.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
    },
    { name, text },
  );
  await page.locator(".file-name").filter({ hasText: name }).waitFor();
}

/** Everything kept of any door's bench. */
const kept = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((done, lost) => {
        const asked = indexedDB.open("swingstill");
        asked.onerror = () => lost(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction("trials").objectStore("trials").getAll();
          all.onsuccess = () => {
            asked.result.close();
            done(all.result.map(({ text }: { text: string }) => text).join());
          };
        };
      }),
  );

/** What core itself would write into the door. */
function coreEdits(): Record<string, string> {
  const [door, swing] = [readDoor(DOOR), readMeasured(SWING)];
  if (!door.ok || !swing.ok) throw new Error("the example does not read");
  const fit = fitSwing(door.door, swing.measured);
  if (!fit.ok) throw new Error(fit.says);
  return Object.fromEntries(
    fitEdits(fit, door.file, { tolerances: true }).map(({ path, text }) => [path, text]),
  );
}

test("a filmed swing is fitted as core fits it, and put into the door with its errors as one step", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await chooseFile(page, "bare-flap.door.json", DOOR);
  await ready(page);
  await station(page, "trial");
  await chooseSwing(page, SWING);
  await page.getByText("What it tells").waitFor();
  await page.getByLabel(/Its errors too/).check();
  await put(page).click();
  await page.getByText(/In the door now/).waitFor();
  const saved = JSON.parse(await saveFile(page));
  const edits = coreEdits();
  expect(saved.hinge.frictionTorque).toBe(edits["hinge.frictionTorque"]);
  expect(saved.hinge.viscousDamping).toBe(edits["hinge.viscousDamping"]);
  expect(saved.study.tolerances["hinge.frictionTorque"]).toBe(edits["study.tolerances.hinge.frictionTorque"]);
  await page.keyboard.press("Control+z");
  await station(page, "hinge");
  expect(await entry(page, "hinge.frictionTorque").inputValue()).toBe("5 mN m");
  expect(await page.getByRole("button", { name: /^Undo/ }).isDisabled()).toBe(true);
});

test("a table that cannot be read is explained line by line; a dropped one goes to the trial", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await station(page, "trial");
  await chooseSwing(page, "time_s,angle_deg\n0,60\n0.1,wide\n");
  await expect
    .poll(() => page.locator(".trial-reasons").textContent(), SOON)
    .toContain('Line 3: given "wide", expected a number');
  await station(page, "flap");
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "dropped.csv", { type: "text/csv" }));
    window.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
  }, SWING);
  await expect.poll(() => page.locator(".trial-file-name").textContent(), SOON).toBe("dropped.csv");
  expect(await page.locator("#tab-trial").getAttribute("aria-selected")).toBe("true");
});

test("readings by hand and stopwatch: expected, told outside, explained, and the hold put in", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await station(page, "trial");
  const due = (field: string) => page.locator(".trial-row").filter({ has: reading(page, field) });
  await expect.poll(() => due("passes").textContent(), SOON).toMatch(/expect \d+; nine doors in ten/);
  await reading(page, "passes").fill("90");
  await reading(page, "push").fill("three cats");
  await reading(page, "hold").fill("11.4");
  await expect.poll(() => due("passes").textContent(), SOON).toContain("Outside what to expect");
  await expect.poll(() => due("push").textContent(), SOON).toContain('such as "620 g"');
  await put(page).click();
  await page.getByText(/In the door now/).waitFor();
  await station(page, "timer");
  expect(await entry(page, "timer.holdTime").inputValue()).toBe("11.4 s");
  expect(await page.getByRole("button", { name: "Undo: Put the measured hold into the door" }).count()).toBe(
    1,
  );
});

test("tolerances: one's own in place of the usual, a wrong one explained, taken out again", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await page.getByRole("radio", { name: "Study" }).click();
  await page.locator(".tolerances summary").click();
  const gap = entry(page, "study.tolerances.magnets.gap");
  expect(await gap.getAttribute("placeholder")).toBe("± 0.5 mm");
  await gap.fill("2 parsec");
  const row = page.locator(".tolerance").filter({ has: gap });
  await expect.poll(() => row.textContent(), SOON).toContain('The unit "parsec" is not known');
  await gap.fill("-1 mm to 2 mm");
  await expect.poll(() => row.locator(".entry-fault").count(), SOON).toBe(0);
  expect(JSON.parse(await saveFile(page)).study.tolerances).toEqual({
    "magnets.gap": { low: "-1 mm", high: "2 mm" },
  });
  await row.getByRole("button", { name: /Take out your spread/ }).click();
  expect(await gap.inputValue()).toBe("");
  await page.getByLabel("Let another input spread too").selectOption("flap.thickness");
  expect(await entry(page, "study.tolerances.flap.thickness").inputValue()).toBe("5 %");
  await page.locator('.tolerances [data-path="study.margin"]').fill("0.3");
  expect(JSON.parse(await saveFile(page)).study.margin).toBe(0.3);
});

test("bolt and coil: expected as on paper, told what it means outside, the coil's heat put into the door as one step", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await station(page, "trial");
  const due = (field: string) => page.locator(".trial-row").filter({ has: reading(page, field) });
  await expect.poll(() => due("pullIn").textContent(), SOON).toMatch(/expect [\d.]+\sV; nine doors in ten/);
  await reading(page, "lowEnd").fill("7");
  await expect.poll(() => due("lowEnd").textContent(), SOON).toContain("Outside what to expect");
  expect(await due("lowEnd").textContent()).toContain("the door locked");
  await reading(page, "coil").fill("48");
  await expect.poll(() => due("coil").textContent(), SOON).toContain('such as "48 °C"');
  await reading(page, "coil").fill("95 °C");
  await page.getByText(/With the coil’s heat as measured/).waitFor();
  await put(page).click();
  await page.getByText(/In the door now/).waitFor();
  await expect.poll(() => due("coil").textContent(), SOON).toMatch(/expect 95\s°C/);
  expect(await page.getByRole("button", { name: "Undo: Put the measured coil into the door" }).count()).toBe(
    1,
  );
  await page.getByRole("button", { name: "View" }).click();
  await page.getByRole("menuitemradio", { name: "Inches" }).click();
  await expect.poll(() => due("coil").textContent(), SOON).toMatch(/expect 203\s°F/);
});

test("readings come back when the same door is opened again, and each change of them is undone by itself", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await station(page, "trial");
  await reading(page, "still").fill("6.5");
  await reading(page, "passes").fill("14");
  await page.keyboard.press("Control+z");
  expect([await reading(page, "passes").inputValue(), await reading(page, "still").inputValue()]).toEqual([
    "",
    "6.5",
  ]);
  await page.keyboard.press("Control+y");
  expect(await reading(page, "passes").inputValue()).toBe("14");
  // The door's own steps are not touched.
  expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
  await chooseSwing(page, SWING);
  await expect.poll(() => kept(page), SOON).toContain('"swing.csv"');
  await again(page);
  await station(page, "trial");
  await expect.poll(() => reading(page, "still").inputValue(), SOON).toBe("6.5");
  expect(await page.locator(".trial-file-name").textContent()).toBe("swing.csv");
  await page.getByText("What it tells").waitFor();
  await drop(page, "other.door.json", DOOR);
  await expect.poll(() => reading(page, "still").inputValue(), SOON).toBe("");
  await reading(page, "still").fill("11");
  await expect.poll(() => kept(page), SOON).toContain('"still":"11"');
  await again(page);
  await station(page, "trial");
  await expect.poll(() => reading(page, "still").inputValue(), SOON).toBe("6.5");
  await drop(page, "other.door.json", DOOR);
  await expect.poll(() => reading(page, "still").inputValue(), SOON).toBe("11");
  await page.getByRole("button", { name: "Clear all readings" }).click();
  expect(await reading(page, "still").inputValue()).toBe("");
  await page.getByRole("button", { name: "Undo the reading: all readings" }).click();
  expect(await reading(page, "still").inputValue()).toBe("11");
});

test("in inches the fit's sentences speak inches", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await page.getByRole("button", { name: "View" }).click();
  await page.getByRole("menuitemradio", { name: "Inches" }).click();
  await page.keyboard.press("Escape");
  await station(page, "trial");
  await reading(page, "still").fill("6.5");
  const found = page.locator(".trial-found");
  await expect.poll(() => found.textContent(), SOON).toContain("It stays at");
  expect(await found.textContent()).toContain("ozf in");
  expect(await found.textContent()).not.toMatch(/\dm?N m/);
  expect(await found.textContent()).not.toContain(" mN m");
});
