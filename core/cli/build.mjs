// @ts-check
// What the command line's bundle is made of.
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { bundleIfStale } from "./bundle.mjs";

const root = resolve(import.meta.dirname, "../..");

/** The worker stands beside main.mjs once bundled; there is one only where the sources have one. */
function entries() {
  const worker = existsSync(join(root, "core/cli/worker.ts")) ? { worker: "core/cli/worker.ts" } : {};
  return { main: "core/cli/main.ts", ...worker };
}

/**
 * Builds dist/cli unless it is fresh.
 * @returns {Promise<string>} path of the bundle that exports `main`
 */
export const buildCommandLine = () =>
  bundleIfStale({
    root,
    outdir: join(root, "dist/cli"),
    entries: entries(),
    sources: ["core", "assets", "package.json", "package-lock.json"],
    extension: ".mjs",
    options: {
      format: "esm",
      splitting: true,
      // Some packages are CommonJS inside and call require for Node's own modules.
      banner: { js: 'import{createRequire}from"node:module";const require=createRequire(import.meta.url);' },
    },
  });
