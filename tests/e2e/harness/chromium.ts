// A real Chromium: an installed one where there is one, else the one that comes as a package.
import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import packaged from "@sparticuz/chromium";
import { type Browser, chromium } from "playwright-core";

const root = resolve(import.meta.dirname, "../../..");

const INSTALLED = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/**
 * Everything is drawn by the processor (SwiftShader), so what matters is to keep each frame on its way short.
 * Measured here on 2 cores, one full-window WebGL2 frame of 1360×800 and one screenshot:
 * without further flags 47 ms and 130 ms; --disable-gpu-compositing 31 ms and 60 ms. Left out on purpose:
 * --disable-frame-rate-limit (24 ms), because frames then come faster than on any screen.
 */
const FLAGS = [
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-gpu-compositing",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  // The same glyphs on every machine.
  "--font-render-hinting=none",
];

/** The browser's sandbox refuses to run for the super-user. */
const sandbox = (): readonly string[] => (process.getuid?.() === 0 ? ["--no-sandbox"] : []);

export async function launchChromium(): Promise<Browser> {
  const executablePath = await findChromium();
  try {
    return await chromium.launch({ executablePath, args: [...FLAGS, ...sandbox()] });
  } catch (error) {
    throw new Error(
      `${executablePath} does not start. On Debian: apt-get install chromium, or name another one in CHROME.`,
      { cause: error },
    );
  }
}

export async function findChromium(): Promise<string> {
  const { CHROME } = process.env;
  if (CHROME !== undefined && CHROME !== "") return CHROME;
  return INSTALLED.find(existsSync) ?? (await unpack());
}

/**
 * The package's browser, unpacked once for each version. Unpacked aside and moved into place, because a run
 * that was stopped half-way would leave a torn one, and two runs at once would share it.
 */
async function unpack(): Promise<string> {
  const description = readFileSync(join(root, "node_modules/@sparticuz/chromium/package.json"), "utf8");
  const { version } = JSON.parse(description) as { version: string };
  const place = join(tmpdir(), `swingstill-chromium-${version}`);
  const executable = join(place, "chromium");
  if (existsSync(executable)) return executable;

  const { TMPDIR } = process.env;
  const aside = mkdtempSync(join(tmpdir(), "swingstill-chromium-"));
  // The package unpacks into the system's temporary folder and takes whatever it finds there.
  process.env.TMPDIR = aside;
  try {
    await packaged.executablePath();
    renameSync(aside, place);
  } catch (error) {
    if (!existsSync(executable)) throw error;
  } finally {
    if (TMPDIR === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = TMPDIR;
    rmSync(aside, { recursive: true, force: true });
  }
  return executable;
}
