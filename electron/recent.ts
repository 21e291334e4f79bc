/** Recent doors: our own list for the page, and the system's own where it keeps one. */
import { readFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { app } from "electron";
import { writeAtomically } from "./atomic-write.ts";
import type { RecentDoor } from "./bridge.ts";
import { forget, parseRecentList, remember } from "./recent-list.ts";
import type { TokenRegistry } from "./tokens.ts";

export interface RecentDoors {
  readonly list: () => Promise<readonly RecentDoor[]>;
  /** Never fails: a door opens and saves even where the list cannot be kept. */
  readonly remember: (path: string) => Promise<void>;
  readonly forget: (path: string) => Promise<void>;
}

export function setUpRecent(tokens: TokenRegistry): RecentDoors {
  const file = join(app.getPath("userData"), "recent-doors.json");
  // One change after the other: two at once would lose one.
  let paths = readFile(file, "utf8").then(parseRecentList, () => []);

  const change = (edit: (list: readonly string[]) => readonly string[]): Promise<void> => {
    paths = paths.then(edit);
    return paths.then((list) => writeAtomically(file, JSON.stringify(list))).catch(() => undefined);
  };

  return {
    list: async () =>
      (await paths).map((path) => ({
        token: tokens.issue(path),
        name: basename(path),
        folder: basename(dirname(path)),
      })),
    remember: (path) => {
      app.addRecentDocument(path);
      return change((list) => remember(list, path));
    },
    forget: (path) => change((list) => forget(list, path)),
  };
}
