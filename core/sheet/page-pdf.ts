/** A page's blocks laid out on paper as a PDF: real text, embedded faces, vector drawings, a foot on every page. */
import type { PDFDocument, PDFPage } from "pdf-lib";
import { ACCENT, INK, INK_SOFT, RULE, STATUS_COLOUR, TINT } from "./look.ts";
import { type Block, type Column, type Page, STATUS_WORDS, type Table, TEXT_MARGIN } from "./page.ts";
import type { Paper } from "./paper.ts";
import { drawDrawing } from "./pdf-drawing.ts";
import { brokenLines, colourOf, newPdf, points, setLine, type TypeCase, typeWidth } from "./pdf-type.ts";

/** Type sizes, points. */
const BODY = 9.5;
const SMALL = 8.5;
const LEAD = 11.5;
const HEAD = 12.5;
const TITLE = 20;
const LEADING = 1.42;
/** Foot of a page, mm. */
const FOOT = 8;
const ROOMY = 11;

/** Where the next block goes: mm from the page's upper left corner. */
class Layout {
  page: PDFPage;
  y = TEXT_MARGIN;
  readonly left = TEXT_MARGIN;
  readonly width: number;
  readonly bottom: number;
  readonly pdf: PDFDocument;
  readonly type: TypeCase;
  readonly paper: Paper;

  constructor(pdf: PDFDocument, type: TypeCase, paper: Paper) {
    this.pdf = pdf;
    this.type = type;
    this.paper = paper;
    this.width = paper.widthMm - 2 * TEXT_MARGIN;
    this.bottom = paper.heightMm - TEXT_MARGIN - FOOT;
    this.page = this.newPage();
  }

  newPage(): PDFPage {
    this.page = this.pdf.addPage([points(this.paper.widthMm), points(this.paper.heightMm)]);
    this.y = TEXT_MARGIN;
    return this.page;
  }

  /** Starts a page where fewer than `height` mm are left; true where it did. */
  need(height: number): boolean {
    if (this.y + height <= this.bottom || this.y === TEXT_MARGIN) return false;
    this.newPage();
    return true;
  }

  /** One line, its baseline `ascent` below y; y is not moved. */
  line(words: string, x: number, y: number, size: number, colour: string, strong = false): void {
    const ink = { size, strong, colour: colourOf(colour) };
    setLine(this.page, this.type, words, points(x), this.page.getHeight() - points(y), ink);
  }

  rule(y: number, colour: string, width: number, x = this.left, length = this.width): void {
    const at = this.page.getHeight() - points(y);
    this.page.drawLine({
      start: { x: points(x), y: at },
      end: { x: points(x + length), y: at },
      thickness: points(width),
      color: colourOf(colour),
    });
  }

  broken(words: string, size: number, strong: boolean, width: number): string[] {
    return brokenLines(this.type, words, size, strong, points(width));
  }
}

/** Millimetres from line to line. */
const lead = (size: number): number => (size * LEADING * 25.4) / 72;
/** From a line's top to its baseline, mm. */
const ascent = (size: number): number => (size * 1.05 * 25.4) / 72;

/** The whole file. */
export async function pagePdf(page: Page, paper: Paper): Promise<Uint8Array> {
  const { pdf, type } = await newPdf(`${page.title}: ${page.door}`);
  layPage(pdf, type, page, paper);
  return pdf.save({ addDefaultPage: false });
}

/** Adds a page's blocks to a document that may hold others. */
export function layPage(pdf: PDFDocument, type: TypeCase, page: Page, paper: Paper): void {
  const first = pdf.getPageCount();
  const layout = new Layout(pdf, type, paper);
  title(layout, page);
  page.blocks.forEach((block, i) => {
    lay(layout, block, page.blocks[i + 1]);
  });
  feet(layout, page, first);
}

function title(layout: Layout, page: Page): void {
  layout.line(page.title, layout.left, layout.y + ascent(BODY), BODY, ACCENT, true);
  layout.y += lead(BODY) + 0.5;
  for (const words of layout.broken(page.door, TITLE, true, layout.width)) {
    layout.line(words, layout.left, layout.y + ascent(TITLE), TITLE, INK, true);
    layout.y += (TITLE * 1.2 * 25.4) / 72;
  }
  layout.y += 1.5;
  layout.rule(layout.y, ACCENT, 0.6);
  layout.y += 4;
}

function feet(layout: Layout, page: Page, first: number): void {
  const pages = layout.pdf.getPages().slice(first);
  pages.forEach((one, i) => {
    layout.page = one;
    const y = layout.paper.heightMm - TEXT_MARGIN;
    const words = `${i + 1} of ${pages.length}`;
    layout.line(`${page.title}: ${page.door}`, layout.left, y, SMALL, INK_SOFT);
    const wide = (typeWidth(layout.type, words, SMALL, false) * 25.4) / 72;
    layout.line(words, layout.left + layout.width - wide, y, SMALL, INK_SOFT);
  });
}

function lay(layout: Layout, block: Block, next: Block | undefined): void {
  switch (block.kind) {
    case "heading":
      // A heading never stands alone at the foot of a page.
      layout.need(6 + lead(HEAD) + 2 + roomOf(next));
      layout.y += layout.y === TEXT_MARGIN ? 0 : 5;
      layout.line(block.text, layout.left, layout.y + ascent(HEAD), HEAD, INK, true);
      layout.y += lead(HEAD) + 1.2;
      return;
    case "paragraph": {
      const size = block.tone === "lead" ? LEAD : block.tone === "note" ? SMALL : BODY;
      flow(layout, block.text, size, block.tone === "note" ? INK_SOFT : INK, layout.left, layout.width);
      layout.y += 2;
      return;
    }
    case "table":
      layTable(layout, block);
      return;
    case "picture": {
      const { drawing } = block;
      layout.need(drawing.heightMm + lead(SMALL) + 3);
      drawDrawing(layout.page, layout.type, drawing, { x: layout.left, y: layout.y });
      layout.y += drawing.heightMm + 1;
      flow(layout, block.caption, SMALL, INK_SOFT, layout.left, layout.width);
      layout.y += 2.5;
      return;
    }
    case "verdicts":
      for (const { status, text } of block.items) {
        item(layout, text, 14, (y) => {
          layout.line(STATUS_WORDS[status], layout.left, y, BODY, STATUS_COLOUR[status], true);
        });
      }
      layout.y += 1.5;
      return;
    case "checklist":
      for (const words of block.items) item(layout, words, 7, (y) => tickBox(layout, y));
      layout.y += 1.5;
      return;
    case "list":
      for (const words of block.items) {
        item(layout, words, 5, (y) => {
          layout.line("–", layout.left + 0.5, y, BODY, INK);
        });
      }
      layout.y += 1.5;
      return;
    case "fields":
      layFields(layout, block.labels, block.perRow);
      return;
    case "break":
      layout.newPage();
  }
}

/** What must follow a heading on the same page, mm. */
function roomOf(next: Block | undefined): number {
  if (next?.kind === "picture") return next.drawing.heightMm + 8;
  return next?.kind === "table" ? 22 : 12;
}

function flow(layout: Layout, words: string, size: number, colour: string, x: number, width: number): void {
  for (const one of layout.broken(words, size, false, width)) {
    layout.need(lead(size));
    layout.line(one, x, layout.y + ascent(size), size, colour);
    layout.y += lead(size);
  }
}

/** A sentence set in, kept on one page, with its mark at the first line. */
function item(layout: Layout, words: string, indent: number, mark: (baseline: number) => void): void {
  const lines = layout.broken(words, BODY, false, layout.width - indent);
  layout.need(lines.length * lead(BODY));
  mark(layout.y + ascent(BODY));
  for (const one of lines) {
    layout.line(one, layout.left + indent, layout.y + ascent(BODY), BODY, INK);
    layout.y += lead(BODY);
  }
  layout.y += 1.2;
}

function tickBox(layout: Layout, baseline: number): void {
  const size = points(3.4);
  layout.page.drawRectangle({
    x: points(layout.left),
    y: layout.page.getHeight() - points(baseline) - points(0.4),
    width: size,
    height: size,
    borderColor: colourOf(INK),
    borderWidth: points(0.3),
  });
}

function layFields(layout: Layout, labels: readonly string[], perRow: number): void {
  const gap = 6;
  const wide = (layout.width - (perRow - 1) * gap) / perRow;
  for (let i = 0; i < labels.length; i += perRow) {
    layout.need(ROOMY + 3);
    labels.slice(i, i + perRow).forEach((label, k) => {
      const x = layout.left + k * (wide + gap);
      layout.line(label, x, layout.y + ascent(SMALL), SMALL, INK_SOFT);
      layout.rule(layout.y + ROOMY, INK_SOFT, 0.3, x, wide);
    });
    layout.y += ROOMY + 3;
  }
}

const CELL_PAD = 1.2;
const CELL_RIGHT = 2;

interface Cell {
  readonly x: number;
  readonly width: number;
  readonly column: Column;
}

function cellsOf(layout: Layout, columns: readonly Column[]): Cell[] {
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  let x = layout.left;
  return columns.map((column) => {
    const width = (layout.width * column.share) / total;
    const cell = { x, width, column };
    x += width;
    return cell;
  });
}

function layTable(layout: Layout, table: Table): void {
  const cells = cellsOf(layout, table.columns);
  tableHead(layout, cells);
  for (const row of table.rows) {
    const lines = cells.map(({ width, column }, i) => {
      const room = width - CELL_RIGHT - (column.writeIn === true ? CELL_RIGHT : 0);
      return layout.broken(row[i] ?? "", BODY, false, room);
    });
    const tall = Math.max(...lines.map(({ length }) => length)) * lead(BODY) + 2 * CELL_PAD;
    const height = table.roomy === true ? Math.max(ROOMY, tall) : tall;
    if (layout.need(height)) tableHead(layout, cells);
    cells.forEach((cell, i) => {
      cellText(layout, cell, lines[i], height);
    });
    layout.y += height;
    layout.rule(layout.y, RULE, 0.18);
  }
  layout.y += 3;
}

function tableHead(layout: Layout, cells: readonly Cell[]): void {
  const lines = cells.map(({ width, column }) =>
    layout.broken(column.title, SMALL, true, width - CELL_RIGHT),
  );
  const rows = Math.max(...lines.map(({ length }) => length));
  const height = rows * lead(SMALL) + 2;
  layout.need(height + 2 * lead(BODY));
  cells.forEach(({ x, width, column }, i) => {
    const inset = column.writeIn === true ? CELL_RIGHT : 0;
    lines[i].forEach((words, k) => {
      const y = layout.y + 0.6 + (rows - lines[i].length + k) * lead(SMALL) + ascent(SMALL);
      layout.line(
        words,
        startOf(layout, words, SMALL, true, column, x + inset, width),
        y,
        SMALL,
        INK_SOFT,
        true,
      );
    });
  });
  layout.y += height;
  layout.rule(layout.y, INK_SOFT, 0.3);
}

function startOf(
  layout: Layout,
  words: string,
  size: number,
  strong: boolean,
  column: Column,
  x: number,
  width: number,
): number {
  if (column.align !== "right") return x;
  return x + width - CELL_RIGHT - (typeWidth(layout.type, words, size, strong) * 25.4) / 72;
}

function cellText(
  layout: Layout,
  { x, width, column }: Cell,
  lines: readonly string[],
  height: number,
): void {
  if (column.writeIn === true) {
    layout.page.drawRectangle({
      x: points(x),
      y: layout.page.getHeight() - points(layout.y + height),
      width: points(width),
      height: points(height),
      color: colourOf(TINT),
      borderColor: colourOf(RULE),
      borderWidth: points(0.18),
    });
  }
  const inset = column.writeIn === true ? CELL_RIGHT : 0;
  lines.forEach((words, k) => {
    const y = layout.y + CELL_PAD + k * lead(BODY) + ascent(BODY);
    layout.line(words, startOf(layout, words, BODY, false, column, x + inset, width), y, BODY, INK);
  });
}
