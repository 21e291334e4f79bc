/** Full-size drawings as PDFs. */
import type { Drawing } from "./drawing.ts";
import { drawingLeaf } from "./leaf.ts";
import { leavesPdf } from "./leaf-pdf.ts";
import type { Page } from "./page.ts";
import type { Paper } from "./paper.ts";
import { templateLeaves } from "./template-leaves.ts";

/** One PDF with every drawing at 1 : 1, cut into pages of a paper, after a page that says how they go together. */
export function tiledPdf(
  guide: Page,
  drawings: Readonly<Record<string, Drawing>>,
  paper: Paper,
): Promise<Uint8Array> {
  return leavesPdf(`${guide.title}: ${guide.door}`, (type) => templateLeaves(guide, drawings, paper, type));
}

/** A drawing that is a page itself. */
export function fullPagePdf(drawing: Drawing): Promise<Uint8Array> {
  return leavesPdf(drawing.title, () => [drawingLeaf(drawing)]);
}
