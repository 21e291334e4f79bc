/** The page's copies of unsaved work: tokens outside, paths inside. */
import { join } from "node:path";
import { app } from "electron";
import type { FoundSnapshot, RecoverySnapshot } from "./bridge.ts";
import { createRecoveryStore } from "./recovery.ts";
import type { TokenRegistry } from "./tokens.ts";

export interface Snapshots {
  readonly write: (snapshot: RecoverySnapshot) => Promise<void>;
  readonly read: () => Promise<readonly FoundSnapshot[]>;
  readonly clear: (document: string) => Promise<void>;
  /** Forgets what was written since the start; copies left by a crash before it stay. */
  readonly discard: () => Promise<void>;
}

export function setUpSnapshots(tokens: TokenRegistry): Snapshots {
  const store = createRecoveryStore(join(app.getPath("userData"), "recovery"));
  const written = new Set<string>();
  return {
    clear: store.clear,
    discard: async () => void (await Promise.all([...written].map(store.clear))),
    write: ({ token, ...rest }) => {
      written.add(rest.document);
      return store.write({
        ...rest,
        path: token === null ? null : tokens.pathOf(token),
        savedAt: Date.now(),
      });
    },
    read: async () =>
      (await store.read()).map(({ path, ...rest }) => ({
        ...rest,
        token: path === null ? null : tokens.issue(path),
      })),
  };
}
