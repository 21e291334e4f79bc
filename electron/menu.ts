/** The application menu. Entries that concern the door are commands for the page; the rest is the system's. */
import { app, type BrowserWindow, Menu, type MenuItemConstructorOptions } from "electron";
import type { MenuCommand, MenuState } from "./bridge.ts";
import { tell } from "./ipc.ts";
import { menuPlan, type PlannedItem } from "./menu-plan.ts";

export interface AppMenu {
  readonly show: (state: MenuState) => void;
}

export function setUpMenu(windowOf: () => BrowserWindow | undefined): AppMenu {
  const run = (command: MenuCommand) => tell(windowOf(), { kind: "menu", command });
  const surroundings = { mac: process.platform === "darwin", packaged: app.isPackaged, appName: app.name };
  const show = (state: MenuState): void => {
    const template = menuPlan(surroundings, state).map((item) => toTemplate(item, run));
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  };
  show({ undo: null, redo: null });
  return { show };
}

function toTemplate(item: PlannedItem, run: (command: MenuCommand) => void): MenuItemConstructorOptions {
  if (item === "separator") return { type: "separator" };
  if ("role" in item) return { role: item.role };
  if ("items" in item)
    return { label: item.label, submenu: item.items.map((inner) => toTemplate(inner, run)) };
  return {
    label: item.label,
    enabled: item.enabled ?? true,
    ...(item.keys === undefined ? {} : { accelerator: item.keys }),
    click: () => run(item.command),
  };
}
