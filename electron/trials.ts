/** Readings from the bench: tokens outside, paths inside. */
import { join } from "node:path";
import { app } from "electron";
import type { TrialKeepArgs, TrialReadArgs } from "./messages.ts";
import type { TokenRegistry } from "./tokens.ts";
import { createTrialStore, type DoorPlace } from "./trial-store.ts";

export interface TrialFiles {
  readonly read: (args: TrialReadArgs) => Promise<string | null>;
  readonly keep: (args: TrialKeepArgs) => Promise<void>;
}

export function setUpTrials(tokens: TokenRegistry): TrialFiles {
  const store = createTrialStore(join(app.getPath("userData"), "bench"));
  const place = ({ token, name }: TrialReadArgs): DoorPlace =>
    token === null ? { unsaved: name } : { path: tokens.pathOf(token) };
  return {
    read: async (args) => store.read(place(args)),
    keep: async (args) => store.keep(place(args), args.text),
  };
}
