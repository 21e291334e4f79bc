// @ts-check
// The licences of other people's work that a bundle contains: most ask that their text goes along.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Where a module of a package lies: everything up to and including the package's name. */
const PACKAGE_FOLDER = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;

/**
 * @param {Iterable<string>} modules paths of the bundled modules
 * @returns {string} one section for each package, by name; empty where nothing of another's is in the bundle
 */
export function noticesOf(modules) {
  const folders = new Set([...modules].flatMap((path) => PACKAGE_FOLDER.exec(path)?.[1] ?? []));
  return [...folders]
    .map(noticeOf)
    .filter((notice) => notice !== undefined)
    .sort()
    .join(`\n${"-".repeat(72)}\n\n`);
}

/**
 * @param {string} folder
 * @returns {string | undefined} nothing for a folder that is no package of its own
 */
function noticeOf(folder) {
  const description = join(folder, "package.json");
  if (!existsSync(description)) return undefined;
  const { name, version, license } = JSON.parse(readFileSync(description, "utf8"));
  // Some packages carry several: one for the code, one for a font.
  const files = readdirSync(folder).filter((entry) =>
    /^(licen[cs]e|copying)([-_.]\w+)?(\.(md|txt))?$/i.test(entry),
  );
  const text = files.map((file) => readFileSync(join(folder, file), "utf8").trim()).join("\n\n");
  return `${name} ${version} (${license})\n\n${text}\n`;
}
