// @ts-check
// The command line from a checkout: builds itself when it has to, then runs. See build.mjs.
import { pathToFileURL } from "node:url";
import { buildCommandLine } from "./build.mjs";

/** Exit code for a call that could not be answered, as in the contract. */
const CANNOT_ANSWER = 2;

/** @param {string} message */
function giveUp(message) {
  process.stderr.write(`swingstill: ${message}\n`);
  process.exitCode = CANNOT_ANSWER;
}

/** npm runs a script in the package's folder; the person's paths start where the person stood. */
function standWhereThePersonStood() {
  const { npm_lifecycle_event: script, INIT_CWD: folder } = process.env;
  if (script === "swingstill" && folder !== undefined) process.chdir(folder);
}

/** @param {string} file */
async function run(file) {
  standWhereThePersonStood();
  const { main } = await import(pathToFileURL(file).href);
  process.exitCode = await main(process.argv.slice(2));
}

// A reader that has seen enough (`| head`) is no error.
process.stdout.on("error", (error) => {
  if (/** @type {NodeJS.ErrnoException} */ (error).code === "EPIPE") process.exit();
  throw error;
});

try {
  const file = await buildCommandLine();
  await run(file).catch((error) => giveUp(`an error of the program itself\n${error?.stack ?? error}`));
} catch (error) {
  giveUp(error instanceof Error ? error.message : String(error));
}
