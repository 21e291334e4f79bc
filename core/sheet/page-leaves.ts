/** A page's blocks laid out on sheets of paper, with a foot on every one. */
import type { Leaf, Mark } from "./leaf.ts";
import { ACCENT, INK, INK_SOFT, RULE, STATUS_COLOUR, TINT } from "./look.ts";
import {
  type Block,
  type Column,
  type Page,
  type Paragraph,
  STATUS_WORDS,
  type Table,
  TEXT_MARGIN,
} from "./page.ts";
import type { Paper } from "./paper.ts";
import { brokenLines, points, type TypeCase, typeWidth } from "./pdf-type.ts";

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
/** Side of a box to tick, mm. */
const TICK = 3.4;

/** Where the next block goes: mm from the sheet's upper left corner. */
class Layout {
  /** What is on each sheet; the last is written on. */
  readonly sheets: Mark[][] = [];
  y = TEXT_MARGIN;
  readonly left = TEXT_MARGIN;
  readonly width: number;
  readonly bottom: number;
  readonly type: TypeCase;

  constructor(type: TypeCase, paper: Paper) {
    this.type = type;
    this.width = paper.widthMm - 2 * TEXT_MARGIN;
    this.bottom = paper.heightMm - TEXT_MARGIN - FOOT;
    this.newSheet();
  }

  newSheet(): void {
    this.sheets.push([]);
    this.y = TEXT_MARGIN;
  }

  /** Starts a sheet where fewer than `height` mm are left; true where it did. */
  need(height: number): boolean {
    if (this.y + height <= this.bottom || this.y === TEXT_MARGIN) return false;
    this.newSheet();
    return true;
  }

  put(mark: Mark): void {
    this.sheets[this.sheets.length - 1].push(mark);
  }

  /** One line, its baseline at y; the layout's own y is not moved. */
  line(text: string, x: number, y: number, size: number, colour: string, strong = false): void {
    this.put({ kind: "words", text, x, y, size, colour, strong });
  }

  rule(y: number, colour: string, width: number, x = this.left, length = this.width): void {
    this.put({ kind: "rule", x, y, length, colour, width });
  }

  broken(words: string, size: number, strong: boolean, width: number): string[] {
    return brokenLines(this.type, words, size, strong, points(width));
  }
}

/** Millimetres from line to line. */
const lead = (size: number): number => (size * LEADING * 25.4) / 72;
/** From a line's top to its baseline, mm. */
const ascent = (size: number): number => (size * 1.05 * 25.4) / 72;

/** The sheets of a page, named by their number. */
export function pageLeaves(page: Page, paper: Paper, type: TypeCase): Leaf[] {
  const layout = new Layout(type, paper);
  title(layout, page);
  page.blocks.forEach((block, i) => {
    lay(layout, block, page.blocks.slice(i + 1));
  });
  return withFeet(layout.sheets, `${page.title}: ${page.door}`, paper, type);
}

/** Sheets with their foot: what they are of, and which they are. */
export function withFeet(
  sheets: readonly (readonly Mark[])[],
  title: string,
  { widthMm, heightMm }: Paper,
  type: TypeCase,
): Leaf[] {
  const foot = {
    kind: "words",
    y: heightMm - TEXT_MARGIN,
    size: SMALL,
    colour: INK_SOFT,
    strong: false,
  } as const;
  return sheets.map((marks, i) => {
    const count = `${i + 1} of ${sheets.length}`;
    const wide = (typeWidth(type, count, SMALL, false) * 25.4) / 72;
    return {
      name: String(i + 1),
      widthMm,
      heightMm,
      marks: [
        ...marks,
        { ...foot, text: title, x: TEXT_MARGIN },
        { ...foot, text: count, x: widthMm - TEXT_MARGIN - wide },
      ],
    };
  });
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

function lay(layout: Layout, block: Block, after: readonly Block[]): void {
  switch (block.kind) {
    case "heading":
      // A heading never stands alone at the foot of a page.
      layout.need(6 + lead(HEAD) + 2 + roomOf(layout, after));
      layout.y += layout.y === TEXT_MARGIN ? 0 : 5;
      layout.line(block.text, layout.left, layout.y + ascent(HEAD), HEAD, INK, true);
      layout.y += lead(HEAD) + 1.2;
      return;
    case "paragraph": {
      const size = paragraphSize(block);
      // Nor do the words that lead over to a table.
      if (after[0]?.kind === "table") layout.need(roomOf(layout, [block, ...after]));
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
      layout.put({ kind: "drawing", drawing, x: layout.left, y: layout.y, window: null });
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
      layout.newSheet();
  }
}

const paragraphSize = ({ tone }: Paragraph): number =>
  tone === "lead" ? LEAD : tone === "note" ? SMALL : BODY;

/** What of the blocks that follow a heading must stand on its page, mm. */
function roomOf(layout: Layout, [next, ...after]: readonly Block[]): number {
  switch (next?.kind) {
    case "picture":
      return next.drawing.heightMm + 8;
    case "table":
      return tableStart(layout, next);
    case "paragraph": {
      if (after[0]?.kind !== "table") return 12;
      const size = paragraphSize(next);
      const lines = layout.broken(next.text, size, false, layout.width).length;
      return lines * lead(size) + 2 + tableStart(layout, after[0]);
    }
    default:
      return 12;
  }
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
  layout.put({
    kind: "box",
    x: layout.left,
    y: baseline + 0.4 - TICK,
    width: TICK,
    height: TICK,
    fill: null,
    edge: INK,
    edgeWidth: 0.3,
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
  layout.need(tableStart(layout, table));
  tableHead(layout, cells);
  const rows = table.rows.map((row) => rowOf(layout, cells, row, table.roomy === true));
  rows.forEach(({ lines, height }, i) => {
    // The last row does not go to a new page alone.
    const last = i === rows.length - 2 ? rows[i + 1].height : 0;
    if (layout.need(height + last)) tableHead(layout, cells);
    cells.forEach((cell, k) => {
      cellText(layout, cell, lines[k], height);
    });
    layout.y += height;
    layout.rule(layout.y, RULE, 0.18);
  });
  layout.y += 3;
}

/** What of a table stands on one sheet, mm: its head is never without a row, its last row never alone. */
function tableStart(layout: Layout, { columns, rows, roomy }: Table): number {
  const cells = cellsOf(layout, columns);
  const first = rows.slice(0, rows.length === 2 ? 2 : 1);
  const heights = first.map((row) => rowOf(layout, cells, row, roomy === true).height);
  return heights.reduce((sum, height) => sum + height, headOf(layout, cells).height);
}

/** A row's lines by cell, and its height, mm. */
function rowOf(layout: Layout, cells: readonly Cell[], row: readonly string[], roomy: boolean) {
  const lines = cells.map(({ width, column }, i) => {
    const room = width - CELL_RIGHT - (column.writeIn === true ? CELL_RIGHT : 0);
    return layout.broken(row[i] ?? "", BODY, false, room);
  });
  const tall = Math.max(...lines.map(({ length }) => length)) * lead(BODY) + 2 * CELL_PAD;
  return { lines, height: roomy ? Math.max(ROOMY, tall) : tall };
}

/** The lines of a head by cell, how many the most are, and its height, mm. */
function headOf(layout: Layout, cells: readonly Cell[]) {
  const lines = cells.map(({ width, column }) =>
    layout.broken(column.title, SMALL, true, width - CELL_RIGHT),
  );
  const rows = Math.max(...lines.map(({ length }) => length));
  return { lines, rows, height: rows * lead(SMALL) + 2 };
}

function tableHead(layout: Layout, cells: readonly Cell[]): void {
  const { lines, rows, height } = headOf(layout, cells);
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
    layout.put({
      kind: "box",
      x,
      y: layout.y,
      width,
      height,
      fill: TINT,
      edge: RULE,
      edgeWidth: 0.18,
    });
  }
  const inset = column.writeIn === true ? CELL_RIGHT : 0;
  lines.forEach((words, k) => {
    const y = layout.y + CELL_PAD + k * lead(BODY) + ascent(BODY);
    layout.line(words, startOf(layout, words, BODY, false, column, x + inset, width), y, BODY, INK);
  });
}
