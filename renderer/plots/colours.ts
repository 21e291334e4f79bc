/** The look's colours as a canvas needs them, read anew when the theme changes. */
import { useEffect, useState } from "react";
import type { Colours, Ink } from "./figure.ts";

const INKS: readonly Ink[] = [
  "ink",
  "ink-soft",
  "line",
  "line-strong",
  "well",
  "bench",
  "open",
  "caught",
  "caught-soft",
  "riding",
  "riding-soft",
  "shut-out",
  "flap",
  "magnet",
  "metal",
  "animal",
  "ghost",
];

export function readColours(element: Element = document.documentElement): Colours {
  const style = getComputedStyle(element);
  const entries = INKS.map((ink) => [ink, style.getPropertyValue(`--${ink}`).trim()]);
  return Object.fromEntries(entries) as Colours;
}

/** The theme is set on the page's root by an effect of its own: the root is watched. */
export function useColours(): Colours {
  const [colours, setColours] = useState(readColours);
  useEffect(() => {
    const read = (): void =>
      setColours((old) => {
        const next = readColours();
        return INKS.every((ink) => old[ink] === next[ink]) ? old : next;
      });
    const observer = new MutationObserver(read);
    observer.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    read();
    return () => observer.disconnect();
  }, []);
  return colours;
}
