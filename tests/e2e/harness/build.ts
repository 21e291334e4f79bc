// Before the browser tests: the app as it is shipped, built by its own script.
import { execFileSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";

const root = resolve(import.meta.dirname, "../../..");

export default function build(): void {
  mkdirSync(join(root, "tests/e2e/out"), { recursive: true });
  const { NODE_ENV: _test, VITEST: _vitest, ...env } = process.env;
  const args = [join(root, "electron/start/launch.mjs"), "--build-only"];
  execFileSync(process.execPath, args, { cwd: root, env, stdio: "inherit" });
}
