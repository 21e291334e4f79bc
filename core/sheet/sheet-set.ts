/**
 * Everything a door leaves the screen with, as named files in memory: the command line writes them to a folder, the app saves or
 * prints them. Same input, same bytes.
 */
import { strToU8, zipSync } from "fflate";
import { benchCard } from "./bench-card.ts";
import { buildSheet } from "./build-sheet.ts";
import { dataJson, resultsCsv, studyCsv, swingCsv } from "./data-out.ts";
import { doorViews } from "./door-views.ts";
import type { Drawing } from "./drawing.ts";
import { dxfFile } from "./dxf.ts";
import { latchDrawing } from "./latch-section.ts";
import { type Page, textRoom } from "./page.ts";
import { pageHtml } from "./page-html.ts";
import { pagePdf } from "./page-pdf.ts";
import type { Paper } from "./paper.ts";
import { tiledPdf } from "./pdf-tiles.ts";
import type { SheetInput } from "./sheet-input.ts";
import { svgFile } from "./svg.ts";
import { flapTemplate } from "./template-flap.ts";
import { frameTemplate } from "./template-frame.ts";
import { templateGuide } from "./template-guide.ts";

export interface SheetFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
  /** What it is, for a list of files. */
  readonly what: string;
}

/** All that drawings at full size are made from. */
export type Drawn = Pick<SheetInput, "door" | "plan" | "sizes">;

/** Full-size drawings by the name of their files. */
export function templates({ door, plan, sizes }: Drawn): Readonly<Record<"flap" | "frame", Drawing>> {
  return { flap: flapTemplate(door, plan, sizes), frame: frameTemplate(door, plan, sizes) };
}

/** The template's PDF. */
export function templatePdf(input: Drawn, paper: Paper): Promise<Uint8Array> {
  const drawings = Object.values(templates(input));
  return tiledPdf(templateGuide(input.door.name, drawings, paper), drawings, paper);
}

/** The whole set for a paper. */
export async function sheetSet(input: SheetInput, paper: Paper): Promise<SheetFile[]> {
  return [
    ...(await pageFiles("build-sheet", buildSheet(input, paper), paper)),
    pdfFile(
      "drill-template.pdf",
      await templatePdf(input, paper),
      "flap and frame at full size, to print and glue",
    ),
    ...Object.entries(templates(input)).flatMap(([name, drawing]) =>
      drawingFiles(`template-${name}`, drawing),
    ),
    ...(await pageFiles("bench-card", benchCard(input), paper)),
    ...pictureFiles(input, paper),
    ...dataFiles(input),
  ];
}

async function pageFiles(name: string, page: Page, paper: Paper): Promise<SheetFile[]> {
  return [
    textFile(`${name}.html`, "text/html", pageHtml(page, paper), `${page.title.toLowerCase()} for a browser`),
    pdfFile(`${name}.pdf`, await pagePdf(page, paper), `${page.title.toLowerCase()} on ${paper.title}`),
  ];
}

function drawingFiles(name: string, drawing: Drawing): SheetFile[] {
  return [
    textFile(`${name}.svg`, "image/svg+xml", svgFile(drawing), `${drawing.title}, full size`),
    textFile(`${name}.dxf`, "image/vnd.dxf", dxfFile(drawing), `${drawing.title}, full size, layers by name`),
  ];
}

function pictureFiles({ computed, plan, sizes }: SheetInput, paper: Paper): SheetFile[] {
  const { width } = textRoom(paper);
  const views = doorViews(computed, plan, sizes, { width, height: 150 });
  const files = [textFile("door.svg", "image/svg+xml", svgFile(views), "the door drawn to scale")];
  if (plan.bolt !== null) {
    files.push(
      textFile(
        "latch.svg",
        "image/svg+xml",
        svgFile(latchDrawing(plan, sizes, { width, height: 150 })),
        "the latch cut open",
      ),
    );
  }
  return files;
}

function dataFiles(input: SheetInput): SheetFile[] {
  const files = [
    textFile("results.csv", "text/csv", resultsCsv(input), "every figure, SI units"),
    textFile("swing.csv", "text/csv", swingCsv(input), "the swing, SI units"),
    textFile("data.json", "application/json", dataJson(input), "figures, findings and swing for programs"),
  ];
  if (input.study !== null) {
    files.push(
      textFile("study.csv", "text/csv", studyCsv(input.study), "share of doors caught at each hold"),
    );
  }
  return files;
}

const textFile = (name: string, type: string, text: string, what: string): SheetFile => ({
  name,
  type,
  bytes: strToU8(text),
  what,
});

const pdfFile = (name: string, bytes: Uint8Array, what: string): SheetFile => ({
  name,
  type: "application/pdf",
  bytes,
  what,
});

/** The earliest moment a zip can name: the same files give the same bytes whenever they are packed. */
const ZIP_EPOCH = "1980-01-01T12:00:00";

/** All files of a set in one, below a folder of that name. */
export function zipFile(folder: string, files: readonly SheetFile[]): Uint8Array {
  const entries = Object.fromEntries(files.map(({ name, bytes }) => [`${folder}/${name}`, bytes]));
  return zipSync(entries, { mtime: ZIP_EPOCH, level: 6 });
}
