/** The set as one leafs through it: each document with its sheets, the files it is saved as, and why one is missing. */
import { benchCard } from "./bench-card.ts";
import { buildSheet } from "./build-sheet.ts";
import { drawingLeaf, type Leaf } from "./leaf.ts";
import { netlist } from "./netlist.ts";
import { pageLeaves } from "./page-leaves.ts";
import type { Paper } from "./paper.ts";
import { newPdf, type TypeCase } from "./pdf-type.ts";
import { timerProgram } from "./program.ts";
import { programLeaves } from "./program-leaves.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";
import { templates } from "./sheet-set.ts";
import { templateGuide } from "./template-guide.ts";
import { templateLeaves } from "./template-leaves.ts";
import { type SymbolSet, wiringDiagram } from "./wiring.ts";

export type DocumentName = "build-sheet" | "drill-template" | "wiring" | "bench-card" | "timer-program";

export interface PaperDocument {
  readonly name: DocumentName;
  readonly title: string;
  /** What it is for, a few words. */
  readonly what: string;
  /** Drawn at full size: it must be printed at 100 %. */
  readonly fullSize: boolean;
  readonly leaves: readonly Leaf[];
  /** Names of its files in `sheetSet`. */
  readonly files: readonly string[];
  /** Why there is none, a sentence; `null` where there is one. */
  readonly missing: string | null;
}

/** Lays out every document for a paper, in the order one needs them. */
export async function paperSet(
  input: SheetInput,
  paper: Paper,
  symbols: SymbolSet,
): Promise<PaperDocument[]> {
  // The faces alone are wanted: what measures a line is the same as in the PDF.
  const { type } = await newPdf("");
  return [
    {
      name: "build-sheet",
      title: "Build sheet",
      what: "the door, its parts, its settings",
      fullSize: false,
      leaves: pageLeaves(buildSheet(input, paper), paper, type),
      files: ["build-sheet.pdf", "build-sheet.html"],
      missing: null,
    },
    template(input, paper, type),
    wiring(input, paper, symbols),
    {
      name: "bench-card",
      title: "Bench card",
      what: "what to measure, what to expect",
      fullSize: false,
      leaves: pageLeaves(benchCard(input), paper, type),
      files: ["bench-card.pdf", "bench-card.html"],
      missing: null,
    },
    program(input, paper, type),
  ];
}

function template(input: SheetInput, paper: Paper, type: TypeCase): PaperDocument {
  const drawings = templates(input);
  const guide = templateGuide(input.door.name, Object.values(drawings), paper);
  return {
    name: "drill-template",
    title: "Drill template",
    what: "full size, to glue on and drill through",
    fullSize: true,
    leaves: templateLeaves(guide, drawings, paper, type),
    files: [
      "drill-template.pdf",
      ...Object.keys(drawings).flatMap((name) => [`template-${name}.svg`, `template-${name}.dxf`]),
    ],
    missing: null,
  };
}

function wiring(input: SheetInput, paper: Paper, symbols: SymbolSet): PaperDocument {
  const { solenoid, supply, timer } = input.door;
  const there = solenoid !== null || supply !== null || timer !== null;
  const circuit = netlist(input.computed) === null ? [] : ["circuit.cir"];
  return {
    name: "wiring",
    title: "Wiring",
    what: "the circuit with its values",
    fullSize: false,
    leaves: there ? [drawingLeaf(wiringDiagram(input, paper, symbols))] : [],
    files: there ? ["wiring.pdf", "wiring.svg", ...circuit] : [],
    missing: there ? null : "The file has no solenoid, no timer and no supply: there is no circuit to draw.",
  };
}

function program(input: SheetInput, paper: Paper, type: TypeCase): PaperDocument {
  const { computed, words, door } = input;
  const made = timerProgram(computed, words.system, holdToSet(input)?.time ?? null);
  const file = "hold-timer.c";
  return {
    name: "timer-program",
    title: "Timer program",
    what: "the hold for a microcontroller",
    fullSize: false,
    leaves: made === null ? [] : programLeaves(door.name, file, made.text, paper, type),
    files: made === null ? [] : [file],
    missing:
      made === null
        ? "There is no timer in the file, and no hold is sure for this door: a program would have nothing to count."
        : null,
  };
}
