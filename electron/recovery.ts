/** Copies of unsaved work, one file for each open door, in a folder of the shell's own. */
import { mkdir, readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { writeAtomically } from "./atomic-write.ts";

/** A snapshot as it lies on the disk, with the path that the page never sees. */
export interface StoredSnapshot {
  readonly document: string;
  readonly name: string;
  readonly path: string | null;
  readonly text: string;
  /** Milliseconds since 1970-01-01 UTC. */
  readonly savedAt: number;
}

export interface RecoveryStore {
  readonly write: (snapshot: StoredSnapshot) => Promise<void>;
  /** Newest first. A file that cannot be read as a snapshot is left where it is and not listed. */
  readonly read: () => Promise<readonly StoredSnapshot[]>;
  readonly clear: (document: string) => Promise<void>;
}

const ENDING = ".snapshot.json";

/**
 * The file name of a document's snapshot.
 *
 * @throws Error for a name that could leave the folder
 */
export function snapshotName(document: string): string {
  if (!/^[a-z0-9-]{1,64}$/.test(document))
    throw new Error(`not a document's name: ${JSON.stringify(document)}`);
  return document + ENDING;
}

/** @param folder made when first written to */
export function createRecoveryStore(folder: string): RecoveryStore {
  return {
    write: async (snapshot) => {
      await mkdir(folder, { recursive: true });
      await writeAtomically(join(folder, snapshotName(snapshot.document)), JSON.stringify(snapshot));
    },
    read: async () => {
      const names = await readdir(folder).catch(() => []);
      const found = await Promise.all(
        names.filter((name) => name.endsWith(ENDING)).map((name) => readOne(folder, name)),
      );
      return found.filter((snapshot) => snapshot !== undefined).sort((a, b) => b.savedAt - a.savedAt);
    },
    clear: (document) => rm(join(folder, snapshotName(document)), { force: true }),
  };
}

async function readOne(folder: string, name: string): Promise<StoredSnapshot | undefined> {
  try {
    const value: unknown = JSON.parse(await readFile(join(folder, name), "utf8"));
    return isSnapshot(value) && snapshotName(value.document) === name ? value : undefined;
  } catch {
    return undefined;
  }
}

function isSnapshot(value: unknown): value is StoredSnapshot {
  if (typeof value !== "object" || value === null) return false;
  const { document, name, path, text, savedAt } = value as Record<string, unknown>;
  return (
    typeof document === "string" &&
    typeof name === "string" &&
    (path === null || typeof path === "string") &&
    typeof text === "string" &&
    typeof savedAt === "number"
  );
}
