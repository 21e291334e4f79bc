/** Doors and exports on the disk. Only paths the person chose, in a dialog or by opening a file, are ever touched. */
import { existsSync } from "node:fs";
import { basename } from "node:path";
import {
  type BrowserWindow,
  dialog,
  type FileFilter,
  type MessageBoxOptions,
  type SaveDialogOptions,
} from "electron";
import { writeAtomically } from "./atomic-write.ts";
import type { OpenedDoor, SavedDoor } from "./bridge.ts";
import { readDoorText, reason } from "./door-files.ts";
import { DOOR_ENDING, EXPORT_ENDINGS, safeFileName, withEnding } from "./file-names.ts";
import type { SaveBytesArgs, SaveDoorArgs, SaveDoorAsArgs } from "./messages.ts";
import type { RecentDoors } from "./recent.ts";
import type { TokenRegistry } from "./tokens.ts";

export interface DoorFiles {
  readonly open: () => Promise<OpenedDoor | null>;
  readonly read: (path: string) => Promise<OpenedDoor>;
  readonly save: (args: SaveDoorArgs) => Promise<SavedDoor | null>;
  readonly saveAs: (args: SaveDoorAsArgs) => Promise<SavedDoor | null>;
  readonly saveBytes: (args: SaveBytesArgs) => Promise<string | null>;
}

const DOOR_FILTER: FileFilter = { name: "Door", extensions: [DOOR_ENDING.slice(1)] };

export function setUpFiles(
  windowOf: () => BrowserWindow | undefined,
  tokens: TokenRegistry,
  recent: RecentDoors,
): DoorFiles {
  const chooseToSave = async (name: string, ending: string, filter: FileFilter): Promise<string | null> => {
    const options: SaveDialogOptions = {
      defaultPath: safeFileName(name, ending, "door"),
      filters: [filter],
      properties: ["createDirectory", "showOverwriteConfirmation"],
    };
    const window = windowOf();
    const { filePath } = await (window
      ? dialog.showSaveDialog(window, options)
      : dialog.showSaveDialog(options));
    if (!filePath) return null;
    const path = withEnding(filePath, ending);
    // The dialog asked about the name as typed; with the ending it may be another file's.
    return path === filePath || !existsSync(path) || (await mayReplace(window, path)) ? path : null;
  };

  const write = async (path: string, text: string): Promise<SavedDoor> => {
    await writeOrSay(path, text);
    await recent.remember(path);
    return { token: tokens.issue(path), name: basename(path) };
  };

  const read = async (path: string): Promise<OpenedDoor> => {
    const text = await readDoorText(path);
    await recent.remember(path);
    return { token: tokens.issue(path), name: basename(path), text };
  };

  const saveAs = async ({ name, text }: SaveDoorAsArgs): Promise<SavedDoor | null> => {
    const path = await chooseToSave(name, DOOR_ENDING, DOOR_FILTER);
    return path === null ? null : write(path, text);
  };

  return {
    read,
    saveAs,
    open: async () => {
      const options = { properties: ["openFile" as const], filters: [DOOR_FILTER] };
      const window = windowOf();
      const { filePaths } = await (window
        ? dialog.showOpenDialog(window, options)
        : dialog.showOpenDialog(options));
      const [path] = filePaths;
      return path === undefined ? null : read(path);
    },
    save: async ({ token, name, text }) =>
      token === null ? saveAs({ name, text }) : write(tokens.pathOf(token), text),
    saveBytes: async ({ name, bytes, type }) => {
      const ending = EXPORT_ENDINGS[type];
      const extension = ending.slice(1);
      const path = await chooseToSave(name, ending, {
        name: extension.toUpperCase(),
        extensions: [extension],
      });
      if (path === null) return null;
      await writeOrSay(path, bytes);
      return basename(path);
    },
  };
}

async function writeOrSay(path: string, data: string | Uint8Array): Promise<void> {
  try {
    await writeAtomically(path, data);
  } catch (error) {
    throw new Error(
      `${basename(path)} could not be saved: ${reason(error)}. What was there before is unchanged.`,
    );
  }
}

async function mayReplace(window: BrowserWindow | undefined, path: string): Promise<boolean> {
  const options: MessageBoxOptions = {
    type: "warning",
    message: `${basename(path)} is there already. Replace it?`,
    buttons: ["Replace", "Cancel"],
    defaultId: 1,
    cancelId: 1,
    noLink: true,
  };
  const { response } = await (window
    ? dialog.showMessageBox(window, options)
    : dialog.showMessageBox(options));
  return response === 0;
}
