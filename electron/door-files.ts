/** Reading a door file as text. What the text means is the core's business. */
import { open } from "node:fs/promises";
import { basename } from "node:path";
import { MAX_TEXT } from "./messages.ts";

/**
 * The text exactly as it stands, a byte order mark included.
 *
 * @throws Error for the person: missing, a folder, too large, not UTF-8
 */
export async function readDoorText(path: string): Promise<string> {
  const name = basename(path);
  const handle = await open(path, "r").catch((error: unknown) => {
    throw new Error(`${name} cannot be opened: ${reason(error)}.`);
  });
  try {
    const stats = await handle.stat();
    if (!stats.isFile()) throw new Error(`${name} is not a file.`);
    if (stats.size > MAX_TEXT)
      throw new Error(`${name} has ${stats.size} bytes; a door file has at most ${MAX_TEXT}.`);
    return decode(await handle.readFile(), name);
  } finally {
    await handle.close();
  }
}

function decode(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(`${name} is not UTF-8 text, as a door file is.`);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "it is not there any more",
  EACCES: "permission is missing",
  EPERM: "permission is missing",
  EROFS: "the disk can only be read",
  ENOSPC: "the disk is full",
  EBUSY: "another program is using it",
  EISDIR: "it is a folder",
};

/** A system's error in words. */
export function reason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return REASONS[code ?? ""] ?? message ?? String(error);
}
