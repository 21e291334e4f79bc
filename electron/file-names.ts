/** File names a page may suggest, made safe to offer in a dialog. No path survives. */
import type { ExportType } from "./bridge.ts";

export const DOOR_ENDING = ".door.json";

/** The ending of each kind of file that can be exported. */
export const EXPORT_ENDINGS: Readonly<Record<ExportType, string>> = {
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

/** Longest name offered without its ending, in UTF-8 bytes: file systems take 255 with it. */
const MAX_STEM_BYTES = 180;

/** Device names Windows keeps for itself, whatever the ending (Microsoft, "Naming Files, Paths, and Namespaces"). */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it removes
const FORBIDDEN = /[\u0000-\u001f\u007f-\u009f<>:"|?*\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/**
 * A file name that is only a name: folders, control characters, signs a file system refuses, writing-direction
 * marks and leading dots are taken away, and it ends as stated.
 *
 * @param suggested anything
 * @param ending with its dot
 * @param fallback stem to use where nothing is left
 */
export function safeFileName(suggested: string, ending: string, fallback: string): string {
  const last = suggested.split(/[/\\]/).at(-1) ?? "";
  const stem = withoutEnding(last.replace(FORBIDDEN, ""), ending)
    .replace(/^[.\s]+/, "")
    .replace(/[.\s]+$/, "");
  const short = cutToBytes(stem, MAX_STEM_BYTES).trimEnd();
  const usable = short === "" || RESERVED.test(short) ? fallback : short;
  return usable + ending;
}

const withoutEnding = (name: string, ending: string): string =>
  name.toLowerCase().endsWith(ending) ? name.slice(0, -ending.length) : name;

/** The longest start of a text whose UTF-8 form fits; never half a character. */
function cutToBytes(text: string, most: number): string {
  let used = 0;
  let cut = "";
  for (const character of text) {
    used += Buffer.byteLength(character);
    if (used > most) break;
    cut += character;
  }
  return cut;
}

/** Whether a path ends as a door file does. */
export const isDoorFile = (path: string): boolean => path.toLowerCase().endsWith(DOOR_ENDING);

/** A path the person typed in a save dialog, with the ending if they left it out. */
export const withEnding = (path: string, ending: string): string =>
  path.toLowerCase().endsWith(ending) ? path : path + ending;
