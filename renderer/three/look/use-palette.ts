/** The palette, read again when the page changes its theme and when its type has come. */
import { useEffect, useState } from "react";
import type { Theme } from "../../state/view.ts";
import { type Palette, pagePalette } from "./palette.ts";

export function usePalette(theme: Theme): Palette {
  const [palette, setPalette] = useState(() => pagePalette(theme));
  useEffect(() => {
    let here = true;
    const read = () => {
      if (here) setPalette(pagePalette(theme));
    };
    read();
    const watcher = new MutationObserver(read);
    watcher.observe(document.documentElement, {
      attributes: true,
      attributeFilter: ["data-theme", "class", "style"],
    });
    document.fonts.ready.then(read);
    return () => {
      here = false;
      watcher.disconnect();
    };
  }, [theme]);
  return palette;
}
