/** A page as one HTML file that needs nothing else: faces and drawings are in it, and it prints on its paper. */
import { FACES_CARRIED } from "./fonts.ts";
import { ACCENT, INK, INK_SOFT, RULE, STATUS_COLOUR, TINT } from "./look.ts";
import { type Block, type Column, type Page, STATUS_WORDS, TEXT_MARGIN } from "./page.ts";
import type { Paper } from "./paper.ts";
import { escaped, FACES, svgElement } from "./svg.ts";

/** The whole file. */
export function pageHtml(page: Page, paper: Paper): string {
  const title = `${page.title}: ${page.door}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
${faces()}
${css(paper)}
</style>
</head>
<body>
<main>
<header><p class="kind">${escaped(page.title)}</p><h1>${escaped(page.door)}</h1></header>
${page.blocks.map(block).join("\n")}
</main>
</body>
</html>
`;
}

/** Greek letters come from their own face; both are asked for by one name. */
function faces(): string {
  return FACES_CARRIED.map(({ family, weight, format, data }) => {
    const range = family === "Manrope" ? " unicode-range: U+370-3FF;" : "";
    return `@font-face { font-family: Figtree; font-weight: ${weight}; src: url(${data}) format("${format}");${range} }`;
  }).join("\n");
}

/** Points on paper; on a screen a sheet of the same width on the bench. */
function css(paper: Paper): string {
  const { ok, caution, fail } = STATUS_COLOUR;
  return `@page { size: ${paper.widthMm}mm ${paper.heightMm}mm; margin: ${TEXT_MARGIN}mm; }
* { box-sizing: border-box; }
html { color: ${INK}; background: #fff; font: 9.5pt/1.42 ${FACES}; font-variant-numeric: tabular-nums; }
body { margin: 0; }
main { max-width: ${paper.widthMm - 2 * TEXT_MARGIN}mm; margin: 0 auto; }
header { border-bottom: 0.6mm solid ${ACCENT}; padding-bottom: 2mm; margin-bottom: 4mm; }
h1 { font-size: 20pt; line-height: 1.15; margin: 0; font-weight: 600; }
.kind { margin: 0 0 0.5mm; color: ${ACCENT}; font-weight: 600; }
h2 { font-size: 12.5pt; margin: 6mm 0 2mm; font-weight: 600; break-after: avoid; }
p { margin: 0 0 2mm; }
.lead { font-size: 11.5pt; }
.note, figcaption { color: ${INK_SOFT}; font-size: 8.5pt; }
figure { margin: 0 0 3mm; break-inside: avoid; }
figure svg { display: block; max-width: 100%; height: auto; }
table { border-collapse: collapse; width: 100%; margin: 0 0 3mm; table-layout: fixed; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; font-weight: 600; font-size: 8.5pt; color: ${INK_SOFT}; border-bottom: 0.3mm solid ${INK_SOFT}; padding: 1mm 2mm 1mm 0; vertical-align: bottom; }
td { border-bottom: 0.18mm solid ${RULE}; padding: 1.2mm 2mm 1.2mm 0; vertical-align: top; overflow-wrap: break-word; }
.roomy td { height: 11mm; }
td.write, th.write { border-left: 0.18mm solid ${RULE}; padding-left: 2mm; }
td.write { background: ${TINT}; }
.right { text-align: right; }
ul { margin: 0 0 3mm; padding: 0; list-style: none; }
li { margin: 0 0 1.4mm; padding-left: 5mm; position: relative; break-inside: avoid; }
.plain li::before { content: "–"; position: absolute; left: 0.5mm; }
.tick li { padding-left: 7mm; }
.tick li::before { content: ""; position: absolute; left: 0; top: 0.3mm; width: 3.6mm; height: 3.6mm; border: 0.3mm solid ${INK}; border-radius: 0.4mm; }
.verdicts li { padding-left: 14mm; }
.verdicts b { position: absolute; left: 0; width: 12mm; font-weight: 600; }
.ok b { color: ${ok}; } .caution b { color: ${caution}; } .fail b { color: ${fail}; }
.fields { display: grid; gap: 3mm 6mm; margin: 0 0 4mm; }
.fields div { border-bottom: 0.3mm solid ${INK_SOFT}; height: 11mm; color: ${INK_SOFT}; font-size: 8.5pt; }
.break { break-after: page; }
@media screen {
  html { background: ${TINT}; }
  main { background: #fff; max-width: ${paper.widthMm}mm; margin: 6mm auto; padding: ${TEXT_MARGIN}mm; box-shadow: 0 1px 4px rgb(60 40 20 / 0.18); }
  .break { border-bottom: 0.18mm dashed ${RULE}; margin: 6mm 0; }
}
@media print { main { max-width: none; } }`;
}

function block(one: Block): string {
  switch (one.kind) {
    case "heading":
      return `<h2>${escaped(one.text)}</h2>`;
    case "paragraph":
      return `<p${one.tone === undefined ? "" : ` class="${one.tone}"`}>${escaped(one.text)}</p>`;
    case "table":
      return table(one.columns, one.rows, one.roomy === true);
    case "picture":
      return `<figure>${svgElement(one.drawing)}<figcaption>${escaped(one.caption)}</figcaption></figure>`;
    case "verdicts": {
      const items = one.items.map(
        ({ status, text }) => `<li class="${status}"><b>${STATUS_WORDS[status]}</b>${escaped(text)}</li>`,
      );
      return `<ul class="verdicts">${items.join("")}</ul>`;
    }
    case "checklist":
      return `<ul class="tick">${one.items.map((item) => `<li>${escaped(item)}</li>`).join("")}</ul>`;
    case "list":
      return `<ul class="plain">${one.items.map((item) => `<li>${escaped(item)}</li>`).join("")}</ul>`;
    case "fields":
      return `<div class="fields" style="grid-template-columns:repeat(${one.perRow},1fr)">${one.labels.map((label) => `<div>${escaped(label)}</div>`).join("")}</div>`;
    case "break":
      return '<div class="break"></div>';
  }
}

function table(columns: readonly Column[], rows: readonly (readonly string[])[], roomy: boolean): string {
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const cols = columns.map(({ share }) => `<col style="width:${((100 * share) / total).toFixed(2)}%">`);
  const kind = ({ align, writeIn }: Column) => {
    const names = [align === "right" ? "right" : "", writeIn === true ? "write" : ""].filter((n) => n !== "");
    return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  };
  const head = columns.map((column) => `<th${kind(column)}>${escaped(column.title)}</th>`);
  const body = rows.map(
    (row) =>
      `<tr>${columns.map((column, i) => `<td${kind(column)}>${escaped(row[i] ?? "")}</td>`).join("")}</tr>`,
  );
  return `<table${roomy ? ' class="roomy"' : ""}><colgroup>${cols.join("")}</colgroup><thead><tr>${head.join("")}</tr></thead><tbody>${body.join("")}</tbody></table>`;
}
