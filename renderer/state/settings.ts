/** What the person chose for the page itself, kept in this browser or on this desktop. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { PaperName } from "../../core/sheet/paper.ts";
import type { SymbolSet } from "../../core/sheet/wiring-symbols.ts";
import type { Theme, UnitSystem } from "./view.ts";

export interface Settings {
  readonly theme: Theme | "system";
  readonly units: UnitSystem;
  /** Text size over the usual one. */
  readonly zoom: number;
  /** To print on, and the wiring's symbols; `null`: what is usual where the units are. */
  readonly paper: PaperName | null;
  readonly symbols: SymbolSet | null;
}

export const ZOOMS = [0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2] as const;

const USUAL: Settings = { theme: "system", units: "metric", zoom: 1, paper: null, symbols: null };
const KEY = "swingstill-settings";

/** The part of localStorage needed here. */
export type Shelf = Pick<Storage, "getItem" | "setItem">;

/** Settings as last kept; a shelf that fails or holds something else gives the usual ones. */
export function readSettings(shelf: Shelf): Settings {
  try {
    return settingsFrom(JSON.parse(shelf.getItem(KEY) ?? "null"));
  } catch {
    return USUAL;
  }
}

function settingsFrom(raw: unknown): Settings {
  if (typeof raw !== "object" || raw === null) return USUAL;
  const { theme, units, zoom, paper, symbols } = raw as Record<string, unknown>;
  return {
    theme: theme === "light" || theme === "dark" ? theme : "system",
    units: units === "inch" ? "inch" : "metric",
    zoom: ZOOMS.find((z) => z === zoom) ?? 1,
    paper: paper === "a4" || paper === "letter" ? paper : null,
    symbols: symbols === "iec" || symbols === "ieee" ? symbols : null,
  };
}

export function createSettings(shelf: Shelf): StoreApi<Settings> {
  const store = createStore<Settings>(() => readSettings(shelf));
  store.subscribe((settings) => {
    try {
      shelf.setItem(KEY, JSON.stringify(settings));
    } catch {
      // A full or forbidden shelf: the choice holds until the page is closed.
    }
  });
  return store;
}

/** The next text size up (+1) or down (−1); the ends stay. */
export function zoomStep(zoom: number, direction: 1 | -1): number {
  const at = ZOOMS.findIndex((z) => z >= zoom - 1e-9);
  return ZOOMS[Math.max(0, Math.min(ZOOMS.length - 1, at + direction))];
}
