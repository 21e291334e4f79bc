/** Where menus and explanations stand in the page: within a landmark, so that those who hear the page find them. */
export const OVERLAYS = "overlays";

export function overlayPlace(): Element | undefined {
  return document.getElementById(OVERLAYS) ?? undefined;
}
