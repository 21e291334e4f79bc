/** A sheet's SVG as an element of the page: words stay words. */

/** The text is our own renderer's; as a document of its own kind it could run nothing anyway. */
export function sheetElement(document: Document, svg: string): SVGSVGElement {
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  if (parsed.localName !== "svg") throw new Error("the sheet is no SVG");
  return document.importNode(parsed, true) as unknown as SVGSVGElement;
}
