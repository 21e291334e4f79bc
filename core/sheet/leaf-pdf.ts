/** Sheets as pages of a PDF: real text, embedded faces, vector drawings. */
import type { PDFDocument, PDFPage } from "pdf-lib";
import type { BoxMark, Leaf, Mark, RuleMark } from "./leaf.ts";
import { drawDrawing, drawWithin } from "./pdf-drawing.ts";
import { colourOf, newPdf, points, setLine, type TypeCase } from "./pdf-type.ts";

/** The whole file: sheets laid out with the faces that the document carries. */
export async function leavesPdf(
  title: string,
  lay: (type: TypeCase) => readonly Leaf[],
): Promise<Uint8Array> {
  const { pdf, type } = await newPdf(title);
  for (const leaf of lay(type)) addLeaf(pdf, type, leaf);
  return pdf.save({ addDefaultPage: false });
}

function addLeaf(pdf: PDFDocument, type: TypeCase, leaf: Leaf): void {
  const page = pdf.addPage([points(leaf.widthMm), points(leaf.heightMm)]);
  for (const mark of leaf.marks) put(page, type, mark);
}

/** Letters of one width come in the words' face: no document with a program in it is made. */
function put(page: PDFPage, type: TypeCase, mark: Mark): void {
  switch (mark.kind) {
    case "words": {
      const ink = { size: mark.size, strong: mark.strong, colour: colourOf(mark.colour) };
      setLine(page, type, mark.text, points(mark.x), page.getHeight() - points(mark.y), ink);
      return;
    }
    case "rule":
      putRule(page, mark);
      return;
    case "box":
      putBox(page, mark);
      return;
    case "drawing":
      if (mark.window === null) drawDrawing(page, type, mark.drawing, mark);
      else drawWithin(page, type, mark.drawing, mark, mark.window);
  }
}

function putRule(page: PDFPage, { x, y, length, colour, width }: RuleMark): void {
  const at = page.getHeight() - points(y);
  page.drawLine({
    start: { x: points(x), y: at },
    end: { x: points(x + length), y: at },
    thickness: points(width),
    color: colourOf(colour),
  });
}

function putBox(page: PDFPage, { x, y, width, height, fill, edge, edgeWidth }: BoxMark): void {
  page.drawRectangle({
    x: points(x),
    y: page.getHeight() - points(y + height),
    width: points(width),
    height: points(height),
    ...(fill === null ? {} : { color: colourOf(fill) }),
    borderColor: colourOf(edge),
    borderWidth: points(edgeWidth),
  });
}
