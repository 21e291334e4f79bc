import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createRecoveryStore, type StoredSnapshot, snapshotName } from "../../electron/recovery.ts";

let folder = "";
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "recovery-")), "inner");
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true, force: true }));

const snapshot = (document: string, savedAt: number): StoredSnapshot => ({
  document,
  savedAt,
  name: "Back.door.json",
  path: null,
  text: `{ "name": "${document}" }`,
});

test("what was written is found again, newest first, across a new start", async () => {
  const before = createRecoveryStore(folder);
  await before.write(snapshot("a", 1));
  await before.write({ ...snapshot("b", 3), path: "/x/b.door.json" });
  await before.write(snapshot("c", 2));
  const found = await createRecoveryStore(folder).read();
  expect(found.map(({ document }) => document)).toEqual(["b", "c", "a"]);
  expect(found[0]).toEqual({ ...snapshot("b", 3), path: "/x/b.door.json" });
});

test("a document has one snapshot, its last", async () => {
  const store = createRecoveryStore(folder);
  await store.write(snapshot("a", 1));
  await store.write(snapshot("a", 2));
  expect(await store.read()).toEqual([snapshot("a", 2)]);
  expect(readdirSync(folder)).toEqual(["a.snapshot.json"]);
});

test("cleared is gone; clearing what is not there is no error", async () => {
  const store = createRecoveryStore(folder);
  await store.write(snapshot("a", 1));
  await store.clear("a");
  await store.clear("a");
  expect(await store.read()).toEqual([]);
});

test("without a folder there is nothing to recover", async () => {
  expect(await createRecoveryStore(folder).read()).toEqual([]);
});

test("damaged and foreign files are not listed, and not removed", async () => {
  const store = createRecoveryStore(folder);
  await store.write(snapshot("good", 1));
  writeFileSync(join(folder, "torn.snapshot.json"), '{ "document": "torn", "te');
  writeFileSync(join(folder, "odd.snapshot.json"), '{ "document": 5 }');
  writeFileSync(join(folder, "other.snapshot.json"), JSON.stringify(snapshot("not-other", 1)));
  writeFileSync(join(folder, "notes.txt"), "mine");
  expect(await store.read()).toEqual([snapshot("good", 1)]);
  expect(readdirSync(folder)).toHaveLength(5);
});

test.each(["", "..", "../a", "a/b", "a\\b", "A", "a.b", "x".repeat(65)])(
  "no file for the name %j",
  (document) => {
    expect(() => snapshotName(document)).toThrow("not a document's name");
  },
);
