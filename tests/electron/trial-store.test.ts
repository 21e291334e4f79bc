import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createTrialStore, trialName } from "../../electron/trial-store.ts";

let folder = "";
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "trials-")), "inner");
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true, force: true }));

test("what was kept for a door is read again across a new start, its last; others have none", async () => {
  const before = createTrialStore(folder);
  await before.keep({ path: "/doors/a.door.json" }, "one");
  await before.keep({ path: "/doors/a.door.json" }, "two");
  const store = createTrialStore(folder);
  expect(await store.read({ path: "/doors/a.door.json" })).toBe("two");
  expect(await store.read({ path: "/other/a.door.json" })).toBeNull();
  expect(await store.read({ unsaved: "/doors/a.door.json" })).toBeNull();
  expect(readdirSync(folder)).toHaveLength(1);
});

test("forgotten is gone; forgetting what is not there is no error", async () => {
  const store = createTrialStore(folder);
  await store.keep({ unsaved: "a" }, "one");
  await store.keep({ unsaved: "a" }, null);
  await store.keep({ unsaved: "a" }, null);
  expect(await store.read({ unsaved: "a" })).toBeNull();
});

test.each(["../../etc/passwd", "a/b", "", "con", "x".repeat(5000), "\0"])(
  "whatever a door is called, its file is in the folder: %j",
  (name) => {
    for (const door of [{ path: name }, { unsaved: name }])
      expect(trialName(door)).toMatch(/^[0-9a-f]{64}\.trial\.json$/);
  },
);

test("a folder that cannot be read is an error, not nothing", async () => {
  writeFileSync(folder, "a file in its place");
  await expect(createTrialStore(folder).read({ unsaved: "a" })).rejects.toThrow();
});
