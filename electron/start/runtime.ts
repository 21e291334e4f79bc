/** Where the desktop runtime lies, and how a start goes on with or without it. */
import { join } from "node:path";

/** The runtime's executable, as its package names it (electron/install.js). */
const EXECUTABLES: Readonly<Record<string, string>> = {
  darwin: "Electron.app/Contents/MacOS/Electron",
  linux: "electron",
  win32: "electron.exe",
};

export interface Machine {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly system: string;
  /** Folder of the installed runtime package. */
  readonly packageFolder: string;
  /** A file's text, undefined where there is none. */
  readonly read: (path: string) => string | undefined;
  readonly exists: (path: string) => boolean;
}

/** Path of the runtime's executable, undefined where it is not on this machine. */
export function findRuntime({ env, system, packageFolder, read, exists }: Machine): string | undefined {
  const named = read(join(packageFolder, "path.txt"))?.trim();
  const override = env.ELECTRON_OVERRIDE_DIST_PATH;
  const folder = override ? override : join(packageFolder, "dist");
  const executable = join(folder, named || (EXECUTABLES[system] ?? "electron"));
  return exists(executable) ? executable : undefined;
}

/** Whether a window can appear at all: on Linux only where a display server is named. */
export const hasDisplay = (env: Machine["env"], system: string): boolean =>
  system !== "linux" || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);

export type Plan =
  | { readonly way: "desktop"; readonly runtime: string; readonly options: readonly string[] }
  /** Fetch the runtime first, then decide again. */
  | { readonly way: "fetch" }
  | { readonly way: "browser"; readonly because: string };

export interface Situation {
  readonly words: readonly string[];
  readonly runtime: string | undefined;
  readonly display: boolean;
  /** Already tried to fetch the runtime in this start. */
  readonly fetched: boolean;
  /** Linux, as the super-user: the runtime refuses to run sandboxed. */
  readonly superUser: boolean;
}

export function planStart({ words, runtime, display, fetched, superUser }: Situation): Plan {
  if (words.includes("--browser")) return { way: "browser", because: "asked for with --browser" };
  if (!display) return { way: "browser", because: "there is no display for a window here" };
  if (runtime !== undefined) return { way: "desktop", runtime, options: superUser ? ["--no-sandbox"] : [] };
  if (!fetched) return { way: "fetch" };
  return { way: "browser", because: "the desktop runtime could not be had" };
}

/** The command that opens an address in the person's browser; undefined where there is none to hope for. */
export function browserOpener(
  url: string,
  system: string,
  display: boolean,
): { readonly command: string; readonly args: readonly string[] } | undefined {
  if (!display) return undefined;
  if (system === "darwin") return { command: "open", args: [url] };
  if (system === "win32") return { command: "rundll32", args: ["url.dll,FileProtocolHandler", url] };
  return { command: "xdg-open", args: [url] };
}
