/** The sheets in a real browser: full-size drawings measured, pages as they look and as they print. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { benchCard } from "../../core/sheet/bench-card.ts";
import { buildSheet } from "../../core/sheet/build-sheet.ts";
import { pageHtml } from "../../core/sheet/page-html.ts";
import { PAPERS } from "../../core/sheet/paper.ts";
import { templates } from "../../core/sheet/sheet-set.ts";
import { svgFile } from "../../core/sheet/svg.ts";
import { EXAMPLES, exampleJson } from "../core/doors.ts";
import { drawnOf, exampleInput, fileOf, outputOf, program } from "../core/sheet/sample.ts";
import { launchChromium } from "./harness/chromium.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** CSS pixels to a millimetre, by the definition of both. */
const PX = 96 / 25.4;

const poppler = program("pdftotext", "poppler-utils");

describe("full-size SVG", () => {
  test.each(EXAMPLES)("%s: scales and bores measure true in the browser", async (name) => {
    const drawn = drawnOf(exampleJson(name));
    for (const drawing of Object.values(templates(drawn))) {
      const page = await browser.newPage();
      await page.goto(`file://${fileOf("template.svg", svgFile(drawing))}`);
      const seen = await page.evaluate(() => {
        const box = (element: Element) => {
          const { x, y, width, height } = element.getBoundingClientRect();
          return { x, y, width, height };
        };
        const all = (selector: string) => [...document.querySelectorAll(selector)].map(box);
        return {
          paper: box(document.documentElement),
          scales: all("#RULER polyline"),
          bores: all("#DRILL circle"),
        };
      });
      await page.close();
      expect(seen.paper.width / PX).toBeCloseTo(drawing.widthMm, 1);
      expect(seen.paper.height / PX).toBeCloseTo(drawing.heightMm, 1);
      expect(seen.scales.length).toBe(2);
      expect(Math.abs(seen.scales[0].width / PX - 100)).toBeLessThan(0.05);
      expect(Math.abs(seen.scales[1].width / PX - 101.6)).toBeLessThan(0.05);
      const bores = drawing.layers
        .filter((layer) => layer.name === "DRILL")
        .flatMap(({ items }) => items.flatMap((item) => (item.kind === "circle" ? [item] : [])));
      expect(seen.bores.length).toBe(bores.length);
      bores.forEach(({ centre, radius }, i) => {
        const { x, y, width } = seen.bores[i];
        expect(Math.abs(width / PX - 2 * radius)).toBeLessThan(0.05);
        expect(Math.abs((x + width / 2) / PX - centre[0])).toBeLessThan(0.05);
        expect(Math.abs((y + width / 2) / PX - centre[1])).toBeLessThan(0.05);
      });
    }
  });
});

const PAGES = EXAMPLES.flatMap((name) => [
  [name, "metric", PAPERS.a4] as const,
  [name, "inch", PAPERS.letter] as const,
]);

describe("pages", () => {
  test.each(PAGES)(
    "%s, %s: its own face, nothing fetched, nothing wider than the sheet",
    async (name, system, paper) => {
      const input = exampleInput(name, system);
      for (const sheet of [buildSheet(input, paper), benchCard(input)]) {
        const page = await browser.newPage({ viewport: { width: 1000, height: 1200 } });
        const asked: string[] = [];
        page.on("request", (request) => asked.push(request.url()));
        const path = fileOf("page.html", pageHtml(sheet, paper));
        await page.goto(`file://${path}`);
        const seen = await page.evaluate(async () => {
          await document.fonts.ready;
          const main = document.querySelector("main") as HTMLElement;
          const edge = main.getBoundingClientRect();
          const wide = [...main.querySelectorAll("td, th, li, p, h1, h2, svg, figcaption")].filter(
            (element) => {
              const { left, right } = element.getBoundingClientRect();
              return (
                right > edge.right + 0.5 ||
                left < edge.left - 0.5 ||
                element.scrollWidth > element.clientWidth + 1
              );
            },
          );
          return {
            faces: [...document.fonts]
              .filter(({ status }) => status === "loaded")
              .map(({ weight }) => weight),
            wide: wide
              .filter((element) => !(element instanceof SVGElement))
              .map((element) => element.textContent),
            sheet: edge.width,
          };
        });
        expect(asked.filter((url) => !url.startsWith("data:"))).toEqual([`file://${path}`]);
        expect(seen.faces).toEqual(expect.arrayContaining(["400", "600"]));
        expect(seen.wide).toEqual([]);
        expect(seen.sheet / PX).toBeCloseTo(paper.widthMm, 0);
        await page.close();
      }
    },
  );

  test.skipIf(!poppler.there).each(PAGES)(
    `%s, %s: prints on its paper with nothing lost${poppler.why}`,
    async (name, system, paper) => {
      const input = exampleInput(name, system);
      const sheet = benchCard(input);
      const page = await browser.newPage();
      await page.goto(`file://${fileOf("page.html", pageHtml(sheet, paper))}`);
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      await page.close();
      const path = fileOf("printed.pdf", pdf);
      const info = outputOf("pdfinfo", [path]).toString();
      const [, w, h] = /Page size: +([\d.]+) x ([\d.]+)/.exec(info) ?? [];
      expect(Math.abs((Number(w) * 25.4) / 72 - paper.widthMm)).toBeLessThan(0.5);
      expect(Math.abs((Number(h) * 25.4) / 72 - paper.heightMm)).toBeLessThan(0.5);
      const words = outputOf("pdftotext", ["-layout", path, "-"]).toString().replaceAll(/\s+/g, " ");
      for (const block of sheet.blocks) if (block.kind === "heading") expect(words).toContain(block.text);
    },
  );
});
