// @ts-check
// `npm start`, and with --build-only `npm run build`: builds what is stale (with --clean, everything), then
// hands over to start.ts.
import { pathToFileURL } from "node:url";
import { buildAll, buildStart, clean } from "../build.mjs";

try {
  const words = process.argv.slice(2);
  if (words.includes("--clean")) clean();
  await buildAll();
  if (!words.includes("--build-only")) {
    const { start } = await import(pathToFileURL(await buildStart()).href);
    process.exitCode = await start(words);
  }
} catch (error) {
  process.stderr.write(`swingstill: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
