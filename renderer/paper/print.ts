/**
 * Sheets to the printer, at full size. While the printer's dialog is open the page holds, beside the bench that is not printed, every sheet
 * as a page of its own: the paper's size and no margin are asked for, and nothing scales.
 */
import type { SheetView } from "../worker/sheet-messages.ts";
import { sheetElement } from "./sheet-element.ts";

/** mm. */
export interface PaperSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A page that is a hair shorter than the paper never spills onto a second one; only white is lost, mm. */
const SHORTER = 0.5;

export interface ToPrint {
  readonly paper: PaperSize;
  readonly sheets: readonly SheetView[];
}

/** Puts the sheets into the page whenever it is printed; `done` once it was. Returns what ends it. */
export function printFrom(sheetsNow: () => ToPrint, done: () => void): () => void {
  let clear = (): void => {};
  const before = (): void => {
    clear();
    const { paper, sheets } = sheetsNow();
    if (sheets.length > 0) clear = layOut(document, paper, sheets);
  };
  const after = (): void => {
    clear();
    done();
  };
  window.addEventListener("beforeprint", before);
  window.addEventListener("afterprint", after);
  return () => {
    window.removeEventListener("beforeprint", before);
    window.removeEventListener("afterprint", after);
    clear();
  };
}

function layOut(document: Document, paper: PaperSize, sheets: readonly SheetView[]): () => void {
  const host = document.createElement("div");
  host.className = "print-sheets";
  host.append(...sheets.map((sheet) => pageOf(document, paper, sheet)));
  document.body.append(host);
  const style = new CSSStyleSheet();
  style.replaceSync(`@page { size: ${paper.widthMm}mm ${paper.heightMm}mm; margin: 0; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
  document.documentElement.dataset.printing = "";
  return () => {
    host.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style);
    delete document.documentElement.dataset.printing;
  };
}

/** A sheet that lies is turned, so that every page of the job is upright: no printer has to change its paper's way. */
function pageOf(document: Document, paper: PaperSize, sheet: SheetView): HTMLElement {
  const page = document.createElement("div");
  page.className = "print-sheet";
  page.style.width = `${paper.widthMm}mm`;
  page.style.height = `${paper.heightMm - SHORTER}mm`;
  const picture = sheetElement(document, sheet.svg);
  if (sheet.widthMm > sheet.heightMm) {
    picture.style.transformOrigin = "0 0";
    picture.style.transform = `translateX(${paper.widthMm}mm) rotate(90deg)`;
  }
  page.append(picture);
  return page;
}

/** The faces of the sheets, so that none is missing on paper. */
export async function facesReady(document: Document): Promise<void> {
  const faces = [400, 600].flatMap((weight) =>
    (["Figtree Variable", "Manrope"] as const).map((face) => ({ font: `${weight} 12px "${face}"`, face })),
  );
  await Promise.all(
    faces.map(({ font, face }) => document.fonts.load(font, face === "Manrope" ? "Ωθ" : "hold")),
  );
}
