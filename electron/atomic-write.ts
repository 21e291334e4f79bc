/** Writing a file so that a crash or a full disk leaves the old one whole. */
import { randomBytes } from "node:crypto";
import { type FileHandle, open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/**
 * Writes beside the file, forces the bytes to the disk, then renames over it. A link is followed, so that the
 * link stays and its target changes; the file's permissions stay.
 *
 * @throws the system's error; the file is then as it was
 */
export async function writeAtomically(path: string, data: string | Uint8Array): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const mode = await stat(target).then(
    (stats) => stats.mode & 0o777,
    () => 0o666,
  );
  const parts = join(
    dirname(target),
    `.${basename(target).slice(0, 100)}.${randomBytes(6).toString("hex")}.tmp`,
  );
  try {
    await writeThrough(parts, data, mode);
    await rename(parts, target);
  } catch (error) {
    await rm(parts, { force: true });
    throw error;
  }
  await syncFolder(dirname(target));
}

async function writeThrough(path: string, data: string | Uint8Array, mode: number): Promise<void> {
  const handle = await open(path, "wx", mode);
  try {
    await handle.writeFile(data);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes the rename itself last. Not every system lets a folder be opened; the file is whole either way. */
async function syncFolder(path: string): Promise<void> {
  let handle: FileHandle | undefined;
  try {
    handle = await open(path, "r");
    await handle.sync();
  } catch {
    return;
  } finally {
    await handle?.close();
  }
}
