/**
 * Where menus and explanations stand in the page (index.html): within a landmark, so that those who hear the page find them,
 * and beside the root, which is out of reach while one is open.
 */
export function overlayPlace(): Element | undefined {
  return document.getElementById("overlays") ?? undefined;
}
