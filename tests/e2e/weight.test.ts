// What comes over the wire before the first door is seen: sizes of the built files, compressed as a server would.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import { ready } from "./helpers/bench.ts";

const app = setUpApp();
const folder = resolve(import.meta.dirname, "../../dist/renderer");

/** Compressed already. */
const PACKED = /\.woff2$/;

function weight(file: string): number {
  const bytes = readFileSync(resolve(folder, file));
  return PACKED.test(file) ? bytes.length : gzipSync(bytes).length;
}

test("first paint takes less than 700 kB, the 3D door and the rest come after", async () => {
  const html = readFileSync(resolve(folder, "index.html"), "utf8");
  const first = ["index.html", ...[...html.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, file]) => file)];
  const page = await app.open();
  await ready(page);
  const loaded = await page.evaluate(() =>
    performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname.slice(1)),
  );
  const fonts = loaded.filter((file) => PACKED.test(file));
  const worker = loaded.filter((file) => file.includes("door-worker"));
  const files = [...new Set([...first, ...fonts, ...worker])];
  const total = files.reduce((sum, file) => sum + weight(file), 0);
  console.info(`first paint: ${(total / 1000).toFixed(0)} kB compressed in ${files.length} files`);
  expect(worker).toHaveLength(1);
  expect(total).toBeLessThan(700_000);
  for (const later of [
    "DoorScene",
    "Plots",
    "Study",
    "Trial",
    "Paper",
    "manrope",
    "sheet-worker",
    "study-worker",
    "map-worker",
    "fit-worker",
  ])
    expect(files.filter((file) => file.includes(later))).toEqual([]);
});
