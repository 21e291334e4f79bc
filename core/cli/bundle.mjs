// @ts-check
// Bundles TypeScript entries when their sources have changed. Plain JavaScript, because it runs on a fresh clone
// before anything has been built.
import { createHash, randomBytes } from "node:crypto";
import {
  closeSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, join, resolve } from "node:path";
import { noticesOf } from "./notices.mjs";

/** Chunks of an older bundle are kept this long for a process that still runs on it. */
const KEEP_OLD_CHUNKS_MS = 3_600_000;

/**
 * @typedef {object} Bundle
 * @property {string} root folder of the checkout
 * @property {string} outdir where the outputs go
 * @property {Record<string, string>} entries output name without extension -> source, below root; the first one
 *   carries the stamp
 * @property {readonly string[]} sources files and folders below root whose change makes the bundle stale
 * @property {string} extension of the outputs, with its dot
 * @property {import("esbuild").BuildOptions} options what differs from the defaults below
 */

/**
 * Builds unless the outputs are there and made from just these sources.
 * @param {Bundle} bundle
 * @returns {Promise<string>} path of the first entry's output
 * @throws {Error} with the compiler's own words where the sources do not compile
 */
export async function bundleIfStale(bundle) {
  const first = join(bundle.outdir, `${Object.keys(bundle.entries)[0]}${bundle.extension}`);
  const stamp = stampOf(bundle);
  if (readStamp(first) !== stamp) await build(bundle, stamp);
  return first;
}

/**
 * A digest of every source's path, size and time, so that an older or a removed file counts as a change too.
 * @param {Pick<Bundle, "root" | "sources" | "entries">} bundle
 */
export function stampOf({ root, sources, entries }) {
  const digest = createHash("sha256").update(JSON.stringify(entries));
  for (const source of sources) {
    for (const file of filesBelow(join(root, source))) {
      const { size, mtimeMs } = statSync(file);
      digest.update(`${file}\0${size}\0${mtimeMs}\n`);
    }
  }
  return digest.digest("hex").slice(0, 32);
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesBelow(path) {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return [];
  if (!stats.isDirectory()) return [path];
  return readdirSync(path, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) =>
      entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)],
    );
}

/** @param {string} stamp */
const stampLine = (stamp) => `//sources:${stamp}`;

/** @param {string} file */
function readStamp(file) {
  const buffer = Buffer.alloc(stampLine("0".repeat(32)).length);
  /** @type {number} */
  let handle;
  try {
    handle = openSync(file, "r");
  } catch {
    return undefined;
  }
  try {
    readSync(handle, buffer);
  } finally {
    closeSync(handle);
  }
  return buffer.toString("latin1").split(":")[1];
}

/**
 * @param {Bundle} bundle
 * @param {string} stamp
 */
async function build(bundle, stamp) {
  const parts = `${bundle.outdir}.${process.pid}-${randomBytes(4).toString("hex")}`;
  mkdirSync(parts, { recursive: true });
  try {
    await compile(bundle, stamp, parts);
    moveInto(bundle, stamp, parts);
  } finally {
    rmSync(parts, { recursive: true, force: true });
  }
  dropOldChunks(bundle, stamp);
}

/**
 * @param {Bundle} bundle
 * @param {string} stamp
 * @param {string} outdir
 */
async function compile({ root, entries, extension, options }, stamp, outdir) {
  const esbuild = await import("esbuild").catch(() => {
    throw new Error("the build tools are missing: run `npm ci` in the checkout first");
  });
  try {
    const { metafile } = await esbuild.build({
      absWorkingDir: root,
      entryPoints: Object.fromEntries(
        Object.entries(entries).map(([name, path]) => [name, resolve(root, path)]),
      ),
      outdir,
      outExtension: { ".js": extension },
      chunkNames: "[name]-[hash]",
      bundle: true,
      minify: true,
      platform: "node",
      target: "node20",
      legalComments: "none",
      logLevel: "silent",
      plugins: [rawText, inlineData],
      metafile: true,
      ...options,
      banner: { js: `${stampLine(stamp)}\n${options.banner?.js ?? ""}` },
    });
    const notices = noticesOf(Object.keys(metafile?.inputs ?? {}).map((path) => resolve(root, path)));
    if (notices !== "") writeFileSync(join(outdir, "licenses.txt"), notices);
  } catch (error) {
    const { errors } = /** @type {import("esbuild").BuildFailure} */ (error);
    if (!Array.isArray(errors)) throw error;
    throw new Error((await esbuild.formatMessages(errors, { kind: "error" })).join("\n"));
  }
}

/**
 * `import text from "./file.json?raw"`: the file as text, as the renderer's and the tests' bundler has it.
 * @type {import("esbuild").Plugin}
 */
const rawText = {
  name: "raw-text",
  setup(build) {
    build.onResolve({ filter: /\?raw$/ }, ({ path, resolveDir }) => ({
      path: resolve(resolveDir, path.slice(0, -"?raw".length)),
      namespace: "raw-text",
    }));
    build.onLoad({ filter: /.*/, namespace: "raw-text" }, ({ path }) => ({
      contents: readFileSync(path, "utf8"),
      loader: "text",
    }));
  },
};

/**
 * `import face from "./face.ttf?inline"`: the file as a `data:` address, as the renderer's and the tests' bundler has it.
 * @type {import("esbuild").Plugin}
 */
const inlineData = {
  name: "inline-data",
  setup(build) {
    build.onResolve({ filter: /\?inline$/ }, async ({ path, ...where }) => {
      const found = await build.resolve(path.slice(0, -"?inline".length), {
        importer: where.importer,
        resolveDir: where.resolveDir,
        kind: where.kind,
      });
      return found.errors.length > 0 ? found : { path: found.path, suffix: "?inline" };
    });
    build.onLoad({ filter: /\.(ttf|woff)$/ }, ({ path, suffix }) =>
      suffix === "?inline" ? { contents: readFileSync(path), loader: "dataurl" } : undefined,
    );
  },
};

/**
 * Renames one by one, the stamped entry last: whoever reads the new stamp finds all that belongs to it.
 * @param {Bundle} bundle
 * @param {string} stamp
 * @param {string} parts
 */
function moveInto({ outdir, entries, extension }, stamp, parts) {
  mkdirSync(outdir, { recursive: true });
  const first = `${Object.keys(entries)[0]}${extension}`;
  const names = readdirSync(parts).filter((name) => name !== first);
  for (const name of [...names, first]) {
    try {
      renameSync(join(parts, name), join(outdir, name));
    } catch (error) {
      // On Windows a file that another process has open cannot be replaced; if it made the same one, all is well.
      if (readStamp(join(outdir, name)) !== stamp) throw error;
    }
  }
}

/**
 * @param {Bundle} bundle
 * @param {string} stamp
 */
function dropOldChunks({ outdir, extension }, stamp) {
  const oldest = Date.now() - KEEP_OLD_CHUNKS_MS;
  for (const name of readdirSync(outdir)) {
    const file = join(outdir, name);
    if (!basename(name).endsWith(extension) || readStamp(file) === stamp) continue;
    if (statSync(file).mtimeMs < oldest) rmSync(file, { force: true });
  }
}
