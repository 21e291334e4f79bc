/** The wheel leafs while the whole sheet is to be seen; with Ctrl it comes nearer or goes away. Else it scrolls by itself. */
import { type RefObject, useEffect } from "react";
import type { PaperStore } from "./paper-store.ts";
import { zoomFrom } from "./paper-store.ts";
import { shownScale } from "./shown-scale.ts";

/** Way of the wheel that is one sheet, px: a notch is about a hundred. */
const NOTCH = 80;
/** A rest this long ends a way, ms. */
const REST = 250;

export function useWheel(place: RefObject<HTMLElement | null>, fits: boolean, paper: PaperStore): void {
  useEffect(() => {
    const node = place.current;
    if (node === null) return;
    let way = 0;
    let last = 0;
    const gone = (delta: number, time: number): -1 | 0 | 1 => {
      way = time - last > REST || Math.sign(delta) !== Math.sign(way) ? delta : way + delta;
      last = time;
      if (Math.abs(way) < NOTCH) return 0;
      way = 0;
      return delta > 0 ? 1 : -1;
    };
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey && !fits) return;
      event.preventDefault();
      const step = gone(event.deltaY, event.timeStamp);
      if (step === 0) return;
      if (event.ctrlKey) paper.zoom(zoomFrom(shownScale(), step === 1 ? -1 : 1));
      else paper.leaf(step);
    };
    node.addEventListener("wheel", onWheel, { passive: false });
    return () => node.removeEventListener("wheel", onWheel);
  }, [place, fits, paper]);
}
