/** What every part of the page can reach: the state, the ways to change it, and the playhead. */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { StoreApi } from "zustand/vanilla";
import type { Bridge } from "../../electron/bridge.ts";
import type { Documents } from "../state/documents.ts";
import type { Maps } from "../state/maps.ts";
import type { Page, PageState } from "../state/page-store.ts";
import type { Playhead } from "../state/playhead.ts";
import type { Settings } from "../state/settings.ts";
import type { Studies } from "../state/studies.ts";
import type { Trials } from "../state/trials.ts";
import type { DoorSceneHandle } from "../three/scene-props.ts";
import type { Commands } from "./commands.ts";
import type { UiState } from "./ui-store.ts";

export interface Workbench {
  readonly page: Page;
  readonly documents: Documents;
  readonly settings: StoreApi<Settings>;
  readonly ui: StoreApi<UiState>;
  readonly playhead: Playhead;
  readonly studies: Studies;
  readonly maps: Maps;
  readonly trials: Trials;
  readonly bridge: Bridge;
  readonly commands: Commands;
  /** The 3D door once it stands. */
  readonly scene: { current: DoorSceneHandle | null };
}

export const WorkbenchContext = createContext<Workbench | null>(null);

export function useWorkbench(): Workbench {
  const workbench = useContext(WorkbenchContext);
  if (workbench === null) throw new Error("A part of the page must stand inside the workbench.");
  return workbench;
}

export function usePage<T>(select: (state: PageState) => T): T {
  return useStore(useWorkbench().page.store, select);
}

export function useUi<T>(select: (state: UiState) => T): T {
  return useStore(useWorkbench().ui, select);
}

export function useSettings<T>(select: (state: Settings) => T): T {
  return useStore(useWorkbench().settings, select);
}
