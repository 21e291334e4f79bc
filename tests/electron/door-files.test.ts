import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { readDoorText, reason } from "../../electron/door-files.ts";
import { MAX_TEXT } from "../../electron/messages.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "doors-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, data: string | Uint8Array): string => {
  writeFileSync(join(folder, name), data);
  return join(folder, name);
};

test("the text comes exactly as it stands, a byte order mark and odd line ends included", async () => {
  const text = '\ufeff{ "name":\t"Tür" }\r\n';
  expect(await readDoorText(put("a.door.json", text))).toBe(text);
});

test("what cannot be read is named, with the reason in words", async () => {
  await expect(readDoorText(join(folder, "gone.door.json"))).rejects.toThrow(
    "gone.door.json cannot be opened: it is not there any more.",
  );
  mkdirSync(join(folder, "b.door.json"));
  await expect(readDoorText(join(folder, "b.door.json"))).rejects.toThrow(
    /b\.door\.json (is not a file|cannot be opened)/,
  );
});

test("too large, or not text, is refused", async () => {
  await expect(readDoorText(put("big.door.json", "[".repeat(MAX_TEXT + 1)))).rejects.toThrow(
    `big.door.json has ${MAX_TEXT + 1} bytes`,
  );
  await expect(readDoorText(put("odd.door.json", new Uint8Array([0xff, 0xfe, 0x7b])))).rejects.toThrow(
    "not UTF-8",
  );
});

test("a reason without a known code is the error's own", () => {
  expect(reason(new Error("something else"))).toBe("something else");
  expect(reason("text")).toBe("text");
});
