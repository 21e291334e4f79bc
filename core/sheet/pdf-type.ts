/** Type in a PDF: embedded faces, runs of letters that one face has, and where lines break. */
import fontkit from "@pdf-lib/fontkit";
import { type Color, degrees, PDFDocument, type PDFFont, type PDFPage, rgb } from "pdf-lib";
import { faceBytes } from "./fonts.ts";
import { lineWords } from "./line-words.ts";
import { POINTS_PER_MM } from "./paper.ts";

export interface TypeCase {
  readonly words: (strong: boolean) => PDFFont;
  readonly greek: (strong: boolean) => PDFFont;
  /** Code points that `words` can show. */
  readonly known: ReadonlySet<number>;
}

const CASES = [
  ["Figtree", 400],
  ["Figtree", 600],
  ["Manrope", 400],
  ["Manrope", 600],
] as const;

/** A new document with the sheet's faces in it. Nothing in it tells when or where it was made. */
export async function newPdf(title: string): Promise<{ pdf: PDFDocument; type: TypeCase }> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  pdf.registerFontkit(fontkit);
  pdf.setTitle(title, { showInWindowTitleBar: true });
  pdf.setProducer("Swingstill");
  pdf.setCreator("Swingstill");
  pdf.setLanguage("en");
  // Ligatures and kerning aside, so that widths are those of `textWidth` and a search finds the letters typed.
  const fonts: PDFFont[] = [];
  for (const [family, weight] of CASES) {
    // A name of its own: the library's is drawn at random.
    const options = {
      subset: true,
      customName: `${family}-${weight}`,
      features: { liga: false, kern: false },
    };
    fonts.push(await pdf.embedFont(faceBytes(family, weight), options));
  }
  return {
    pdf,
    type: {
      words: (strong) => fonts[strong ? 1 : 0],
      greek: (strong) => fonts[strong ? 3 : 2],
      known: new Set(fonts[0].getCharacterSet()),
    },
  };
}

interface Run {
  readonly text: string;
  readonly greek: boolean;
}

const isGreek = (letter: string): boolean => /[\u0370-\u03ff]/.test(letter);

/** Signs that neither face has, in letters they have. */
const OTHER_SIGNS: Readonly<Record<string, string>> = {
  "≈": "about ",
  "∞": "endless",
  "√": "root of ",
  "∓": "±",
  "⁻": "^-",
  "⌀": "Ø",
  "′": "'",
  "″": '"',
  "\u202f": " ",
  "\u00a0": " ",
};

/** Anything a face cannot show is replaced, so that no box appears on paper. A person's own letters come out as "?". */
export function printable(words: string, type: Pick<TypeCase, "known">): string {
  return [...words.normalize("NFC")]
    .map((letter) => OTHER_SIGNS[letter] ?? letter)
    .map((letter) =>
      [...letter].every((one) => type.known.has(one.codePointAt(0) ?? 0) || isGreek(one)) ? letter : "?",
    )
    .join("");
}

function runs(words: string): Run[] {
  const found: Run[] = [];
  for (const letter of words) {
    const greek = isGreek(letter);
    const last = found.at(-1);
    if (last !== undefined && last.greek === greek)
      found[found.length - 1] = { text: last.text + letter, greek };
    else found.push({ text: letter, greek });
  }
  return found;
}

/** Points. */
export function typeWidth(type: TypeCase, words: string, size: number, strong: boolean): number {
  return runs(printable(words, type)).reduce(
    (sum, run) => sum + (run.greek ? type.greek : type.words)(strong).widthOfTextAtSize(run.text, size),
    0,
  );
}

export interface Ink {
  readonly size: number;
  readonly strong: boolean;
  readonly colour: Color;
  /** Counter-clockwise about the start, rad. */
  readonly turn?: number;
}

/** Sets one line from its start on the baseline, points, y upwards. */
export function setLine(page: PDFPage, type: TypeCase, words: string, x: number, y: number, ink: Ink): void {
  const turn = ink.turn ?? 0;
  let along = 0;
  for (const run of runs(printable(words, type))) {
    const font = (run.greek ? type.greek : type.words)(ink.strong);
    page.drawText(run.text, {
      x: x + along * Math.cos(turn),
      y: y + along * Math.sin(turn),
      size: ink.size,
      font,
      color: ink.colour,
      rotate: degrees((turn * 180) / Math.PI),
    });
    along += font.widthOfTextAtSize(run.text, ink.size);
  }
}

/** Breaks words into lines of at most `width` points. A word longer than a line is broken within. */
export function brokenLines(
  type: TypeCase,
  words: string,
  size: number,
  strong: boolean,
  width: number,
): string[] {
  const lines: string[] = [];
  let line = "";
  const fits = (candidate: string) => typeWidth(type, candidate, size, strong) <= width;
  for (const word of lineWords(words).flatMap((one) => pieces(one, fits))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && !fits(longer)) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  lines.push(line);
  return lines;
}

function pieces(word: string, fits: (text: string) => boolean): string[] {
  if (fits(word)) return [word];
  if (word.includes(" ")) return word.split(" ").flatMap((one) => pieces(one, fits));
  const found: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && !fits(piece + letter)) {
      found.push(piece);
      piece = letter;
    } else piece += letter;
  }
  return [...found, piece];
}

/** "#2a2521" as a PDF colour. */
export function colourOf(hex: string): Color {
  const part = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16) / 255;
  return rgb(part(1), part(3), part(5));
}

export const points = (mm: number): number => mm * POINTS_PER_MM;
