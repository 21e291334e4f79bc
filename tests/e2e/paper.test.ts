// Paper: every sheet seen as it is printed, printed at full size, saved one by one or all together.
import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { PAPERS } from "../../core/sheet/paper.ts";
import { footRun, raster } from "../core/sheet/raster.ts";
import { exampleInput, fileOf, outputOf, program } from "../core/sheet/sample.ts";
import { setUpApp } from "./harness/app.ts";
import { violations } from "./helpers/axe.ts";
import { chooseFile, entry, exampleText, openBench, SOON, station } from "./helpers/bench.ts";

const app = setUpApp();
const poppler = program("pdftoppm", "poppler-utils");
const MM = 72 / 25.4;

const DOCUMENTS = ["build-sheet", "drill-template", "wiring", "bench-card", "timer-program"] as const;

const leaf = (page: Page) => page.locator(".paper-leaf");
const shown = (page: Page) => leaf(page).getAttribute("aria-label");
const words = async (page: Page): Promise<string> => (await leaf(page).locator("> svg").textContent()) ?? "";
const documentEntry = (page: Page, name: string) => page.locator(`[data-document="${name}"]`);

async function openPaper(page: Page): Promise<void> {
  await page.keyboard.press("Control+p");
  await leaf(page).locator("svg text").first().waitFor({ state: "attached", timeout: 60_000 });
}

/** What a printer would get. */
async function printed(page: Page): Promise<string> {
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send("Page.printToPDF", { preferCSSPageSize: true });
  return fileOf("printed.pdf", Buffer.from(data, "base64"));
}

async function download(
  page: Page,
  name: string,
): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const coming = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("button", { name, exact: true }).click();
  const file = await coming;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

test("every document is drawn, with its words, and leafed through by keyboard to the last sheet", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await openPaper(page);
  const seen = new Map<string, string>();
  for (let i = 0; i < 60; i++) {
    const name = (await shown(page)) ?? "";
    if (seen.has(name)) break;
    seen.set(name, await words(page));
    expect(await leaf(page).locator("svg :is(text, line, polyline, polygon)").count()).toBeGreaterThan(10);
    await page.keyboard.press("PageDown");
  }
  const of = (title: string) =>
    [...seen]
      .filter(([name]) => name.startsWith(title))
      .map(([, text]) => text)
      .join(" ");
  expect(of("Build sheet")).toContain(exampleInput("medium-dog").door.name);
  expect(of("Drill template")).toContain("100 mm");
  expect(of("Wiring")).toContain("IEC 60617");
  expect(of("Bench card")).toContain("kitchen scale");
  expect(of("Timer program")).toContain("#include");
  expect([...seen.keys()].filter((name) => name.startsWith("Drill template")).length).toBeGreaterThan(4);
  await page.keyboard.press("Home");
  expect(await shown(page)).toBe("Timer program, sheet 1");
  await page.keyboard.press("PageUp");
  expect(await shown(page)).toMatch(/^Bench card, sheet \d$/);
  await page.keyboard.press("Escape");
  await expect.poll(() => page.locator(".paper").count(), SOON).toBe(0);
  await station(page, "timer");
});

test("paper, units and symbols change the sheets; near, far, by wheel and by hand", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await openPaper(page);
  const ratio = async (): Promise<number> => {
    const box = await leaf(page).boundingBox();
    return (box?.height ?? 0) / (box?.width ?? 1);
  };
  await expect.poll(ratio, SOON).toBeCloseTo(297 / 210, 2);
  await page.getByRole("radio", { name: "inch" }).click();
  await expect.poll(ratio, SOON).toBeCloseTo(11 / 8.5, 2);
  await documentEntry(page, "wiring").click();
  await expect.poll(() => words(page), SOON).toContain("IEEE 315");
  await page.getByRole("radio", { name: "IEC" }).click();
  await expect.poll(() => words(page), SOON).toContain("IEC 60617");
  await page.getByRole("radio", { name: "A4" }).click();
  await expect.poll(ratio, SOON).toBeCloseTo(210 / 297, 2);
  await documentEntry(page, "drill-template").click();
  await page.mouse.move(900, 400);
  await page.mouse.wheel(0, 120);
  await expect.poll(() => shown(page), SOON).toBe("Drill template, sheet flap A1");
  await page.getByRole("combobox", { name: /Sheet/ }).selectOption({ label: "frame A1" });
  expect(await shown(page)).toBe("Drill template, sheet frame A1");
  const wide = async (): Promise<number> => (await leaf(page).boundingBox())?.width ?? 0;
  const whole = await wide();
  await page.getByRole("button", { name: "Nearer" }).click();
  await page.keyboard.press("+");
  await expect.poll(wide, SOON).toBeGreaterThan(whole * 1.3);
  const y = async (): Promise<number> => (await leaf(page).boundingBox())?.y ?? 0;
  const before = await y();
  await page.mouse.move(900, 500);
  await page.mouse.down();
  await page.mouse.move(900, 420, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => before - (await y()), SOON).toBeCloseTo(80, -1);
  await page.keyboard.press("0");
  await expect.poll(wide, SOON).toBeCloseTo(whole, 0);
});

describe.skipIf(!poppler.there)(`printed, and measured by poppler${poppler.why}`, () => {
  test.each([
    ["a4", "A4"],
    ["letter", "Letter"],
  ] as const)(
    "the template on %s: every page of that size, the ruler 100 mm within 0.2 mm",
    async (name, label) => {
      const page = await openBench(app, { reducedMotion: "reduce" });
      await openPaper(page);
      await page.getByRole("radio", { name: label }).click();
      await documentEntry(page, "drill-template").click();
      await expect.poll(() => page.locator(".paper-scale").textContent(), SOON).toContain(label);
      const sheets = await page.locator(".paper-which option").count();
      const path = await printed(page);
      const sizes = pageSizes(path);
      expect(sizes).toHaveLength(sheets);
      for (const [width, height] of sizes) {
        expect(Math.abs(width - PAPERS[name].widthMm)).toBeLessThan(0.2);
        expect(Math.abs(height - PAPERS[name].heightMm)).toBeLessThan(0.2);
      }
      const text = outputOf("pdftotext", [path, "-"]).toString();
      expect(text).toContain("Print at 100 %");
      // Nothing of the bench comes along.
      expect(text).not.toContain("Back to the door");
      for (const at of [2, sheets]) {
        const picture = raster(path, at, 20);
        for (const length of [100, 101.6])
          expect(Math.abs(footRun(picture, length).length - length)).toBeLessThan(0.2);
      }
    },
  );

  test.each(DOCUMENTS)("%s: one page a sheet, faces embedded, the words of the preview", async (name) => {
    const page = await openBench(app, { reducedMotion: "reduce" });
    await openPaper(page);
    await documentEntry(page, name).click();
    await expect.poll(() => documentEntry(page, name).getAttribute("aria-current"), SOON).toBe("page");
    const sheets = await page.locator(".paper-which option").count();
    const path = await printed(page);
    expect(pageSizes(path)).toHaveLength(sheets);
    const fonts = outputOf("pdffonts", [path]).toString();
    // Name, type and encoding, then whether it is embedded.
    const embedded = fonts
      .split("\n")
      .slice(2, -1)
      .map((line) => /(yes|no) +(yes|no) +(yes|no) +\d+ +\d+$/.exec(line)?.[1]);
    expect(embedded.length).toBeGreaterThan(0);
    expect(new Set(embedded)).toEqual(new Set(["yes"]));
    const read = outputOf("pdftotext", ["-f", "1", "-l", "1", path, "-"]).toString().replace(/\s/g, "");
    const letters = (text: string): string => [...text.replace(/\s/g, "")].sort().join("");
    expect(letters(read)).toBe(letters(await words(page)));
  });
});

function pageSizes(path: string): [number, number][] {
  const info = outputOf("pdfinfo", ["-f", "1", "-l", "99", path]).toString();
  return [...info.matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+) pts/g)].map((m) => [
    Number(m[1]) / MM,
    Number(m[2]) / MM,
  ]);
}

/** Part of a picture's window, mm of a sheet 297 mm wide, that is darker than half. */
function darkShare(page: Page, png: string, window: readonly number[]): Promise<number> {
  return page.evaluate(
    async ({ source, box }) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const [x, y, width, height] = box.map((mm) => Math.round((mm * image.width) / 297));
      const pen = new OffscreenCanvas(width, height).getContext("2d");
      if (pen === null) throw new Error("no 2d context");
      pen.drawImage(image, -x, -y);
      const { data } = pen.getImageData(0, 0, width, height);
      let dark = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i] < 128) dark++;
      return dark / (width * height);
    },
    { source: `data:image/png;base64,${png}`, box: [...window] },
  );
}

test("the button asks the browser to print; nothing is left in the page after", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await page.evaluate(() => {
    window.print = () => {
      window.dispatchEvent(new Event("beforeprint"));
      document.title = `${document.querySelectorAll(".print-sheet > svg").length} printed`;
      window.dispatchEvent(new Event("afterprint"));
    };
  });
  await openPaper(page);
  const sheets = await page.locator(".paper-which option").count();
  await page.getByRole("button", { name: /^Print \d+ sheets/ }).click();
  await expect.poll(() => page.title(), SOON).toBe(`${sheets} printed`);
  expect(await page.locator(".print-sheets").count()).toBe(0);
  await documentEntry(page, "wiring").click();
  await page.keyboard.press("Control+p");
  await expect.poll(() => page.title(), SOON).toBe("1 printed");
  const counts = await page.locator(".paper-entry-count").allTextContents();
  const all = counts.reduce((sum, count) => sum + Number.parseInt(count, 10), 0);
  await page.getByRole("button", { name: `Print all ${all} sheets` }).click();
  await expect.poll(() => page.title(), SOON).toBe(`${all} printed`);
  // The next time it is the document shown again.
  await page.keyboard.press("Control+p");
  await expect.poll(() => page.title(), SOON).toBe("1 printed");
});

describe("saved", () => {
  test("one document as PDF, one sheet as SVG and PNG, each true to size; DXF, C, netlist; all as one archive", async () => {
    const page = await openBench(app, { reducedMotion: "reduce" });
    await openPaper(page);
    const pdf = await download(page, "Save build-sheet.pdf");
    expect([pdf.name, strFromU8(pdf.bytes.subarray(0, 5))]).toEqual(["medium-dog-build-sheet.pdf", "%PDF-"]);
    await expect
      .poll(() => page.locator(".paper-said[role=status]").textContent(), SOON)
      .toContain("medium-dog-build-sheet.pdf");
    await documentEntry(page, "drill-template").click();
    const dxf = await download(page, "Save template-flap.dxf");
    expect(dxf.bytes.toString("latin1")).toMatch(/^\s*0\s+SECTION/);
    await page.keyboard.press("PageDown");
    const svg = await download(page, "Save drill-template-flap-A1.svg");
    expect(svg.bytes.toString("utf8")).toMatch(
      /<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/,
    );
    const png = await download(page, "Save drill-template-flap-A1.png");
    expect(png.name).toBe("medium-dog-drill-template-flap-A1.png");
    const header = new DataView(png.bytes.buffer, png.bytes.byteOffset);
    // IHDR: width, height; pHYs: 300 dpi are 11811 dots to the metre.
    expect([header.getUint32(16), header.getUint32(20)]).toEqual([2480, 3508]);
    expect(header.getUint32(41)).toBe(11_811);

    await documentEntry(page, "wiring").click();
    // Between 22 and 110 mm across and 158 and 178 mm down stand what to expect and its figures: a face that came too late left them out.
    const dots = (await download(page, "Save wiring.png")).bytes.toString("base64");
    expect(await darkShare(page, dots, [22, 158, 88, 20])).toBeGreaterThan(0.01);
    expect((await download(page, "Save circuit.cir")).bytes.toString("utf8")).toContain(".end");
    await documentEntry(page, "timer-program").click();
    expect((await download(page, "Save hold-timer.c")).bytes.toString("utf8")).toContain("#include");
    const zip = await download(page, "Everything as one ZIP…");
    const names = Object.keys(unzipSync(zip.bytes));
    expect(names).toContain("medium-dog-build/bench-card.html");
    expect(names).toContain("medium-dog-build/wiring.svg");
  });
});

describe("where there is no paper, or none to build from", () => {
  test("a door that fails says so in place, with its findings", async () => {
    const page = await openBench(app, { reducedMotion: "reduce" });
    await chooseFile(page, "never.door.json", exampleText("never-latches"));
    await page.getByText("never.door.json").waitFor();
    await openPaper(page);
    const warning = page.locator(".paper-warning");
    expect(await warning.textContent()).toMatch(/Do not build this yet.*no hold is sure/s);
    await warning.locator("summary").click();
    expect(await warning.locator("li").first().isVisible()).toBe(true);
    expect(await violations(page)).toEqual([]);
  });

  test("a wrong entry leaves nothing to print, and is told; mended, the sheets come back", async () => {
    const page = await openBench(app, { reducedMotion: "reduce" });
    await station(page, "magnets");
    await entry(page, "magnets.gap").fill("wide");
    await page.keyboard.press("Control+p");
    const told = page.locator(".paper-empty");
    await expect.poll(() => told.textContent(), SOON).toContain("There is no paper of this door as it is");
    expect(await told.textContent()).toContain("magnets.gap");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Control+z");
    await openPaper(page);
  });

  test("a door without a circuit has no wiring, and its entry says why", async () => {
    const page = await openBench(app, { reducedMotion: "reduce" });
    const { solenoid, supply, timer, driver, latch, ...bare } = JSON.parse(exampleText("medium-dog"));
    expect([solenoid, supply, timer, driver, latch].every((part) => part !== undefined)).toBe(true);
    await chooseFile(page, "bare.door.json", JSON.stringify(bare));
    await page.getByText("bare.door.json").waitFor();
    await openPaper(page);
    expect(await documentEntry(page, "wiring").textContent()).toContain("there is no circuit to draw");
  });
});

describe.each(["light", "dark"] as const)("in %s colours", (colorScheme) => {
  test("axe has nothing to object to, and the whole view is reached by Tab", async () => {
    const page = await openBench(app, { colorScheme, reducedMotion: "reduce" });
    await openPaper(page);
    for (const name of ["build-sheet", "drill-template"]) {
      await documentEntry(page, name).click();
      expect(await violations(page)).toEqual([]);
    }
    const sheets = await page.locator(".paper-which option").count();
    const reached = new Set<string>();
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press("Tab");
      reached.add(
        await page.evaluate(() => {
          const element = document.activeElement as HTMLElement;
          return element.getAttribute("aria-label") ?? element.textContent ?? "";
        }),
      );
    }
    const all = [...reached].join("|");
    for (const name of [
      "Back to the door",
      "Save drill-template.pdf",
      "Everything as one ZIP",
      "Nearer",
      `Print ${sheets} sheets`,
    ])
      expect(all).toContain(name);
    // The focus stays in the view, which lies over the bench.
    expect(all).not.toContain("Name of the door");
  });
});

test("with double text everything is in reach and nothing sticks out", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  for (let i = 0; i < 5; i++) await page.keyboard.press("Control+Equal");
  await openPaper(page);
  const overflow = () =>
    page.evaluate(() => {
      const wide = [
        document.documentElement,
        ...document.querySelectorAll(".paper-side, .paper-foot, .paper-desk"),
      ];
      return wide.map((element) => element.scrollWidth - element.clientWidth);
    });
  expect(await overflow()).toEqual([0, 0, 0, 0]);
  await page.getByRole("button", { name: "Everything as one ZIP…" }).scrollIntoViewIfNeeded();
  const [sheet, ground] = [await leaf(page).boundingBox(), await page.locator(".paper-ground").boundingBox()];
  if (sheet === null || ground === null) throw new Error("no sheet on the desk");
  expect(sheet.height).toBeGreaterThan(200);
  // All of it is to be seen.
  expect(sheet.y).toBeGreaterThanOrEqual(ground.y);
  expect(sheet.y + sheet.height).toBeLessThanOrEqual(ground.y + ground.height);
  await app.picture(page, "paper-double-text");
});

test.each([
  ["light", 1440, 900],
  ["dark", 1440, 900],
  ["light", 1024, 700],
  ["dark", 1024, 700],
] as const)("pictures of the paper view in %s colours, %d×%d", async (colorScheme, width, height) => {
  const page = await openBench(app, { colorScheme, viewport: { width, height }, reducedMotion: "reduce" });
  await openPaper(page);
  for (const name of DOCUMENTS) {
    await documentEntry(page, name).click();
    if (name === "drill-template") await page.keyboard.press("PageDown");
    await page.mouse.move(0, 0);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);
    await app.picture(page, `paper-${name}-${colorScheme}-${width}`);
  }
});
