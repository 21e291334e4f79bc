/**
 * The desktop shell: a window for the page and a careful way to the disk. It computes nothing about doors.
 *
 *   arguments   what a start asks for       instance    one program, files from outside
 *   protocol    serves the page             navigation  refuses every other page
 *   ipc         the one gateway             messages    its guards
 *   files       dialogs, reading, writing   tokens      files without paths
 *   recent, snapshots, closing, menu        one subject each
 */
import { randomBytes } from "node:crypto";
import { join } from "node:path";
import { app, type BrowserWindow, dialog, session } from "electron";
import { type CloseQuestion, setUpClosing } from "./closing.ts";
import { type DoorFiles, setUpFiles } from "./files.ts";
import { setUpInstance } from "./instance.ts";
import { type Handlers, setUpIpc, tell } from "./ipc.ts";
import { type AppMenu, setUpMenu } from "./menu.ts";
import { setUpNavigation, setUpSession } from "./navigation.ts";
import { createOutsideDoors, type OutsideDoors } from "./outside.ts";
import { declareScheme, setUpProtocol } from "./protocol.ts";
import { type RecentDoors, setUpRecent } from "./recent.ts";
import { type Snapshots, setUpSnapshots } from "./snapshots.ts";
import { createTokenRegistry, type TokenRegistry } from "./tokens.ts";
import { setUpTrials, type TrialFiles } from "./trials.ts";
import { createWindow } from "./window.ts";

interface Parts {
  readonly tokens: TokenRegistry;
  readonly recent: RecentDoors;
  readonly doors: DoorFiles;
  readonly snapshots: Snapshots;
  readonly trials: TrialFiles;
  readonly closing: CloseQuestion;
  readonly outside: OutsideDoors;
}

/**
 * Opens the window, or hands the files to a program that runs already and ends.
 *
 * @param here folder of the built shell
 * @param files absolute paths of doors to open
 */
export function openShell(here: string, files: readonly string[]): void {
  let window: BrowserWindow | undefined;
  const windowOf = (): BrowserWindow | undefined => window;

  app.enableSandbox();
  declareScheme();
  setUpNavigation();
  const parts = setUpParts(windowOf);
  if (!setUpInstance(windowOf, parts.outside.open)) {
    app.quit();
    return;
  }
  for (const file of files) parts.outside.open(file);

  const show = (): void => {
    window = createWindow(here);
    parts.closing.watch(window);
    window.webContents.on("did-start-loading", parts.outside.pageGone);
    window.on("closed", () => {
      window = undefined;
      parts.outside.pageGone();
    });
  };

  app.on("window-all-closed", () => {
    if (process.platform !== "darwin") app.quit();
  });
  void app.whenReady().then(() => {
    setUpSession(session.defaultSession);
    setUpProtocol(join(here, "../renderer"));
    setUpIpc(windowOf, handlers(parts, setUpMenu(windowOf)));
    show();
    app.on("activate", () => window ?? show());
  });
}

function setUpParts(windowOf: () => BrowserWindow | undefined): Parts {
  const tokens = createTokenRegistry(() => randomBytes(16).toString("hex"));
  const recent = setUpRecent(tokens);
  const doors = setUpFiles(windowOf, tokens, recent);
  const snapshots = setUpSnapshots(tokens);
  const trials = setUpTrials(tokens);
  const closing = setUpClosing(windowOf, snapshots.discard);
  const outside = createOutsideDoors(
    doors.read,
    (door) => tell(windowOf(), { kind: "open-file", door }),
    (message) => dialog.showErrorBox("The door could not be opened", message),
  );
  return { tokens, recent, doors, snapshots, trials, closing, outside };
}

const handlers = (
  { tokens, recent, doors, snapshots, trials, closing, outside }: Parts,
  menu: AppMenu,
): Handlers => ({
  "door.open": doors.open,
  "door.save": doors.save,
  "door.saveAs": doors.saveAs,
  "bytes.save": doors.saveBytes,
  "recent.list": recent.list,
  "recent.open": async ({ token }) => {
    const path = tokens.pathOf(token);
    try {
      return await doors.read(path);
    } catch (error) {
      await recent.forget(path);
      throw error;
    }
  },
  "page.ready": async () => outside.pageReady(),
  "menu.state": async (state) => menu.show(state),
  "close.unsaved": async ({ unsaved }) => closing.setUnsaved(unsaved),
  "close.saved": async ({ saved }) => closing.saved(saved),
  "snapshot.write": snapshots.write,
  "snapshot.read": snapshots.read,
  "snapshot.clear": ({ document }) => snapshots.clear(document),
  "trial.read": trials.read,
  "trial.keep": trials.keep,
});
