// @ts-check
// Packages the app around a stand-in for the desktop runtime, so that nothing has to be fetched, and inspects
// the archive: exactly the built files, nothing else, small, and complete without any installed package.
import { execFileSync, spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { builtinModules } from "node:module";
import { tmpdir } from "node:os";
import { join, relative, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import * as asar from "@electron/asar";
import { getCurrentFuseWire } from "@electron/fuses";
import { build } from "esbuild";

const root = resolve(import.meta.dirname, "../..");

/** What the archive may weigh, bytes. The page with its 3D library is most of it; a source map or a package would show. */
// The program for paper, twice (command line and page), carries its fonts and the PDF writer: 3.6 MB; licences 2.9 MB.
const MOST_BYTES = 12_000_000;

/** Folders of dist/ that are shipped. */
const SHIPPED = ["cli", "electron", "renderer"];

/** The mark before the fuses in the runtime's executable (@electron/fuses, constants). */
const FUSE_SENTINEL = "dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX";
/** Fuse wire version 1 with eight fuses, all as delivered: on. */
const FUSE_WIRE = Buffer.concat([
  Buffer.from(FUSE_SENTINEL),
  Buffer.from([1, 8]),
  Buffer.from("1".repeat(8)),
]);

/** The fuses as they must come out, in their order: RunAsNode, CookieEncryption, NodeOptions, NodeCliInspect,
 * AsarIntegrity, OnlyLoadAppFromAsar, BrowserSnapshot, FileProtocolPrivileges. */
const FUSES = "01001100";

/** @param {string} message */
const fail = (message) => {
  throw new Error(message);
};

/**
 * @param {string} folder
 * @returns {string[]} files below it, with forward slashes
 */
const filesBelow = (folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => name.replaceAll(sep, "/"))
    .sort();

/** @param {string} folder */
function makeStandIn(folder) {
  mkdirSync(join(folder, "resources"), { recursive: true });
  mkdirSync(join(folder, "locales"));
  writeFileSync(join(folder, "electron"), Buffer.concat([Buffer.from("#!/bin/sh\nexit 1\n"), FUSE_WIRE]), {
    mode: 0o755,
  });
  writeFileSync(join(folder, "locales/en-US.pak"), "");
  const { version } = JSON.parse(readFileSync(join(root, "node_modules/electron/package.json"), "utf8"));
  writeFileSync(join(folder, "version"), version);
}

/**
 * @param {string} standIn
 * @param {string} out
 */
function packageApp(standIn, out) {
  const builder = join(root, "node_modules/electron-builder/cli.js");
  const settings = [`-c.electronDist=${standIn}`, `-c.directories.output=${out}`];
  const args = [builder, "--linux", "dir", "--x64", "--publish", "never", ...settings];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: "utf8" });
  if (status !== 0) fail(`electron-builder failed:\n${stdout}${stderr}`);
}

/** @param {string} archive */
function checkList(archive) {
  const packed = asar
    .listPackage(archive, { isPack: false })
    .map((name) => name.replaceAll("\\", "/").replace(/^\//, ""))
    .filter((name) => !("files" in asar.statFile(archive, name)))
    .sort();
  const built = SHIPPED.flatMap((name) =>
    filesBelow(join(root, "dist", name)).map((file) => `dist/${name}/${file}`),
  );
  const expected = [...built, "LICENSE", "package.json"].sort();
  const strangers = packed.filter((name) => !expected.includes(name));
  const missing = expected.filter((name) => !packed.includes(name));
  if (strangers.length > 0) fail(`in the archive but not built: ${strangers.join(", ")}`);
  if (missing.length > 0) fail(`built but not in the archive: ${missing.join(", ")}`);
  const sources = packed.filter((name) => /\.(tsx?|map)$|node_modules|(^|\/)\./.test(name));
  if (sources.length > 0) fail(`sources or packages in the archive: ${sources.join(", ")}`);
  return packed;
}

/** @param {string} archive */
function checkDescription(archive) {
  const description = JSON.parse(asar.extractFile(archive, "package.json").toString("utf8"));
  for (const key of ["devDependencies", "dependencies", "scripts", "build"])
    if (Object.keys(description[key] ?? {}).length > 0) fail(`the packaged package.json still has ${key}`);
  asar.statFile(archive, description.main);
}

/**
 * Nothing may be left to be found in node_modules: there is none.
 * @param {string} folder
 */
async function checkSelfContained(folder) {
  const scripts = filesBelow(join(folder, "dist")).filter((name) => /\.[cm]?js$/.test(name));
  const { metafile } = await build({
    entryPoints: scripts.map((name) => join(folder, "dist", name)),
    outdir: join(folder, "unused"),
    bundle: true,
    write: false,
    metafile: true,
    platform: "node",
    format: "esm",
    packages: "external",
    logLevel: "error",
  });
  const own = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`), "electron"]);
  for (const [file, { imports }] of Object.entries(metafile.inputs))
    for (const { path, external } of imports)
      if (external && !own.has(path)) fail(`${relative(folder, resolve(file))} needs the package ${path}`);
}

/**
 * The packaged command line, run where no package is installed.
 * @param {string} folder
 */
function checkCommandLine(folder) {
  const examples = join(root, "assets/examples");
  const example = existsSync(examples)
    ? readdirSync(examples).find((name) => name.endsWith(".door.json"))
    : undefined;
  if (example === undefined) return "not run, there is no example door yet";
  const main = pathToFileURL(join(folder, "dist/cli/main.mjs")).href;
  const script = `import { main } from ${JSON.stringify(main)}; process.exitCode = await main(process.argv.slice(1));`;
  const args = ["--input-type=module", "-e", script, "review", join(examples, example), "--json"];
  let printed = "";
  try {
    printed = execFileSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
  } catch (error) {
    // A failing finding is an answer too.
    const { status, stdout } = /** @type {{ status: number, stdout: string }} */ (error);
    if (status !== 1) throw error;
    printed = stdout;
  }
  const { door, results } = JSON.parse(printed);
  return `reviews ${JSON.stringify(door)}, ${Object.keys(results).length} results`;
}

/** @param {string} executable */
async function checkFuses(executable) {
  const wire = /** @type {Record<string, number>} */ (
    /** @type {unknown} */ (await getCurrentFuseWire(executable))
  );
  const states = Array.from({ length: FUSES.length }, (_, i) => String.fromCharCode(wire[i] ?? 0)).join("");
  if (states !== FUSES) fail(`the fuses are ${states}, not ${FUSES}`);
}

const work = mkdtempSync(join(tmpdir(), "pack-check-"));
try {
  execFileSync(process.execPath, [join(root, "electron/start/launch.mjs"), "--build-only", "--clean"], {
    cwd: root,
    stdio: "inherit",
  });
  makeStandIn(join(work, "runtime"));
  packageApp(join(work, "runtime"), join(work, "out"));
  const unpacked = join(work, "out/linux-unpacked");
  const archive = join(unpacked, "resources/app.asar");
  const packed = checkList(archive);
  checkDescription(archive);
  await checkFuses(join(unpacked, "swingstill"));
  const { size } = statSync(archive);
  if (size > MOST_BYTES) fail(`the archive has ${size} bytes, more than ${MOST_BYTES}`);
  const extracted = join(work, "extracted");
  asar.extractAll(archive, extracted);
  await checkSelfContained(extracted);
  const commandLine = checkCommandLine(extracted);
  process.stdout.write(
    `Package check, around a stand-in runtime: ${packed.length} files, exactly the built ones; ` +
      `${(size / 1e6).toFixed(2)} MB of at most ${MOST_BYTES / 1e6}; fuses ${FUSES}; command line ${commandLine}.\n`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}
