/** The palette, read again when the page changes its theme, and whether the page's type has come. */
import { useEffect, useState } from "react";
import type { Theme } from "../../state/view.ts";
import { type Palette, pagePalette, samePalette } from "./palette.ts";

export function usePalette(theme: Theme): Palette {
  const [palette, setPalette] = useState(() => pagePalette(theme));
  useEffect(() => {
    const read = () => {
      const now = pagePalette(theme);
      setPalette((before) => (samePalette(before, now) ? before : now));
    };
    read();
    const watcher = new MutationObserver(read);
    watcher.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme", "class"] });
    return () => watcher.disconnect();
  }, [theme]);
  return palette;
}

/** Words drawn before the type has come are drawn again in it. */
export function useTypeReady(): boolean {
  const [ready, setReady] = useState(() => document.fonts.status === "loaded");
  useEffect(() => {
    let here = true;
    document.fonts.ready.then(() => {
      if (here) setReady(true);
    });
    return () => {
      here = false;
    };
  }, []);
  return ready;
}
