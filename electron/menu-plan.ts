/** What the menu holds, as data. */
import type { MenuCommand, MenuState } from "./bridge.ts";

/** Entries the system carries out by itself. */
export type Role =
  | "about"
  | "cut"
  | "copy"
  | "paste"
  | "selectAll"
  | "togglefullscreen"
  | "minimize"
  | "close"
  | "quit"
  | "hide"
  | "hideOthers"
  | "unhide"
  | "services"
  | "front"
  | "recentDocuments"
  | "clearRecentDocuments"
  | "reload"
  | "toggleDevTools";

export interface PlannedCommand {
  readonly label: string;
  readonly command: MenuCommand;
  /** Key combination, in the runtime's notation. */
  readonly keys?: string;
  readonly enabled?: boolean;
}

export interface PlannedMenu {
  readonly label: string;
  readonly items: readonly PlannedItem[];
}

export type PlannedItem = "separator" | { readonly role: Role } | PlannedCommand | PlannedMenu;

export interface Surroundings {
  readonly mac: boolean;
  readonly packaged: boolean;
  readonly appName: string;
}

export function menuPlan(surroundings: Surroundings, state: MenuState): readonly PlannedMenu[] {
  const { mac, packaged, appName } = surroundings;
  return [
    ...(mac ? [appMenu(appName)] : []),
    fileMenu(mac),
    editMenu(mac, state),
    viewMenu(packaged),
    { label: "Window", items: [{ role: "minimize" }, ...(mac ? [{ role: "front" } as const] : [])] },
    { label: "Help", items: [{ label: "How the door is computed", command: "help", keys: "F1" }] },
  ];
}

const appMenu = (label: string): PlannedMenu => ({
  label,
  items: [
    { role: "about" },
    "separator",
    { role: "services" },
    "separator",
    { role: "hide" },
    { role: "hideOthers" },
    { role: "unhide" },
    "separator",
    { role: "quit" },
  ],
});

const RECENT: PlannedMenu = {
  label: "Open recent",
  items: [{ role: "recentDocuments" }, { role: "clearRecentDocuments" }],
};

const fileMenu = (mac: boolean): PlannedMenu => ({
  label: "File",
  items: [
    { label: "New door…", command: "new", keys: "CmdOrCtrl+N" },
    { label: "Open…", command: "open", keys: "CmdOrCtrl+O" },
    // Elsewhere the system keeps no list for a menu; the app shows its own.
    ...(mac ? [RECENT] : []),
    "separator",
    { label: "Save", command: "save", keys: "CmdOrCtrl+S" },
    { label: "Save as…", command: "save-as", keys: "CmdOrCtrl+Shift+S" },
    "separator",
    { label: "Export swing as CSV…", command: "export-trace" },
    { label: "Export picture…", command: "export-picture" },
    { label: "All sheets and data as one archive…", command: "export-sheet" },
    "separator",
    { label: "Paper: look, print, save…", command: "paper", keys: "CmdOrCtrl+P" },
    "separator",
    { role: mac ? "close" : "quit" },
  ],
});

const editMenu = (mac: boolean, { undo, redo }: MenuState): PlannedMenu => ({
  label: "Edit",
  items: [
    { label: named("Undo", undo), command: "undo", keys: "CmdOrCtrl+Z", enabled: undo !== null },
    {
      label: named("Redo", redo),
      command: "redo",
      keys: mac ? "Cmd+Shift+Z" : "Ctrl+Y",
      enabled: redo !== null,
    },
    "separator",
    { role: "cut" },
    { role: "copy" },
    { role: "paste" },
    { role: "selectAll" },
  ],
});

/** An ampersand in a label would be taken for a mark of the next letter. */
const named = (verb: string, step: string | null): string =>
  step === null ? verb : `${verb}: ${step.replaceAll("&", "&&")}`;

const viewMenu = (packaged: boolean): PlannedMenu => ({
  label: "View",
  items: [
    { label: "Play or pause", command: "play-pause" },
    "separator",
    { label: "Metric or inch", command: "units" },
    { label: "Light or dark", command: "theme" },
    "separator",
    { label: "Larger text", command: "larger-text", keys: "CmdOrCtrl+Plus" },
    { label: "Smaller text", command: "smaller-text", keys: "CmdOrCtrl+-" },
    { label: "Usual text size", command: "usual-text", keys: "CmdOrCtrl+0" },
    "separator",
    { role: "togglefullscreen" },
    ...(packaged ? [] : (["separator", { role: "reload" }, { role: "toggleDevTools" }] as const)),
  ],
});
