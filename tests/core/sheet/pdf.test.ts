/** The PDFs measured with poppler's programs: paper, scale, faces, words. */
import { describe, expect, test } from "vitest";
import { benchCard } from "../../../core/sheet/bench-card.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import { DRILL, INK } from "../../../core/sheet/look.ts";
import { pagePdf } from "../../../core/sheet/page-pdf.ts";
import { PAPERS, type Paper } from "../../../core/sheet/paper.ts";
import { templatePdf, templates } from "../../../core/sheet/sheet-set.ts";
import { tiling } from "../../../core/sheet/tiles.ts";
import { EXAMPLES, exampleJson } from "../doors.ts";
import { footRun, raster } from "./raster.ts";
import { drawnOf, exampleInput, fileOf, outputOf, program } from "./sample.ts";

const poppler = program("pdftoppm", "poppler-utils");
const MM = 72 / 25.4;

/** A path's stroke colour as "#rrggbb", from an attribute or a style, in percent. */
function strokeOf(tag: string): string {
  const found = /stroke[:=]"?rgb\(([\d.]+)%, ?([\d.]+)%, ?([\d.]+)%\)/.exec(tag);
  if (found === null) return "";
  const part = (percent: string) =>
    Math.round(Number(percent) * 2.55)
      .toString(16)
      .padStart(2, "0");
  return `#${found.slice(1).map(part).join("")}`;
}

/** Boxes of the paths that poppler's own converter draws in a colour: centre and size in mm. */
function boxesOf(path: string, page: number, colour: string) {
  const args = ["-svg", "-noshrink", "-f", String(page), "-l", String(page), path, "-"];
  const svg = outputOf("pdftocairo", args).toString();
  const tags = [...svg.matchAll(/<path[^>]*>/g)]
    .map(([tag]) => tag)
    .filter((tag) => strokeOf(tag) === colour);
  return tags.map((tag) => {
    const [, d] = /\sd="([^"]+)"/.exec(tag) ?? ["", ""];
    const matrix = /transform="matrix\(([^)]+)\)"/.exec(tag)?.[1].split(/[ ,]+/).map(Number);
    const [a, b, c, e, f, g] = matrix ?? [1, 0, 0, 1, 0, 0];
    const numbers = (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    const places = Array.from({ length: numbers.length / 2 }, (_, i) => {
      const [x, y] = [numbers[2 * i], numbers[2 * i + 1]];
      return [(a * x + c * y + f) / MM, (b * x + e * y + g) / MM];
    });
    const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    return { x: (left + right) / 2, y: (top + bottom) / 2, width: right - left, height: bottom - top };
  });
}

const papers = [PAPERS.a4, PAPERS.letter] as const;

describe.skipIf(!poppler.there)(`poppler measures${poppler.why}`, () => {
  test.each(papers)(
    "the template on $title: every page of that size, its scales 100 mm and 4 in long",
    async (paper: Paper) => {
      const path = fileOf("template.pdf", await templatePdf(drawnOf(exampleJson("medium-dog")), paper));
      const info = outputOf("pdfinfo", ["-f", "1", "-l", "99", path]).toString();
      const sizes = [...info.matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+) pts/g)].map((m) => [
        Number(m[1]) / MM,
        Number(m[2]) / MM,
      ]);
      expect(sizes.length).toBeGreaterThan(4);
      for (const size of sizes) {
        const [low, high] = size.sort((a, b) => a - b);
        expect(Math.abs(low - paper.widthMm)).toBeLessThan(0.02);
        expect(Math.abs(high - paper.heightMm)).toBeLessThan(0.02);
      }
      const perMm = 20;
      for (const page of [2, sizes.length]) {
        const picture = raster(path, page, perMm);
        for (const length of [100, 101.6]) {
          const run = footRun(picture, length);
          expect(Math.abs(run.length - length)).toBeLessThan(0.35);
        }
      }
    },
  );

  test.each(EXAMPLES)("%s: every bore on its page at its place and of its size, to 0.02 mm", async (name) => {
    const drawn = drawnOf(exampleJson(name));
    const path = fileOf("template.pdf", await templatePdf(drawn, PAPERS.a4));
    let page = 1;
    let found = 0;
    for (const drawing of Object.values(templates(drawn))) {
      const bores = drawing.layers
        .filter((layer) => layer.name === "DRILL")
        .flatMap(({ items }) => items.flatMap((item) => (item.kind === "circle" ? [item] : [])));
      for (const tile of tiling(drawing, PAPERS.a4).tiles) {
        page++;
        const boxes = boxesOf(path, page, DRILL);
        // The converter centres a page on its own idea of the paper, so places are measured from the page's frame.
        const frame = boxesOf(path, page, INK).find(
          ({ width, height }) => Math.hypot(width - tile.width, height - tile.height) < 0.02,
        );
        expect(frame).toBeDefined();
        const left = (frame?.x ?? 0) - tile.width / 2;
        const top = (frame?.y ?? 0) - tile.height / 2;
        for (const { centre, radius } of bores) {
          const [x, y] = [centre[0] - tile.left, centre[1] - tile.top];
          const within = (at: number, size: number) => at > radius && at < size - radius;
          if (!within(x, tile.width) || !within(y, tile.height)) continue;
          found++;
          const box = boxes.find((one) => Math.hypot(one.x - left - x, one.y - top - y) < 0.02);
          expect(box, `page ${page}: a bore at ${x}, ${y}`).toBeDefined();
          expect(Math.abs((box?.width ?? 0) - 2 * radius)).toBeLessThan(0.02);
          expect(Math.abs((box?.height ?? 0) - 2 * radius)).toBeLessThan(0.02);
        }
      }
      expect(found).toBeGreaterThan(0);
    }
  });

  test.each(papers)(
    "sheet and card on $title: faces embedded, words found, pages of that size",
    async (paper: Paper) => {
      const input = exampleInput("medium-dog");
      for (const page of [buildSheet(input, paper), benchCard(input)]) {
        const path = fileOf("page.pdf", await pagePdf(page, paper));
        const fonts = outputOf("pdffonts", [path]).toString().trim().split("\n").slice(2);
        expect(fonts.length).toBeGreaterThan(0);
        // name, type in two words, encoding, embedded, subset, to Unicode
        for (const font of fonts) expect(font).toMatch(/(TrueType|Type 0C).* yes +(yes|no) +yes/);
        const words = outputOf("pdftotext", ["-layout", path, "-"]).toString().replaceAll(/\s+/g, " ");
        for (const wanted of [input.door.name, page.title, "200 Ω", "120 mA"])
          expect(words).toContain(wanted);
        for (const block of page.blocks) {
          if (block.kind !== "heading") continue;
          expect(words).toContain(block.text);
        }
        const info = outputOf("pdfinfo", [path]).toString();
        const [, w, h] = /Page size: +([\d.]+) x ([\d.]+)/.exec(info) ?? [];
        expect(
          Math.abs(Number(w) / MM - paper.widthMm) + Math.abs(Number(h) / MM - paper.heightMm),
        ).toBeLessThan(0.05);
        expect(info).toContain(`${page.title}: ${input.door.name}`);
        expect(info).not.toContain("CreationDate");
      }
    },
  );

  test.each(EXAMPLES)(
    "%s: no word runs off a page or into its margin, metric on A4 and inch on Letter",
    async (name) => {
      for (const [system, paper] of [
        ["metric", PAPERS.a4],
        ["inch", PAPERS.letter],
      ] as const) {
        const input = exampleInput(name, system);
        for (const page of [buildSheet(input, paper), benchCard(input)]) {
          const path = fileOf("page.pdf", await pagePdf(page, paper));
          const boxes = outputOf("pdftotext", ["-bbox", path, "-"]).toString();
          const words = [
            ...boxes.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">/g),
          ];
          expect(words.length).toBeGreaterThan(100);
          for (const [tag, ...edges] of words) {
            const [left, top, right, bottom] = edges.map((value) => Number(value) / MM);
            const inside =
              left > 15.5 && right < paper.widthMm - 15.5 && top > 14 && bottom < paper.heightMm - 14;
            expect([tag, inside]).toEqual([tag, true]);
          }
        }
      }
    },
  );
});

test("the same door gives the same bytes", async () => {
  const once = async () => {
    const pdf = await templatePdf(drawnOf(exampleJson("cat")), PAPERS.a4);
    return Buffer.from(pdf).toString("latin1");
  };
  expect(await once()).toBe(await once());
});
