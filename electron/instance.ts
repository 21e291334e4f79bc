/** One running program: a second start, or a double click on a file, ends up in the first one's window. */
import { app, type BrowserWindow } from "electron";
import { ownWords, readStart } from "./arguments.ts";

/**
 * @param open what to do with a door file the person opened from outside
 * @returns false where another instance runs already and has been told; this one should end
 */
export function setUpInstance(
  windowOf: () => BrowserWindow | undefined,
  open: (path: string) => void,
): boolean {
  // On the Mac files come as events, possibly before the app is ready.
  app.on("open-file", (event, path) => {
    event.preventDefault();
    open(path);
  });
  if (!app.requestSingleInstanceLock()) return false;
  app.on("second-instance", (_event, argv, folder) => {
    const window = windowOf();
    if (window?.isMinimized()) window.restore();
    window?.focus();
    // The system may have slipped options of its own between the words.
    const start = readStart(
      ownWords(argv, app.isPackaged).filter((word) => !word.startsWith("--")),
      folder,
    );
    if (start.kind === "window") for (const file of start.files) open(file);
  });
  return true;
}
