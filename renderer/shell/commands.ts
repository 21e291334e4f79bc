/**
 * Everything the page can be told to do by menu, key or button, in one place: whichever way it comes, the same runs. The
 * desktop's menu sends the names of electron/bridge.ts.
 */
import type { StoreApi } from "zustand/vanilla";
import type { Bridge, MenuCommand } from "../../electron/bridge.ts";
import { exportFilm, exportPicture, exportTrace } from "../export/exports.ts";
import { exportSheet } from "../export/sheet.ts";
import type { Documents } from "../state/documents.ts";
import type { Page } from "../state/page-store.ts";
import type { Playhead } from "../state/playhead.ts";
import { type Settings, zoomStep } from "../state/settings.ts";
import type { DoorSceneHandle } from "../three/scene-props.ts";
import type { UiState } from "./ui-store.ts";

export type CommandName = MenuCommand | "export-film" | "pin" | "unpin";

export interface Commands {
  run(name: CommandName): void;
}

export interface CommandNeeds {
  readonly page: Page;
  readonly documents: Documents;
  readonly settings: StoreApi<Settings>;
  readonly ui: StoreApi<UiState>;
  readonly playhead: Playhead;
  readonly bridge: Bridge;
  readonly scene: { current: DoorSceneHandle | null };
  /** Whether the system is in dark colours. */
  readonly systemIsDark: () => boolean;
}

export function createCommands(needs: CommandNeeds): Commands {
  const { page, documents, settings, ui, playhead } = needs;
  const tell = (title: string) => (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    ui.setState({ dialog: { kind: "notice", title, reasons: [reason] } });
  };
  const zoom = (direction: 1 | -1) =>
    settings.setState({ zoom: zoomStep(settings.getState().zoom, direction) });
  const table: Readonly<Record<CommandName, () => void>> = {
    new: () => ui.setState({ dialog: { kind: "new" } }),
    open: () => void documents.open(),
    save: () => void documents.save(),
    "save-as": () => void documents.saveAs(),
    "export-trace": () => void exportTrace(needs).catch(tell("The swing could not be exported")),
    "export-picture": () => void exportPicture(needs).catch(tell("The picture could not be made")),
    "export-film": () => void exportFilm(needs).catch(tell("The film could not be made")),
    "export-sheet": () => void exportSheet(needs).catch(tell("The sheets could not be written")),
    paper: () => {
      if (page.store.getState().document === null) return;
      playhead.pause();
      // Asked for again where it is open, it prints.
      ui.setState({ paper: ui.getState().paper === null ? "look" : "print" });
    },
    undo: page.actions.undo,
    redo: page.actions.redo,
    "play-pause": () => playhead.toggle(),
    units: () => settings.setState({ units: settings.getState().units === "metric" ? "inch" : "metric" }),
    theme: () => settings.setState({ theme: isDark(needs) ? "light" : "dark" }),
    "larger-text": () => zoom(1),
    "smaller-text": () => zoom(-1),
    "usual-text": () => settings.setState({ zoom: 1 }),
    help: () => ui.setState({ dialog: { kind: "help" } }),
    pin: () => {
      page.actions.pin();
      ui.setState({ said: "Copy set aside" });
    },
    unpin: () => {
      page.actions.unpin();
      if (ui.getState().stage === "compare") ui.setState({ stage: "door" });
    },
  };
  return { run: (name) => table[name]() };
}

function isDark({ settings, systemIsDark }: CommandNeeds): boolean {
  const { theme } = settings.getState();
  return theme === "system" ? systemIsDark() : theme === "dark";
}
