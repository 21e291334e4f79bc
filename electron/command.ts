/** The command line inside the packaged program: the same bundle a checkout runs, without a window. */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { app } from "electron";

/** Exit code for a call that could not be answered. */
const CANNOT_ANSWER = 2;

/** @param here folder of the built shell; the command line's bundle lies beside it */
export async function runCommand(here: string, argv: readonly string[]): Promise<void> {
  try {
    const file = pathToFileURL(join(here, "../cli/main.mjs")).href;
    const { main } = (await import(file)) as { main(argv: readonly string[]): Promise<number> };
    leave(await main(argv));
  } catch (error) {
    const told = error instanceof Error ? error.stack : String(error);
    process.stderr.write(`swingstill: an error of the program itself\n${told}\n`);
    leave(CANNOT_ANSWER);
  }
}

/** Ends once everything written has gone out. */
function leave(code: number): void {
  process.stdout.write("", () => process.stderr.write("", () => app.exit(code)));
}
