/** The one window. */
import { join } from "node:path";
import { BrowserWindow, nativeTheme } from "electron";
import { PAGE_URL } from "./urls.ts";

/** Behind the page until it has drawn, so that nothing flashes. */
const BACKDROP = { light: "#f6f1e9", dark: "#1d1b19" } as const;

/** @param here folder of the built shell, which holds the preload script */
export function createWindow(here: string): BrowserWindow {
  const window = new BrowserWindow({
    width: 1360,
    height: 880,
    minWidth: 800,
    minHeight: 560,
    show: false,
    title: "Swingstill",
    backgroundColor: nativeTheme.shouldUseDarkColors ? BACKDROP.dark : BACKDROP.light,
    webPreferences: {
      preload: join(here, "preload.cjs"),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
      navigateOnDragDrop: false,
    },
  });
  window.once("ready-to-show", () => window.show());
  void window.loadURL(PAGE_URL);
  return window;
}
