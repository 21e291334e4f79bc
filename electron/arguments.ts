/** What the words of a start ask for. */
import { resolve } from "node:path";
import { isDoorFile } from "./file-names.ts";

export type Start =
  | { readonly kind: "command"; readonly argv: readonly string[] }
  | { readonly kind: "window"; readonly files: readonly string[] };

/** Options of the command line that stand without a command. */
const ANSWERED_BY_COMMAND_LINE = new Set(["--help", "--version"]);

/**
 * A bare word first is a command of the command line (`review …`); door files open in the window; the
 * runtime's own options are none of our business.
 *
 * @param words after the program (and, from a checkout, after the script)
 * @param folder where relative paths start
 */
export function readStart(words: readonly string[], folder: string): Start {
  const [first = ""] = words;
  if (/^[a-z][a-z-]*$/.test(first) || ANSWERED_BY_COMMAND_LINE.has(first))
    return { kind: "command", argv: words };
  const files = words.filter((word) => !word.startsWith("-") && isDoorFile(word));
  return { kind: "window", files: files.map((file) => resolve(folder, file)) };
}

/** The words that are the person's own: a packaged program stands first, from a checkout the script second. */
export const ownWords = (argv: readonly string[], packaged: boolean): readonly string[] =>
  argv.slice(packaged ? 1 : 2);
