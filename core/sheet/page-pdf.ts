/** A page of words and drawings as a PDF. */
import { leavesPdf } from "./leaf-pdf.ts";
import type { Page } from "./page.ts";
import { pageLeaves } from "./page-leaves.ts";
import type { Paper } from "./paper.ts";

/** The whole file. */
export function pagePdf(page: Page, paper: Paper): Promise<Uint8Array> {
  return leavesPdf(`${page.title}: ${page.door}`, (type) => pageLeaves(page, paper, type));
}
