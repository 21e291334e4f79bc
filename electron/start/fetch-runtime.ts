/** Fetches the desktop runtime once, by its own package's installer. */
import { spawn } from "node:child_process";
import { join } from "node:path";

/** A machine without a way out should not wait long to learn it. */
const REACHABLE_WITHIN_MS = 4000;
/** About 110 MB. */
const FETCHED_WITHIN_MS = 180_000;

/** Where the runtime's releases lie unless a mirror is set. */
const RELEASES = "https://github.com/electron/electron/releases";

type Environment = Readonly<Record<string, string | undefined>>;

/** Settings under which the plain probe below says nothing about the installer's own way. */
const OWN_WAYS = ["ELECTRON_MIRROR", "npm_config_electron_mirror", "HTTPS_PROXY", "https_proxy"];

/**
 * Never fails: whoever asked looks again whether the runtime is there.
 *
 * @param folder of the runtime's package
 * @param say tells the person what takes so long
 */
export async function fetchRuntime(
  folder: string,
  env: Environment,
  say: (line: string) => void,
): Promise<void> {
  const ownWay = OWN_WAYS.some((name) => env[name]);
  if (!ownWay && !(await isReachable(RELEASES))) return;
  say("Fetching the desktop runtime, once (about 110 MB) …");
  await install(join(folder, "install.js"));
}

const isReachable = (url: string): Promise<boolean> =>
  fetch(url, { method: "HEAD", redirect: "manual", signal: AbortSignal.timeout(REACHABLE_WITHIN_MS) }).then(
    (response) => response.status < 400,
    () => false,
  );

const install = (script: string): Promise<void> =>
  new Promise((done) => {
    const child = spawn(process.execPath, [script], { stdio: "ignore", timeout: FETCHED_WITHIN_MS });
    child.on("error", () => done());
    child.on("exit", () => done());
  });
