/**
 * Text of a table of numbers to cells: commas, semicolons or tabs; decimal commas where semicolons or tabs divide; a byte-order
 * mark, comments (#, //, %), blank lines, quotes and any line end are understood.
 */

export interface Row {
  /** As an editor counts, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly divider: "," | ";" | "\t" | " ";
  readonly rows: readonly Row[];
}

const COMMENT = /^\s*(#|\/\/|%)/;

export function readTable(text: string): Table {
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\n|\r/);
  const kept = lines
    .map((content, i) => ({ content, line: i + 1 }))
    .filter(({ content }) => content.trim() !== "" && !COMMENT.test(content));
  const divider = dividerOf(kept.slice(0, 5).map(({ content }) => content));
  return {
    divider,
    rows: kept.map(({ content, line }) => ({ line, cells: cellsOf(content, divider) })),
  };
}

/** The divider that the first lines have most of; spaces where none has any. */
function dividerOf(lines: readonly string[]): Table["divider"] {
  const has = (sign: string) => lines.some((line) => line.includes(sign));
  if (has(";")) return ";";
  if (has("\t")) return "\t";
  return has(",") ? "," : " ";
}

function cellsOf(content: string, divider: Table["divider"]): string[] {
  if (divider === " ") return content.trim().split(/\s+/);
  return content.split(divider).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, "$1")
      .trim(),
  );
}

/** The number in a cell: NaN where it is none, `null` where it is empty or says that nothing was seen. */
export function cellNumber(cell: string | undefined, divider: Table["divider"]): number | null {
  const text = (cell ?? "").trim();
  if (text === "" || /^(nan|n\/a|na|null|none|-)$/i.test(text)) return null;
  const plain = (divider === "," ? text : text.replace(",", ".")).replace(/^[−–]/, "-");
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : Number.NaN;
}
