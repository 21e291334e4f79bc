// @ts-check
// `npm run bench`: bundles the benches as the product is bundled, and runs them in a process of their own.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { bundleIfStale } from "../../core/cli/bundle.mjs";

const root = resolve(import.meta.dirname, "../..");
const entry = "tests/bench/main.ts";

if (!existsSync(join(root, entry))) {
  process.stderr.write(`${entry} is not there: there are no benches yet\n`);
  process.exit(1);
}
const file = await bundleIfStale({
  root,
  outdir: join(root, "dist/bench"),
  entries: { main: entry },
  sources: ["core", "assets", "tests/bench", "package.json", "package-lock.json"],
  extension: ".mjs",
  options: {
    format: "esm",
    banner: { js: 'import{createRequire}from"node:module";const require=createRequire(import.meta.url);' },
  },
});
const { status } = spawnSync(process.execPath, [file, ...process.argv.slice(2)], {
  stdio: "inherit",
  cwd: root,
});
process.exit(status ?? 1);
