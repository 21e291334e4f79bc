/** Files written so that a crash leaves the old one or the new one, never half of either. */
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from "node:fs";
import { CallError } from "./call.ts";

/** Writes text to a file by way of a temporary one beside it. */
export function writeTextFile(path: string, text: string): void {
  writeBytesFile(path, new TextEncoder().encode(text));
}

/** The same for bytes. */
export function writeBytesFile(path: string, bytes: Uint8Array): void {
  const temporary = `${path}.${process.pid}.part`;
  try {
    const file = openSync(temporary, "wx");
    try {
      for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw new CallError(
      `${path} can't be written: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** The same for a file that must not be there yet. */
export function writeNewFile(path: string, text: string): void {
  if (existsSync(path)) throw new CallError(`${path} is already there; choose another name`);
  writeTextFile(path, text);
}
