/** What is open and looked at: no part of the door. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { FoundSnapshot } from "../../electron/bridge.ts";
import type { StationId } from "../parts/stations.ts";
import type { UnsavedAnswer } from "../state/documents.ts";
import type { SceneOptions } from "../state/view.ts";

export type StageView = "door" | "plots" | "study" | "compare";

export type DialogState =
  | { readonly kind: "new" }
  | { readonly kind: "help" }
  | { readonly kind: "unsaved"; readonly name: string; readonly answer: (answer: UnsavedAnswer) => void }
  | { readonly kind: "recovery"; readonly found: readonly FoundSnapshot[] }
  | { readonly kind: "notice"; readonly title: string; readonly reasons: readonly string[] };

export interface UiState {
  readonly station: StationId;
  readonly stage: StageView;
  readonly scene: SceneOptions;
  /** The protractor at the hinge. */
  readonly angleScale: boolean;
  readonly dialog: DialogState | null;
  /** The paper view: open to look at, or asked to print what it shows. */
  readonly paper: "look" | "print" | null;
  /** A key of the file whose input is to take the focus. */
  readonly wanted: string | null;
  /** A short word said once, as after copying. */
  readonly said: string;
}

export function createUi(): StoreApi<UiState> {
  return createStore<UiState>(() => ({
    station: "verdict",
    stage: "door",
    scene: { camera: "side", section: false, magnetsThrough: false, animal: true },
    angleScale: false,
    dialog: null,
    paper: null,
    wanted: null,
    said: "",
  }));
}
