// `npm start`, with and without something that stands in for the desktop runtime.
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");

let folder = "";
let child: ChildProcess | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "start-"));
});
afterEach(() => {
  child?.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

interface Started {
  /** What has been printed, once it matches. */
  readonly printed: (pattern: RegExp) => Promise<RegExpExecArray>;
  readonly ended: Promise<number | null>;
  readonly interrupt: () => void;
}

function start(words: readonly string[], env: Readonly<Record<string, string>>): Started {
  const started = spawn(process.execPath, [join(root, "electron/start/launch.mjs"), ...words], {
    cwd: folder,
    env: { ...process.env, ...env },
  });
  child = started;
  let out = "";
  for (const stream of [started.stdout, started.stderr])
    stream.on("data", (data) => {
      out += String(data);
    });
  return {
    ended: new Promise((done) => started.on("close", done)),
    interrupt: () => started.kill("SIGINT"),
    printed: async (pattern) => {
      await expect.poll(() => out, { timeout: 60_000 }).toMatch(pattern);
      return pattern.exec(out) as RegExpExecArray;
    },
  };
}

/** A folder with an executable in place of the runtime's, and a display that is not looked at. */
function standIn(script: string): Record<string, string> {
  writeFileSync(join(folder, "electron"), `#!/bin/sh\n${script}\n`, { mode: 0o755 });
  return { ELECTRON_OVERRIDE_DIST_PATH: folder, DISPLAY: ":99", PATH: folder };
}

const ADDRESS = /Swingstill is at (http:\/\/127\.0\.0\.1:\d+\/) \(in the browser: ([^)]+)\)/;

test("in the browser: says where and why, serves the page, ends on Ctrl-C", async () => {
  const started = start(["--browser"], {});
  const [, url = "", why] = await started.printed(ADDRESS);
  expect(why).toBe("asked for with --browser");
  expect(await (await fetch(url)).text()).toContain('<div id="root">');
  started.interrupt();
  expect(await started.ended).toBe(0);
});

describe.skipIf(process.platform !== "linux")("with a stand-in for the runtime (made for Linux)", () => {
  test("runs it on the built shell and passes words and exit code on", async () => {
    const started = start(["a.door.json"], standIn('echo "ran: $*"; /bin/sleep 0.1; exit 0'));
    const [ran] = await started.printed(/ran: .*/);
    expect(ran).toContain(join(root, "dist/electron/main.mjs"));
    expect(ran).toContain("a.door.json");
    expect(await started.ended).toBe(0);
  });

  test("goes on in the browser where the window does not come up", async () => {
    const started = start([], standIn("exit 133"));
    const [, url = "", why] = await started.printed(ADDRESS);
    expect(why).toBe("the desktop window did not come up");
    expect((await fetch(url)).status).toBe(200);
    started.interrupt();
    expect(await started.ended).toBe(0);
  });
});
