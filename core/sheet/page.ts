/** Pages as data: what a build sheet or a bench card says, without how it is laid out. `page-html` and `page-pdf` render the same blocks. */
import type { FindingStatus } from "../review/finding.ts";
import type { Drawing } from "./drawing.ts";
import type { Paper } from "./paper.ts";

export interface Heading {
  readonly kind: "heading";
  readonly text: string;
}

/** `lead` is a page's first words; `note` is set small. */
export interface Paragraph {
  readonly kind: "paragraph";
  readonly text: string;
  readonly tone?: "lead" | "note";
}

export interface Column {
  readonly title: string;
  /** Share of the width. */
  readonly share: number;
  readonly align?: "left" | "right";
  /** An empty box to write in. */
  readonly writeIn?: boolean;
}

export interface Table {
  readonly kind: "table";
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Rows that are taller, for handwriting. */
  readonly roomy?: boolean;
}

export interface Picture {
  readonly kind: "picture";
  readonly drawing: Drawing;
  readonly caption: string;
}

/** Sentences with their verdict: a word, never a colour alone. */
export interface Verdicts {
  readonly kind: "verdicts";
  readonly items: readonly { readonly status: FindingStatus; readonly text: string }[];
}

/** Sentences with a box to tick. */
export interface Checklist {
  readonly kind: "checklist";
  readonly items: readonly string[];
}

/** Plain sentences, each with a dash. */
export interface List {
  readonly kind: "list";
  readonly items: readonly string[];
}

/** Labels with a line to write on, `perRow` to a row. */
export interface Fields {
  readonly kind: "fields";
  readonly perRow: number;
  readonly labels: readonly string[];
}

export interface Break {
  readonly kind: "break";
}

export type Block = Heading | Paragraph | Table | Picture | Verdicts | Checklist | List | Fields | Break;

export interface Page {
  /** The document's kind: "Build sheet". */
  readonly title: string;
  /** The door's name. */
  readonly door: string;
  readonly blocks: readonly Block[];
}

/** Margins of text pages, mm, and the room they leave. */
export const TEXT_MARGIN = 16;

/** mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

export function textRoom(paper: Paper): Room {
  return { width: paper.widthMm - 2 * TEXT_MARGIN, height: paper.heightMm - 2 * TEXT_MARGIN - 10 };
}

export const STATUS_WORDS: Readonly<Record<FindingStatus, string>> = {
  fail: "fails",
  caution: "care",
  ok: "fine",
};

export const heading = (text: string): Heading => ({ kind: "heading", text });
export const paragraph = (text: string, tone?: Paragraph["tone"]): Paragraph =>
  tone === undefined ? { kind: "paragraph", text } : { kind: "paragraph", text, tone };
export const list = (items: readonly string[]): List => ({ kind: "list", items });
export const checklist = (items: readonly string[]): Checklist => ({ kind: "checklist", items });
