/** `npm start`: the desktop window where its runtime can be had, else the same page in the browser. */
import { spawn } from "node:child_process";
import { join, resolve } from "node:path";
import { fetchRuntime } from "./fetch-runtime.ts";
import { displayHere, isSuperUser, personsFolder, thisMachine } from "./machine.ts";
import { browserOpener, findRuntime, type Plan, planStart } from "./runtime.ts";
import { serveSite, USUAL_PORT } from "./server.ts";

/** A window that fails within this time never came up; later it is the person's own affair. */
const COMES_UP_WITHIN_MS = 5000;

/** The bundle lies in dist/start. */
const root = resolve(import.meta.dirname, "../..");

const machine = thisMachine(root);
const display = displayHere();

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** @returns the exit code */
export async function start(words: readonly string[]): Promise<number> {
  const plan = await settle(words);
  if (plan.way === "desktop") {
    const code = await openWindow(plan.runtime, [...plan.options, ...words]);
    if (code !== "never came up") return code;
    return serve("the desktop window did not come up");
  }
  return serve(plan.because);
}

async function settle(words: readonly string[]): Promise<Exclude<Plan, { way: "fetch" }>> {
  const plan = (fetched: boolean): Plan =>
    planStart({
      words,
      display,
      fetched,
      runtime: findRuntime(machine),
      superUser: isSuperUser(),
    });
  const first = plan(false);
  if (first.way !== "fetch") return first;
  await fetchRuntime(machine.packageFolder, machine.env, say);
  const second = plan(true);
  if (second.way === "fetch") throw new Error("a second fetch was planned");
  return second;
}

function openWindow(runtime: string, options: readonly string[]): Promise<number | "never came up"> {
  const began = performance.now();
  return new Promise((done) => {
    const child = spawn(runtime, [join(root, "dist/electron/main.mjs"), ...options], {
      stdio: "inherit",
      cwd: personsFolder(process.env),
    });
    child.on("error", () => done("never came up"));
    child.on("exit", (code) => {
      const failed = code !== 0 && performance.now() - began < COMES_UP_WITHIN_MS;
      done(failed ? "never came up" : (code ?? 1));
    });
  });
}

async function serve(because: string): Promise<number> {
  const site = await serveSite(join(root, "dist/renderer"), USUAL_PORT);
  say(`Swingstill is at ${site.url} (in the browser: ${because}). Ctrl-C ends it.`);
  openBrowser(site.url);
  await new Promise((done) => {
    process.once("SIGINT", done);
    process.once("SIGTERM", done);
  });
  await site.close();
  return 0;
}

/** The address has been said: where no browser opens, the person still can. */
function openBrowser(url: string): void {
  const opener = browserOpener(url, process.platform, display);
  if (opener === undefined) return;
  const child = spawn(opener.command, opener.args, { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
