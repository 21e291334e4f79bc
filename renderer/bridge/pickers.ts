/** Ways to a file in a browser: the File System Access pickers where the browser has them, else an input and a download. */
import type { ExportType } from "../../electron/bridge.ts";

/** A file the person chose; `handle` where it can be written again. */
export interface PickedFile {
  readonly name: string;
  readonly handle: FileSystemFileHandle | null;
  readonly text: string;
}

interface PickerType {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

/** The parts of File System Access that lib.dom does not know yet. */
export interface PickerWindow {
  readonly document: Document;
  readonly URL: typeof URL;
  readonly showOpenFilePicker?: (options: { types: PickerType[] }) => Promise<FileSystemFileHandle[]>;
  readonly showSaveFilePicker?: (options: {
    suggestedName: string;
    types: PickerType[];
  }) => Promise<FileSystemFileHandle>;
}

interface AskingHandle extends FileSystemFileHandle {
  requestPermission?(options: { mode: "read" | "readwrite" }): Promise<PermissionState>;
}

export const DOOR_TYPE: PickerType = {
  description: "Door file",
  accept: { "application/json": [".json"] },
};

/** Largest file read, bytes; the reader's own limit is said by the reader. */
const MOST_BYTES = 16_000_000;

/** The text exactly as it stands, a byte order mark included. Throws for the person: too large, not UTF-8. */
export async function textOfFile(file: File): Promise<string> {
  if (file.size > MOST_BYTES) throw new Error(`${file.name} is too large to be read here.`);
  const bytes = await file.arrayBuffer();
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(`${file.name} is not UTF-8 text.`);
  }
}

/** Asks for a door file; null where the person cancels. */
export async function pickDoor(window: PickerWindow): Promise<PickedFile | null> {
  if (window.showOpenFilePicker === undefined) return pickByInput(window.document);
  const handles = await unlessCancelled(window.showOpenFilePicker({ types: [DOOR_TYPE] }));
  return handles === null ? null : readHandle(handles[0]);
}

export async function readHandle(handle: FileSystemFileHandle): Promise<PickedFile> {
  const asking = handle as AskingHandle;
  const allowed = (await asking.requestPermission?.({ mode: "read" })) ?? "granted";
  if (allowed !== "granted") throw new Error(`The browser was not allowed to read ${handle.name}.`);
  const file = await handle.getFile();
  return { name: file.name, handle, text: await textOfFile(file) };
}

export async function writeHandle(handle: FileSystemFileHandle, data: string | Uint8Array): Promise<void> {
  const asking = handle as AskingHandle;
  const allowed = (await asking.requestPermission?.({ mode: "readwrite" })) ?? "granted";
  if (allowed !== "granted") throw new Error(`The browser was not allowed to write ${handle.name}.`);
  const stream = await handle.createWritable();
  await stream.write(data as string | Uint8Array<ArrayBuffer>);
  await stream.close();
}

/** Asks for a place to write; null where the person cancels, undefined where the browser cannot ask. */
export async function pickPlace(
  window: PickerWindow,
  suggestedName: string,
  type: PickerType,
): Promise<FileSystemFileHandle | null | undefined> {
  if (window.showSaveFilePicker === undefined) return undefined;
  try {
    return await unlessCancelled(window.showSaveFilePicker({ suggestedName, types: [type] }));
  } catch (error) {
    // Asked too long after the person's click, as when the file took its time to be made.
    if (error instanceof DOMException && error.name === "SecurityError") return undefined;
    throw error;
  }
}

/** Hands a file to the browser's downloads. */
export function download(window: PickerWindow, name: string, data: string | Uint8Array, type: string): void {
  const url = window.URL.createObjectURL(new Blob([data as string | Uint8Array<ArrayBuffer>], { type }));
  const link = window.document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the data after the click returns.
  setTimeout(() => window.URL.revokeObjectURL(url), 60_000);
}

const ENDINGS: Readonly<Record<ExportType, string>> = {
  "text/csv": ".csv",
  "text/plain": ".txt",
  "text/html": ".html",
  "text/x-c": ".c",
  "text/x-netlist": ".cir",
  "image/png": ".png",
  "image/svg+xml": ".svg",
  "image/vnd.dxf": ".dxf",
  "application/pdf": ".pdf",
  "application/zip": ".zip",
  "video/webm": ".webm",
};

export function exportPicker(type: ExportType): PickerType {
  return { description: ENDINGS[type].slice(1).toUpperCase(), accept: { [type]: [ENDINGS[type]] } };
}

async function unlessCancelled<T>(asked: Promise<T>): Promise<T | null> {
  try {
    return await asked;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return null;
    throw error;
  }
}

function pickByInput(document: Document): Promise<PickedFile | null> {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  return new Promise((resolve, reject) => {
    input.addEventListener("cancel", () => resolve(null));
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (file === undefined) return resolve(null);
      textOfFile(file).then((text) => resolve({ name: file.name, handle: null, text }), reject);
    });
    input.click();
  });
}
