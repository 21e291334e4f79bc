/** Full-size drawings on pages to print and glue. */
import type { Drawing } from "./drawing.ts";
import type { Page } from "./page.ts";
import { layPage } from "./page-pdf.ts";
import type { Paper } from "./paper.ts";
import { drawDrawing, drawWithin } from "./pdf-drawing.ts";
import { newPdf, points } from "./pdf-type.ts";
import { tiling } from "./tiles.ts";

/** One PDF with every drawing at 1 : 1, cut into pages of a paper, after a page that says how they go together. */
export async function tiledPdf(guide: Page, drawings: readonly Drawing[], paper: Paper): Promise<Uint8Array> {
  const { pdf, type } = await newPdf(`${guide.title}: ${guide.door}`);
  layPage(pdf, type, guide, paper);
  for (const drawing of drawings) {
    const { tiles, widthMm, heightMm } = tiling(drawing, paper);
    for (const tile of tiles) {
      const page = pdf.addPage([points(widthMm), points(heightMm)]);
      const at = { x: tile.atX - tile.left, y: tile.atY - tile.top };
      drawWithin(page, type, drawing, at, {
        left: tile.atX,
        top: tile.atY,
        width: tile.width,
        height: tile.height,
      });
      drawDrawing(page, type, tile.furniture, { x: 0, y: 0 });
    }
  }
  return pdf.save({ addDefaultPage: false });
}

/** A drawing that is a page itself. */
export async function fullPagePdf(drawing: Drawing): Promise<Uint8Array> {
  const { pdf, type } = await newPdf(drawing.title);
  const page = pdf.addPage([points(drawing.widthMm), points(drawing.heightMm)]);
  drawDrawing(page, type, drawing, { x: 0, y: 0 });
  return pdf.save({ addDefaultPage: false });
}
