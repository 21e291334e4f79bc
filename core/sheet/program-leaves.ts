/** A program on sheets of paper, line by line, as it stands in its file. */
import type { Leaf, Mark } from "./leaf.ts";
import { ACCENT, INK, INK_SOFT } from "./look.ts";
import { TEXT_MARGIN } from "./page.ts";
import { withFeet } from "./page-leaves.ts";
import type { Paper } from "./paper.ts";
import type { TypeCase } from "./pdf-type.ts";

/** Points. */
const SIZE = 8;
/** From line to line, mm. */
const LINE = 3.7;
/** Width of a letter over its size: of the usual faces of one width none is wider (DejaVu Sans Mono 0.602, from its hmtx table). */
const LETTER = 0.61;
/** Room of the line's number, mm. */
const NUMBER = 9;
const HEAD = 13;
const FOOT = 8;

/** The sheets of a program. `file`: its name. */
export function programLeaves(
  door: string,
  file: string,
  text: string,
  paper: Paper,
  type: TypeCase,
): Leaf[] {
  const room = paper.widthMm - 2 * TEXT_MARGIN - NUMBER;
  const most = Math.floor(room / ((LETTER * SIZE * 25.4) / 72));
  const rows = text.trimEnd().split("\n").flatMap(broken(most));
  const perSheet = Math.floor((paper.heightMm - 2 * TEXT_MARGIN - HEAD - FOOT) / LINE);
  const sheets: Mark[][] = [];
  for (let from = 0; from < rows.length; from += perSheet) {
    sheets.push([...head(door, file, paper), ...rows.slice(from, from + perSheet).flatMap(row)]);
  }
  return withFeet(sheets, `Timer program: ${door}`, paper, type);
}

interface Row {
  /** `null` on a line's continuation. */
  readonly number: number | null;
  readonly text: string;
}

const broken =
  (most: number) =>
  (line: string, index: number): Row[] => {
    const rows: Row[] = [{ number: index + 1, text: line.slice(0, most) }];
    for (let from = most; from < line.length; from += most) {
      rows.push({ number: null, text: line.slice(from, from + most) });
    }
    return rows;
  };

function head(door: string, file: string, paper: Paper): Mark[] {
  const words = { kind: "words", x: TEXT_MARGIN, strong: true } as const;
  return [
    { ...words, text: `Timer program, ${file}`, y: TEXT_MARGIN + 3.5, size: 9.5, colour: ACCENT },
    { ...words, text: door, y: TEXT_MARGIN + 8.2, size: 11.5, colour: INK },
    {
      kind: "rule",
      x: TEXT_MARGIN,
      y: TEXT_MARGIN + 10,
      length: paper.widthMm - 2 * TEXT_MARGIN,
      colour: ACCENT,
      width: 0.6,
    },
  ];
}

function row({ number, text }: Row, index: number): Mark[] {
  const y = TEXT_MARGIN + HEAD + (index + 0.8) * LINE;
  const letters = { kind: "words", y, size: SIZE, strong: false, mono: true } as const;
  const marks: Mark[] = [];
  if (number !== null) {
    marks.push({ ...letters, text: String(number).padStart(4), x: TEXT_MARGIN, colour: INK_SOFT });
  }
  if (text !== "") marks.push({ ...letters, text, x: TEXT_MARGIN + NUMBER, colour: INK });
  return marks;
}
