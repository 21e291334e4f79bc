/** The words of a call, taken apart and judged. Every complaint is a `CallError`, which ends the program with exit code 2. */
import { type ParseArgsConfig, parseArgs } from "node:util";

/** The call or the file is wrong: its message goes to standard error, and nothing to standard output. */
export class CallError extends Error {}

export type Options = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

/** What a shell reports for a program that Ctrl-C ended. */
export const INTERRUPTED = 130;

export interface Call {
  readonly options: Options;
  readonly files: readonly string[];
}

type OptionShape = NonNullable<ParseArgsConfig["options"]>;

/** Reads the words after a command that takes any number of files. */
export function readCallOf(words: readonly string[], options: OptionShape): Call {
  const parsed = parsedWords(words, options);
  return { options: parsed.values as Options, files: parsed.positionals };
}

/** Reads the words after a command. `files` names the positional words the command takes, for the complaint. */
export function readCall(words: readonly string[], options: OptionShape, files: readonly string[]): Call {
  const call = readCallOf(words, options);
  if (call.files.length !== files.length) {
    const given = call.files.length === 0 ? "none" : call.files.join(" ");
    throw new CallError(`expected ${files.join(" ") || "no file"}; received ${given}`);
  }
  return call;
}

function parsedWords(words: readonly string[], options: OptionShape) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new CallError(error instanceof Error ? error.message : String(error));
  }
}

/** A text option, or `null` where it was not given. */
export function textOption(call: Call, name: string): string | null {
  const value = call.options[name];
  return typeof value === "string" ? value : null;
}

/** A whole number option of at least `least`. */
export function countOption(call: Call, name: string, least: number, otherwise: number): number {
  const text = textOption(call, name);
  if (text === null) return otherwise;
  const value = Number(text);
  if (!Number.isSafeInteger(value) || value < least) {
    throw new CallError(`--${name} must be a whole number of at least ${least}; received "${text}"`);
  }
  return value;
}

/** Steps between two looks at Ctrl-C. */
const BATCH = 8;

/** Repeats `step` until it says that it is done; false where Ctrl-C came first. */
export async function interruptible(step: () => boolean): Promise<boolean> {
  let stopped = false;
  const interrupt = () => {
    stopped = true;
  };
  process.once("SIGINT", interrupt);
  let done = false;
  while (!done && !stopped) {
    for (let i = 0; i < BATCH && !done; i++) done = step();
    await new Promise((resume) => setImmediate(resume));
  }
  process.off("SIGINT", interrupt);
  return done;
}
