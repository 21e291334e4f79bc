// The built shell, run in plain Node against a stand-in for the runtime's module that notes what is asked of it:
// that the bundle is complete, and that things are set up in the order the runtime demands.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");

/** Notes calls; `app` is ready a moment later, as in the runtime. */
const STAND_IN = `
const log = [];
let ready = false;
const note = (name) => (...args) => { log.push((ready ? "ready " : "") + name + (typeof args[0] === "string" ? " " + args[0] : "")); };
const emitter = (name) => ({ on: note(name + ".on"), once: note(name + ".once") });
export const app = {
  ...emitter("app"), isPackaged: false, name: "Swingstill", getPath: () => process.cwd(), quit: note("app.quit"),
  enableSandbox: note("app.enableSandbox"), addRecentDocument: note("app.addRecentDocument"),
  requestSingleInstanceLock: () => process.env.SECOND !== "1",
  exit: (code) => { log.push("app.exit " + code); },
  whenReady: () => new Promise((done) => setTimeout(() => { ready = true; done(); }, 5)),
};
process.on("exit", () => process.stderr.write("LOG" + JSON.stringify(log)));
export class BrowserWindow {
  constructor() { log.push("ready new BrowserWindow"); }
  webContents = emitter("webContents"); on = note("window.on"); once = note("window.once");
  async loadURL(url) { note("loadURL")(url); }
}
export const dialog = {}, shell = {}, nativeTheme = {};
export const ipcMain = { handle: note("ipcMain.handle") };
export const Menu = { setApplicationMenu: note("Menu.setApplicationMenu"), buildFromTemplate: (template) => template };
export const protocol = { registerSchemesAsPrivileged: note("protocol.register"), handle: note("protocol.handle") };
export const session = { defaultSession: { ...emitter("session"), webRequest: { onBeforeRequest: note("onBeforeRequest") },
  setPermissionRequestHandler: note("setPermissionRequestHandler"), setPermissionCheckHandler: note("setPermissionCheckHandler") } };
`;

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "shell-bundle-"));
  mkdirSync(join(folder, "node_modules/electron"), { recursive: true });
  writeFileSync(join(folder, "node_modules/electron/index.mjs"), STAND_IN);
  writeFileSync(
    join(folder, "node_modules/electron/package.json"),
    '{ "main": "index.mjs", "type": "module" }',
  );
  for (const name of ["electron", "cli"])
    cpSync(join(root, "dist", name), join(folder, name), { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function run(words: readonly string[], env: Readonly<Record<string, string>> = {}): string[] {
  const args = [join(folder, "electron/main.mjs"), ...words];
  const { stderr } = spawnSync(process.execPath, args, {
    cwd: folder,
    env: { ...process.env, ...env },
    encoding: "utf8",
  });
  const noted = /LOG(\[.*\])$/s.exec(stderr)?.[1];
  if (noted === undefined) throw new Error(`the shell did not get far: ${stderr}`);
  return JSON.parse(noted) as string[];
}

test("a start declares its scheme before the runtime is ready, then guards the session before the page loads", () => {
  const log = run([]);
  const order = [
    "app.enableSandbox",
    "protocol.register",
    "app.on web-contents-created",
    "ready onBeforeRequest",
    "ready setPermissionRequestHandler",
    "ready protocol.handle app",
    "ready ipcMain.handle swingstill:call",
    "ready new BrowserWindow",
    "ready loadURL app://swingstill/index.html",
  ];
  expect(log.filter((line) => order.includes(line))).toEqual(order);
});

test("a second start hands over and ends", () => {
  const log = run([], { SECOND: "1" });
  expect(log).toContain("app.quit");
  expect(log).not.toContain("app.on second-instance");
});

test("a word is a command of the command line: no window, its exit code", () => {
  const log = run(["no-such-command"]);
  expect(log.at(-1)).toBe("app.exit 2");
  expect(log).not.toContain("ready new BrowserWindow");
});
