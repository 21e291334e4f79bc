/** What the parts of the paper view share. */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { SheetClient } from "../export/sheet-client.ts";
import type { PaperState, PaperStore } from "./paper-store.ts";

export interface PaperParts {
  readonly paper: PaperStore;
  readonly client: SheetClient;
}

export const PaperContext = createContext<PaperParts | null>(null);

export function usePaperParts(): PaperParts {
  const parts = useContext(PaperContext);
  if (parts === null) throw new Error("A part of the paper view must stand inside it.");
  return parts;
}

export function usePaper<T>(select: (state: PaperState) => T): T {
  return useStore(usePaperParts().paper.store, select);
}
