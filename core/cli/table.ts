/** Text laid out for a terminal: columns, wrapped sentences, marks for a status. */
import type { FindingStatus } from "../review/finding.ts";

/** Columns padded to their widest cell; the last is left ragged. `right` names columns whose cells end in line. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  const pad = (cell: string, i: number) =>
    right.includes(i) ? cell.padStart(widths[i]) : cell.padEnd(widths[i]);
  return rows.map((row) => row.map(pad).join("  ").trimEnd()).join("\n");
}

/** A sentence broken at spaces to a width, every line after the first set in by `indent`. */
export function wrapped(text: string, indent: number, width = 96): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width - indent) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.join(`\n${" ".repeat(indent)}`);
}

/** Words, not colours: they read the same on paper, in a pipe and to a screen reader. */
export const STATUS_WORD: Readonly<Record<FindingStatus, string>> = {
  fail: "FAIL",
  caution: "care",
  ok: "ok",
};
