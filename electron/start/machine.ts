/** This machine, as far as a start needs to know it. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { hasDisplay, type Machine } from "./runtime.ts";

/** @param root folder of the checkout */
export const thisMachine = (root: string): Machine => ({
  env: process.env,
  system: process.platform,
  packageFolder: join(root, "node_modules/electron"),
  read: (path) => (existsSync(path) ? readFileSync(path, "utf8") : undefined),
  exists: existsSync,
});

export const displayHere = (): boolean => hasDisplay(process.env, process.platform);

/** The runtime's sandbox does not start for the super-user on Linux. */
export const isSuperUser = (): boolean => process.platform === "linux" && process.getuid?.() === 0;

/** Where the person stood: npm runs a script in the package's folder. */
export function personsFolder(env: Machine["env"]): string {
  const { npm_lifecycle_event: script, INIT_CWD: folder } = env;
  return script === "start" && folder ? folder : process.cwd();
}
