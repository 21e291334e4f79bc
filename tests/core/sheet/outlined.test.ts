/** Words as outlines against poppler's reading of the same words set in a PDF: the same ink on the same spot. */
import { describe, expect, test } from "vitest";
import { text } from "../../../core/sheet/drawing.ts";
import type { Leaf, Mark } from "../../../core/sheet/leaf.ts";
import { leavesPdf } from "../../../core/sheet/leaf-pdf.ts";
import { leafSvg } from "../../../core/sheet/leaf-svg.ts";
import { outlined } from "../../../core/sheet/outlined.ts";
import { textWidth } from "../../../core/sheet/text-width.ts";
import { raster } from "./raster.ts";
import { fileOf, program } from "./sample.ts";

const poppler = program("pdftoppm", "poppler-utils");

const leafOf = (...marks: Mark[]): Leaf => ({ name: "1", widthMm: 120, heightMm: 40, marks });
const words = (line: string, x: number, y: number, strong = false): Mark => ({
  kind: "words",
  text: line,
  x,
  y,
  size: 24,
  colour: "#000000",
  strong,
});
const drawing = (...items: ReturnType<typeof text>[]): Mark => ({
  kind: "drawing",
  drawing: { title: "", widthMm: 120, heightMm: 40, layers: [{ name: "TEXT", items }] },
  x: 0,
  y: 0,
  window: null,
});

/** Box of all dark dots of a page, mm. */
function inkOf(path: string) {
  const { width, grey, perMm } = raster(path, 1, 10);
  const box = { left: Number.POSITIVE_INFINITY, right: 0, top: Number.POSITIVE_INFINITY, bottom: 0 };
  grey.forEach((value, i) => {
    if (value >= 128) return;
    const [x, y] = [(i % width) / perMm, Math.floor(i / width) / perMm];
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x + 1 / perMm);
    box.top = Math.min(box.top, y);
    box.bottom = Math.max(box.bottom, y + 1 / perMm);
  });
  return box;
}

/** The same box from the outlines themselves: their corners and control points, through their transforms. */
function outlineBox(svg: string) {
  const points = [...svg.matchAll(/<g fill="[^"]*" stroke="none" transform="([^"]*)">(.*?)<\/g>/g)].flatMap(
    ([, place, paths]) => {
      const [, tx, ty] = /translate\((\S+) (\S+)\)$/.exec(place) ?? [];
      return [
        ...paths.matchAll(/<path d="([^"]*)" transform="translate\((\S+) 0\) scale\((\S+) \S+\)"/g),
      ].flatMap(([, d, x, s]) => {
        const numbers = (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
        return Array.from({ length: numbers.length / 2 }, (_, i) => [
          Number(tx) + Number(x) + numbers[2 * i] * Number(s),
          Number(ty) - numbers[2 * i + 1] * Number(s),
        ]);
      });
    },
  );
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe.skipIf(!poppler.there)(`poppler sees${poppler.why}`, () => {
  test.each([
    ["plain", words("Hold 8.67 s", 10, 20)],
    ["strong", words("Hold 8.67 s", 10, 20, true)],
    ["with a letter of the other face", words("100 kΩ at θ", 10, 20)],
    ["in the middle", drawing(text([60, 20], "flap 280", { size: 8, anchor: "middle" }))],
    ["at the end", drawing(text([110, 20], "slot 16", { size: 8, anchor: "end", strong: true }))],
  ])("%s: the outlines lie where the PDF has its letters, to 0.15 mm", async (_what, mark) => {
    const leaf = leafOf(mark);
    const ink = inkOf(fileOf("words.pdf", await leavesPdf("words", () => [leaf])));
    const box = outlineBox(outlined(leafSvg(leaf)));
    for (const edge of ["left", "right", "top", "bottom"] as const)
      expect(Math.abs(box[edge] - ink[edge]), edge).toBeLessThan(0.15);
  });
});

test("markup in the words is words, turned words are turned about their anchor, a program's letters stay letters", () => {
  const one = outlined(leafSvg(leafOf(words('a < b & "c"', 10, 20))));
  expect(one).not.toContain("<text");
  // Seven letters, of which the quotation mark is there twice.
  expect(one.match(/<path /g)).toHaveLength(7);
  const turned = outlined(
    leafSvg(leafOf(drawing(text([50, 20], "hold", { size: 5, anchor: "middle", turn: Math.PI / 2 })))),
  );
  const back = textWidth("hold", 5) / 2;
  const [, x] = /transform="rotate\(90 50,20\) translate\((\S+) 20\)"/.exec(turned) ?? [];
  expect(Number(x)).toBeCloseTo(50 - back, 2);
  const mono = { ...words("int a;", 10, 20), mono: true } as Mark;
  expect(outlined(leafSvg(leafOf(mono)))).toContain(">int a;</text>");
});
