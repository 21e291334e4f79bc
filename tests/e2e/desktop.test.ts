// The real desktop shell, where its runtime is present.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { _electron, type ElectronApplication, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { displayHere, isSuperUser, thisMachine } from "../../electron/start/machine.ts";
import { findRuntime } from "../../electron/start/runtime.ts";

const root = resolve(import.meta.dirname, "../..");
const runtime = findRuntime(thisMachine(root));

function missing(): string | undefined {
  if (runtime === undefined) return "the desktop runtime is not on this machine";
  return displayHere() ? undefined : "there is no display on this machine";
}
const reason = missing();
const title = `the desktop shell${reason === undefined ? "" : ` (skipped: ${reason})`}`;

describe.skipIf(reason !== undefined)(title, () => {
  let shell: ElectronApplication;
  let page: Page;
  let folder = "";

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "shell-"));
    shell = await _electron.launch({
      executablePath: runtime ?? "",
      args: [
        ...(isSuperUser() ? ["--no-sandbox"] : []),
        join(root, "dist/electron/main.mjs"),
        `--user-data-dir=${folder}`,
      ],
    });
    page = await shell.firstWindow();
    await page.waitForLoadState();
  });

  afterAll(async () => {
    await shell?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test("shows the page under its own scheme, with the bridge and without Node", async () => {
    expect(page.url()).toBe("app://swingstill/index.html");
    await page.locator("#root > *").first().waitFor();
    const seen = await page.evaluate(() => ({
      platform: window.swingstill?.platform.kind,
      strangers: ["require", "process", "module", "Buffer", "ipcRenderer"].filter((name) => name in window),
    }));
    expect(seen).toEqual({ platform: "desktop", strangers: [] });
    await page.screenshot({ path: join(root, "tests/e2e/out/desktop.png") });
  });

  test("goes nowhere else and opens no window", async () => {
    await page.evaluate(() => {
      location.href = "http://127.0.0.1:9/";
    });
    expect(await page.evaluate(() => window.open("http://127.0.0.1:9/") === null)).toBe(true);
    expect(page.url()).toBe("app://swingstill/index.html");
    expect(shell.windows()).toHaveLength(1);
  });

  test("reaches no network and no file", async () => {
    const tried = await page.evaluate(() =>
      Promise.all(
        ["http://127.0.0.1:9/", "file:///etc/hosts", "app://other/index.html"].map((url) =>
          fetch(url).then(
            () => "reached",
            () => "refused",
          ),
        ),
      ),
    );
    expect(tried).toEqual(["refused", "refused", "refused"]);
  });

  test("serves nothing from outside the page's folder", async () => {
    const status = await page.evaluate(async () => (await fetch("/%2e%2e/electron/main.mjs")).status);
    expect(status).toBe(404);
  });

  test("keeps a copy of unsaved work and refuses a malformed one", async () => {
    const found = await page.evaluate(async () => {
      const bridge = window.swingstill;
      if (bridge === undefined) throw new Error("no bridge");
      await bridge.writeSnapshot({ document: "d-1", name: "a.door.json", token: null, text: "{}" });
      const kept = await bridge.readSnapshots();
      await bridge.clearSnapshot("d-1");
      const refused = await bridge.clearSnapshot("../x").catch((error: Error) => error.message);
      return {
        kept: kept.map(({ document, text }) => ({ document, text })),
        left: await bridge.readSnapshots(),
        refused,
      };
    });
    expect(found.kept).toEqual([{ document: "d-1", text: "{}" }]);
    expect(found.left).toEqual([]);
    expect(found.refused).toContain("snapshot.clear.document must be");
  });
});
