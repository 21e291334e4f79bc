/** The set as sheets: the same words as in the PDFs, the same paper, the files of the archive, and why a document is missing. */
import { describe, expect, test } from "vitest";
import { leafSvg, leafSvgFile } from "../../../core/sheet/leaf-svg.ts";
import { PAPERS } from "../../../core/sheet/paper.ts";
import { type DocumentName, type PaperDocument, paperSet } from "../../../core/sheet/paper-set.ts";
import { sheetSet } from "../../../core/sheet/sheet-set.ts";
import { EXAMPLES } from "../doors.ts";
import { exampleInput, fileOf, inputOf, outputOf, program, variant } from "./sample.ts";

const poppler = program("pdftotext", "poppler-utils");

const named = (set: readonly PaperDocument[], name: DocumentName): PaperDocument => {
  const found = set.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

/** Letters in any order: a PDF's reader puts columns together, and words apart, in its own way. */
const lettersOf = (text: string): string => [...text.replace(/\s+/g, "")].sort().join("");

const ENTITIES: Readonly<Record<string, string>> = { "&amp;": "&", "&lt;": "<", "&gt;": ">", "&quot;": '"' };
const svgText = (svg: string): string =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)]
    .map(([, text]) => text.replace(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity))
    .join("\n");

describe.skipIf(!poppler.there)(`poppler reads${poppler.why}`, () => {
  test.each(["build-sheet", "bench-card"] as const)(
    "on every sheet of the %s the words of that page of its PDF",
    async (name) => {
      const input = exampleInput("medium-dog");
      const { leaves } = named(await paperSet(input, PAPERS.a4, "iec"), name);
      const file = (await sheetSet(input, PAPERS.a4)).find((one) => one.name === `${name}.pdf`);
      const path = fileOf("page.pdf", file?.bytes ?? "");
      leaves.forEach((leaf, i) => {
        const page = String(i + 1);
        const read = outputOf("pdftotext", ["-f", page, "-l", page, path, "-"]).toString();
        // What the PDF's faces lack is written otherwise there.
        const shown = svgText(leafSvg(leaf)).replaceAll("≈", "about ").replaceAll("⌀", "Ø");
        expect(lettersOf(shown)).toBe(lettersOf(read));
      });
    },
  );
});

test.each([PAPERS.a4, PAPERS.letter])(
  "on $title every sheet is of that paper, upright or lying",
  async (paper) => {
    const set = await paperSet(exampleInput("medium-dog"), paper, "iec");
    expect(set.map(({ leaves }) => leaves.length > 0)).toEqual([true, true, true, true, true]);
    for (const { name, leaves } of set) {
      expect(new Set(leaves.map((leaf) => leaf.name)).size).toBe(leaves.length);
      for (const { widthMm, heightMm } of leaves) {
        const size = name === "wiring" || widthMm > heightMm ? [heightMm, widthMm] : [widthMm, heightMm];
        expect(size).toEqual([paper.widthMm, paper.heightMm]);
      }
    }
  },
);

test.each(EXAMPLES)("%s: every file a document names is one of the set's", async (name) => {
  const input = exampleInput(name);
  const there = (await sheetSet(input, PAPERS.a4)).map((file) => file.name);
  const asked = (await paperSet(input, PAPERS.a4, "iec")).flatMap(({ files }) => files);
  expect(asked.filter((file) => !there.includes(file))).toEqual([]);
  expect(asked).toContain("circuit.cir");
});

test("the program on paper is the file line by line, its long lines broken within the margins", async () => {
  const input = exampleInput("medium-dog");
  const file = (await sheetSet(input, PAPERS.a4)).find((one) => one.name === "hold-timer.c");
  const lines = new TextDecoder().decode(file?.bytes).trimEnd().split("\n");
  const { leaves } = named(await paperSet(input, PAPERS.a4, "iec"), "timer-program");
  const letters = leaves.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === "words" && mark.mono === true ? [mark] : [])),
  );
  const numbers = letters.filter(({ x }) => x === 16).map(({ text }) => Number(text));
  expect(numbers).toEqual(lines.map((_, i) => i + 1));
  expect(letters.filter(({ x }) => x !== 16).map(({ text }) => text)).toEqual(
    lines.filter((line) => line !== ""),
  );
  for (const { text, x, size } of letters) {
    expect(x + text.length * 0.602 * size * (25.4 / 72)).toBeLessThan(PAPERS.a4.widthMm - 16);
  }
});

test("a door without a circuit has no wiring and says why; one without a timer or a hold no program", async () => {
  const bare = { solenoid: null, supply: null, timer: null, driver: null, latch: null };
  const set = await paperSet(inputOf(variant(bare)), PAPERS.a4, "iec");
  expect(named(set, "wiring")).toMatchObject({
    leaves: [],
    files: [],
    missing: expect.stringContaining("no circuit"),
  });
  expect(named(set, "timer-program")).toMatchObject({
    leaves: [],
    files: [],
    missing: expect.stringContaining("no hold is sure"),
  });
  expect(named(set, "build-sheet").missing).toBeNull();
});

test("a sheet as a file carries its faces, and a name that is no markup", () => {
  const leaf = {
    name: "1",
    widthMm: 100,
    heightMm: 50,
    marks: [
      { kind: "words", text: 'R < 2 & "Ω"', x: 5, y: 10, size: 72, colour: "#000000", strong: true },
      { kind: "rule", x: 5, y: 20, length: 40, colour: "#111111", width: 0.5 },
      { kind: "box", x: 1, y: 2, width: 3, height: 4, fill: null, edge: "#222222", edgeWidth: 0.1 },
    ],
  } as const;
  const svg = leafSvgFile(leaf, "<b>");
  expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
  expect(svg).toContain("<title>&lt;b&gt;</title>");
  expect(svg.match(/@font-face/g)).toHaveLength(4);
  // 72 points are an inch.
  expect(svg).toContain(
    'font-size="25.4" fill="#000000" font-weight="600">R &lt; 2 &amp; &quot;Ω&quot;</text>',
  );
  expect(svg).toContain('<line x1="5" y1="20" x2="45" y2="20" stroke="#111111" stroke-width="0.5"/>');
  expect(svg).toContain(
    '<rect x="1" y="2" width="3" height="4" fill="none" stroke="#222222" stroke-width="0.1"/>',
  );
  expect(leafSvg(leaf)).not.toMatch(/@font-face| id=|data:/);
});

test("what a sheet's window does not show is cut off, at full size", async () => {
  const { leaves } = named(await paperSet(exampleInput("medium-dog"), PAPERS.a4, "iec"), "drill-template");
  const tile = leaves.find(({ name }) => name === "flap A1");
  const inner =
    /<svg x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)" viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(
      leafSvg(tile ?? leaves[0]),
    );
  // Same size inside as outside: 1 : 1.
  expect(inner?.slice(3, 5)).toEqual(inner?.slice(7, 9));
  expect(leaves[0].name).toBe("guide");
});

test.each(EXAMPLES)(
  "%s: no table's head, no heading and no words that lead over end a sheet",
  async (name) => {
    for (const system of ["metric", "inch"] as const) {
      for (const paper of [PAPERS.a4, PAPERS.letter]) {
        const set = await paperSet(exampleInput(name, system), paper, "iec");
        for (const { leaves } of [named(set, "build-sheet"), named(set, "bench-card")]) {
          for (const { marks } of leaves) {
            // The foot's two words come last.
            const words = marks.flatMap((mark) => (mark.kind === "words" ? [mark] : [])).slice(0, -2);
            const lowest = words.reduce((low, mark) => (mark.y > low.y ? mark : low));
            // Heads and headings alone are set strong; so are verdicts, which never stand alone on their line.
            const line = words.filter(({ y }) => Math.abs(y - lowest.y) < 0.1);
            expect(lowest.text).not.toMatch(/:$/);
            expect(
              line.every(({ strong }) => strong) ? `${lowest.text} (${system}, ${paper.title})` : "",
            ).toBe("");
          }
        }
      }
    }
  },
);
