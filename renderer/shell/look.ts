/** Theme and text size as the page's root has them. */
import { useEffect, useSyncExternalStore } from "react";
import type { Theme } from "../state/view.ts";
import { useSettings } from "./workbench.ts";

const DARK = "(prefers-color-scheme: dark)";

export function systemIsDark(): boolean {
  return window.matchMedia(DARK).matches;
}

function onSystemChange(listener: () => void): () => void {
  const query = window.matchMedia(DARK);
  query.addEventListener("change", listener);
  return () => query.removeEventListener("change", listener);
}

/** The theme shown, the system's where that is the choice. */
export function useTheme(): Theme {
  const chosen = useSettings((state) => state.theme);
  const dark = useSyncExternalStore(onSystemChange, systemIsDark);
  return chosen === "system" ? (dark ? "dark" : "light") : chosen;
}

/** Usual size of the root's font, px: all lengths are rem. */
const ROOT_SIZE = 16;

export function useLook(): void {
  const theme = useTheme();
  const zoom = useSettings((state) => state.zoom);
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  useEffect(() => {
    document.documentElement.style.fontSize = `${ROOT_SIZE * zoom}px`;
  }, [zoom]);
}
