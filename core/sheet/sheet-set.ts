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
import { netlist } from "./netlist.ts";
import { type Page, textRoom } from "./page.ts";
import { pageHtml } from "./page-html.ts";
import { pagePdf } from "./page-pdf.ts";
import type { Paper } from "./paper.ts";
import { fullPagePdf, tiledPdf } from "./pdf-tiles.ts";
import { timerProgram } from "./program.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";
import { svgFile } from "./svg.ts";
import { symbolsFor } from "./symbols-for.ts";
import { flapTemplate } from "./template-flap.ts";
import { frameTemplate } from "./template-frame.ts";
import { templateGuide } from "./template-guide.ts";
import { solenoidTemplate } from "./template-solenoid.ts";
import { type SymbolSet, wiringDiagram } from "./wiring.ts";

export interface SheetFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
  /** What it is, for a list of files. */
  readonly what: string;
}

/** All that drawings at full size are made from. */
export type Drawn = Pick<SheetInput, "door" | "plan" | "sizes">;

/** `solenoid` too, where there is a latch. */
export type Templates = Readonly<Record<"flap" | "frame", Drawing>> & Readonly<Record<string, Drawing>>;

/** Full-size drawings by the name of their files. */
export function templates({ door, plan, sizes }: Drawn): Templates {
  const solenoid = solenoidTemplate(door, plan, sizes);
  return {
    flap: flapTemplate(door, plan, sizes),
    frame: frameTemplate(door, plan, sizes),
    ...(solenoid === null ? {} : { solenoid }),
  };
}

/** The template's PDF. */
export function templatePdf(input: Drawn, paper: Paper): Promise<Uint8Array> {
  const drawings = templates(input);
  return tiledPdf(templateGuide(input.door.name, Object.values(drawings), paper), drawings, paper);
}

/** The wiring diagram's PDF: one page lying down. */
export function wiringPdf(input: SheetInput, paper: Paper, symbols: SymbolSet): Promise<Uint8Array> {
  return fullPagePdf(wiringDiagram(input, paper, symbols));
}

/** The whole set for a paper. */
export async function sheetSet(
  input: SheetInput,
  paper: Paper,
  symbols: SymbolSet = symbolsFor(input.words.system),
): Promise<SheetFile[]> {
  return [
    ...(await pageFiles("build-sheet", buildSheet(input, paper), paper)),
    pdfFile(
      "drill-template.pdf",
      await templatePdf(input, paper),
      "flap, frame and solenoid at full size, to print and glue",
    ),
    ...Object.entries(templates(input)).flatMap(([name, drawing]) =>
      drawingFiles(`template-${name}`, drawing),
    ),
    ...(await electricFiles(input, paper, symbols)),
    ...(await pageFiles("bench-card", benchCard(input), paper)),
    ...pictureFiles(input, paper),
    ...dataFiles(input),
  ];
}

/** Diagram, netlist and program; none of them for a door without a circuit or a hold. */
async function electricFiles(input: SheetInput, paper: Paper, symbols: SymbolSet): Promise<SheetFile[]> {
  const { computed, door } = input;
  const files: SheetFile[] = [];
  if (door.solenoid !== null || door.supply !== null || door.timer !== null) {
    const diagram = wiringDiagram(input, paper, symbols);
    files.push(
      textFile("wiring.svg", "image/svg+xml", svgFile(diagram), "the circuit with its values"),
      pdfFile("wiring.pdf", await fullPagePdf(diagram), `the circuit on ${paper.title}`),
    );
  }
  const circuit = netlist(computed);
  if (circuit !== null) {
    files.push(textFile("circuit.cir", "text/plain", circuit.text, "the coil's circuit for a simulator"));
  }
  const program = timerProgram(computed, input.words.system, holdToSet(input)?.time ?? null);
  if (program !== null) {
    files.push(
      textFile("hold-timer.c", "text/x-c", program.text, "the hold as a program for a microcontroller"),
    );
  }
  return files;
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
