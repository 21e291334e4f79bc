/** How large the sheet stands now: its width on the screen over that on paper, by a screen's own millimetre. */
import { PX_PER_MM } from "./paper-store.ts";

export function shownScale(): number {
  const picture = document.querySelector<SVGSVGElement>(".paper-leaf > svg");
  if (picture === null) return 1;
  return picture.getBoundingClientRect().width / (picture.viewBox.baseVal.width * PX_PER_MM);
}
