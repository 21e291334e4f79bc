/** `new`: a door file to start from, copied from an example with its text as it is. */
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { CallError, readCall, textOption } from "./call.ts";
import { textOf } from "./door-input.ts";
import { columns } from "./table.ts";
import { writeNewFile } from "./write-file.ts";

const ENDING = ".door.json";
/** The example a new door starts from where none is named. */
const FIRST_EXAMPLE = "medium-dog";

/** Folder of the examples, seen from the bundle in dist/cli or from the sources. */
function examplesFolder(): string {
  return fileURLToPath(new URL("../../assets/examples/", import.meta.url));
}

/** Names of the examples, without their ending. */
export function exampleNames(): readonly string[] {
  const folder = examplesFolder();
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((file) => file.endsWith(ENDING));
  return files.map((file) => file.slice(0, -ENDING.length)).sort();
}

/** Runs `new`. */
export function newCommand(args: readonly string[]): number {
  const call = readCall(args, { from: { type: "string" } }, ["FILE"]);
  const name = textOption(call, "from") ?? FIRST_EXAMPLE;
  const names = exampleNames();
  if (!names.includes(name)) {
    const rows = names.map((one) => [`  ${one}`]);
    throw new CallError(`--from must be an example; received "${name}". There are:\n${columns(rows)}`);
  }
  const [path] = call.files;
  writeNewFile(path, textOf(join(examplesFolder(), name + ENDING)));
  process.stdout.write(`${path} written from the example ${name}. Next: review ${path}\n`);
  return 0;
}
