/** Readings from the bench, one file for each door, in a folder of the shell's own. What is in them is the page's business. */
import { createHash } from "node:crypto";
import { mkdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { writeAtomically } from "./atomic-write.ts";

/** A door on the disk, or one that was never saved, by the name it would be saved under. */
export type DoorPlace = { readonly path: string } | { readonly unsaved: string };

export interface TrialStore {
  readonly read: (door: DoorPlace) => Promise<string | null>;
  /** `null` forgets them. */
  readonly keep: (door: DoorPlace, text: string | null) => Promise<void>;
}

/** No name and no path gets into a file's name. */
export function trialName(door: DoorPlace): string {
  const key = "path" in door ? `path ${door.path}` : `unsaved ${door.unsaved}`;
  return `${createHash("sha256").update(key).digest("hex")}.trial.json`;
}

/** @param folder made when first written to */
export function createTrialStore(folder: string): TrialStore {
  return {
    read: async (door) => {
      try {
        return await readFile(join(folder, trialName(door)), "utf8");
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
        throw error;
      }
    },
    keep: async (door, text) => {
      const file = join(folder, trialName(door));
      if (text === null) return rm(file, { force: true });
      await mkdir(folder, { recursive: true });
      await writeAtomically(file, text);
    },
  };
}
