/** The paper view's keys, wherever the focus is while it is open. */
import { useEffect } from "react";
import { useWorkbench } from "../shell/workbench.ts";
import type { PaperStore } from "./paper-store.ts";
import { zoomFrom } from "./paper-store.ts";
import { shownScale } from "./shown-scale.ts";

const ACTIONS: Readonly<Record<string, (paper: PaperStore) => void>> = {
  PageDown: (paper) => paper.leaf(1),
  PageUp: (paper) => paper.leaf(-1),
  Home: (paper) => paper.leafTo("first"),
  End: (paper) => paper.leafTo("last"),
  "0": (paper) => paper.zoom("whole"),
  "+": (paper) => paper.zoom(zoomFrom(shownScale(), 1)),
  "=": (paper) => paper.zoom(zoomFrom(shownScale(), 1)),
  "-": (paper) => paper.zoom(zoomFrom(shownScale(), -1)),
};

export function usePaperKeys(paper: PaperStore): void {
  const { ui } = useWorkbench();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || ui.getState().dialog !== null) return;
      const { key, ctrlKey, metaKey, altKey, target } = event;
      if ((ctrlKey || metaKey) && key.toLowerCase() === "p") {
        event.preventDefault();
        ui.setState({ paper: "print" });
        return;
      }
      // In a list of choices the keys choose.
      const choosing = target instanceof Element && target.closest("select, input") !== null;
      const action = ctrlKey || metaKey || altKey || choosing ? undefined : ACTIONS[key];
      if (action === undefined) return;
      event.preventDefault();
      action(paper);
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [paper, ui]);
}
