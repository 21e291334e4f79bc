// @ts-check
// Builds the shell and the page where their sources have changed. Plain JavaScript, because it runs on a fresh
// clone before anything has been built.
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { buildCommandLine } from "../core/cli/build.mjs";
import { bundleIfStale, stampOf } from "../core/cli/bundle.mjs";
import { noticesOf } from "../core/cli/notices.mjs";

const root = resolve(import.meta.dirname, "..");

/** What every build depends on beside its sources. */
const PROJECT = ["package.json", "package-lock.json", "tsconfig.json"];

/** main.mjs and preload.cjs: a sandboxed preload script has to be CommonJS. */
export async function buildShell() {
  const common = { root, outdir: join(root, "dist/electron"), sources: ["electron", "core", ...PROJECT] };
  const external = ["electron"];
  await bundleIfStale({
    ...common,
    entries: { preload: "electron/preload.ts" },
    extension: ".cjs",
    options: { format: "cjs", external },
  });
  await bundleIfStale({
    ...common,
    entries: { main: "electron/main.ts" },
    extension: ".mjs",
    options: { format: "esm", external },
  });
}

/** The launcher of `npm start`, itself TypeScript. */
export const buildStart = () =>
  bundleIfStale({
    root,
    outdir: join(root, "dist/start"),
    entries: { start: "electron/start/start.ts" },
    sources: ["electron", ...PROJECT],
    extension: ".mjs",
    options: { format: "esm" },
  });

/**
 * The page, built beside its place and then moved there: a reader never finds half of it.
 * @returns {Promise<string>} its folder
 */
export async function buildPage() {
  const folder = join(root, "dist/renderer");
  const stampFile = join(root, "dist/renderer.stamp");
  const entries = { page: "renderer/index.html" };
  const stamp = stampOf({
    root,
    entries,
    sources: ["renderer", "core", "assets", "electron/bridge.ts", ...PROJECT],
  });
  if (existsSync(join(folder, "index.html")) && readIfThere(stampFile) === stamp) return folder;

  const parts = `${folder}.${process.pid}`;
  const old = `${parts}.old`;
  // Set by a test run or a shell, another value would put the libraries' development versions into the page.
  process.env.NODE_ENV = "production";
  const vite = await import("vite");
  try {
    await vite.build({
      configFile: join(root, "renderer/vite.config.ts"),
      logLevel: "warn",
      build: { outDir: parts, emptyOutDir: true },
      plugins: [licences],
    });
    replaceFolder(parts, folder, old);
    writeFileSync(stampFile, stamp);
  } finally {
    rmSync(parts, { recursive: true, force: true });
    rmSync(old, { recursive: true, force: true });
  }
  return folder;
}

/**
 * @param {string} made
 * @param {string} place
 * @param {string} aside where what was in its place goes
 */
function replaceFolder(made, place, aside) {
  try {
    if (existsSync(place)) renameSync(place, aside);
    renameSync(made, place);
  } catch (error) {
    // Another build at the same moment may have put the same page there first.
    if (!existsSync(join(place, "index.html"))) throw error;
  }
}

/** @param {string} file */
const readIfThere = (file) => (existsSync(file) ? readFileSync(file, "utf8") : undefined);

/**
 * The licences of what is in the page, beside it.
 * @type {import("vite").Plugin}
 */
const licences = {
  name: "licences",
  generateBundle(_options, bundle) {
    const modules = Object.values(bundle).flatMap((part) => (part.type === "chunk" ? part.moduleIds : []));
    this.emitFile({ type: "asset", fileName: "licenses.txt", source: noticesOf(modules) });
  },
};

/** Removes what was built, older chunks included: for packaging. */
export function clean() {
  for (const name of ["cli", "electron", "renderer", "renderer.stamp"])
    rmSync(join(root, "dist", name), { recursive: true, force: true });
}

/** All that is shipped. */
export async function buildAll() {
  await buildCommandLine();
  await buildShell();
  await buildPage();
}
