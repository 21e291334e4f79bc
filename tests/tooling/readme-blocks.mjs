// @ts-check
// The README's worked examples: blocks that start with "$ npm run -s swingstill -- …" hold what that call prints.
// `node tests/tooling/readme-blocks.mjs` writes them anew; readme.test.ts fails where one is out of date.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const root = resolve(import.meta.dirname, "../..");
const file = join(root, "README.md");
const BLOCK = /^```\n\$ npm run -s swingstill -- (.+)\n([\s\S]*?)^```$/gm;

/** @returns {string} */
export const readme = () => readFileSync(file, "utf8");

/**
 * The text with every block's output as the program prints it now.
 * @param {string} text
 */
export function withFreshBlocks(text) {
  return text.replace(
    BLOCK,
    (_whole, call) => `\`\`\`\n$ npm run -s swingstill -- ${call}\n${printed(call)}\`\`\``,
  );
}

/** @param {string} call */
function printed(call) {
  const args = [join(root, "core/cli/launch.mjs"), ...call.split(" ")];
  const { stdout, stderr, status } = spawnSync(process.execPath, args, { cwd: root, encoding: "utf8" });
  if (status !== 0) throw new Error(`${call}: exit code ${status}\n${stderr}`);
  return stdout;
}

if (process.argv[1] === import.meta.filename) writeFileSync(file, withFreshBlocks(readme()));
