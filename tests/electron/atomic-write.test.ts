import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeAtomically } from "../../electron/atomic-write.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "write-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("writes a new file, text and bytes", async () => {
  await writeAtomically(join(folder, "a.txt"), "Tür");
  await writeAtomically(join(folder, "b.bin"), new Uint8Array([0, 255]));
  expect(readFileSync(join(folder, "a.txt"), "utf8")).toBe("Tür");
  expect([...readFileSync(join(folder, "b.bin"))]).toEqual([0, 255]);
  expect(readdirSync(folder).sort()).toEqual(["a.txt", "b.bin"]);
});

test("replaces a file by another one, so that a reader of the old one is not disturbed", async () => {
  const file = join(folder, "a.txt");
  writeFileSync(file, "old");
  const before = statSync(file).ino;
  await writeAtomically(file, "new");
  expect(readFileSync(file, "utf8")).toBe("new");
  expect(statSync(file).ino).not.toBe(before);
});

test.skipIf(process.platform === "win32")("keeps the permissions", async () => {
  const file = join(folder, "a.txt");
  writeFileSync(file, "old");
  chmodSync(file, 0o600);
  await writeAtomically(file, "new");
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

test("a failed write leaves no trace, and the old file whole", async () => {
  const taken = join(folder, "taken");
  mkdirSync(taken);
  writeFileSync(join(taken, "inside"), "old");
  await expect(writeAtomically(taken, "new")).rejects.toThrow();
  expect(readdirSync(folder)).toEqual(["taken"]);
  expect(readFileSync(join(taken, "inside"), "utf8")).toBe("old");
  await expect(writeAtomically(join(folder, "nowhere/a.txt"), "new")).rejects.toMatchObject({
    code: "ENOENT",
  });
});

test.skipIf(process.platform === "win32")("a link stays a link", async () => {
  writeFileSync(join(folder, "real.txt"), "old");
  symlinkSync("real.txt", join(folder, "link.txt"));
  await writeAtomically(join(folder, "link.txt"), "new");
  expect(lstatSync(join(folder, "link.txt")).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, "real.txt"), "utf8")).toBe("new");
});

test("many at once leave one of them, whole", async () => {
  const file = join(folder, "a.txt");
  const texts = Array.from({ length: 20 }, (_, i) => String(i).repeat(10_000));
  await Promise.all(texts.map((text) => writeAtomically(file, text)));
  expect(texts).toContain(readFileSync(file, "utf8"));
  expect(readdirSync(folder)).toEqual(["a.txt"]);
});
