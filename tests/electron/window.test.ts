import { expect, test, vi } from "vitest";
import { PAGE_URL } from "../../electron/urls.ts";
import { createWindow } from "../../electron/window.ts";

const made: { webPreferences?: Record<string, unknown> }[] = [];
const loaded: string[] = [];

vi.mock("electron", () => ({
  nativeTheme: { shouldUseDarkColors: false },
  BrowserWindow: class {
    constructor(options: object) {
      made.push(options);
    }
    once(): void {}
    async loadURL(url: string): Promise<void> {
      loaded.push(url);
    }
  },
}));

test("the window isolates its page, gives it no Node, and shows the app", () => {
  createWindow("/built");
  expect(made[0]?.webPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
  });
  expect(loaded).toEqual([PAGE_URL]);
});
