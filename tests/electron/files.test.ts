import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { FileToken } from "../../electron/bridge.ts";
import { type DoorFiles, setUpFiles } from "../../electron/files.ts";
import { createTokenRegistry, type TokenRegistry } from "../../electron/tokens.ts";

const chosen: { save: string; open: string[]; answer: number } = { save: "", open: [], answer: 1 };
const offered: (string | undefined)[] = [];
const questions: string[] = [];

vi.mock("electron", () => ({
  dialog: {
    showSaveDialog: async (options: { defaultPath?: string }) => {
      offered.push(options.defaultPath);
      return { filePath: chosen.save };
    },
    showOpenDialog: async () => ({ filePaths: chosen.open }),
    showMessageBox: async ({ message }: { message: string }) => {
      questions.push(message);
      return { response: chosen.answer };
    },
  },
}));

let folder = "";
let tokens: TokenRegistry;
let files: DoorFiles;
let remembered: string[];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "files-"));
  let count = 0;
  tokens = createTokenRegistry(() => String(++count).padStart(32, "0"));
  remembered = [];
  const remember = async (path: string): Promise<void> => void remembered.push(path);
  files = setUpFiles(() => undefined, tokens, {
    list: async () => [],
    remember,
    forget: async () => undefined,
  });
  Object.assign(chosen, { save: "", open: [], answer: 1 });
  offered.length = 0;
  questions.length = 0;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string): string => join(folder, name);
const text = (name: string): string => readFileSync(at(name), "utf8");

describe("opening", () => {
  test("gives text, name and a token, never the path", async () => {
    writeFileSync(at("a.door.json"), "{ }\n");
    chosen.open = [at("a.door.json")];
    const door = await files.open();
    expect(door).toMatchObject({ name: "a.door.json", text: "{ }\n" });
    expect(JSON.stringify(door)).not.toContain(folder);
    expect(remembered).toEqual([at("a.door.json")]);
  });

  test("cancelled is null", async () => expect(await files.open()).toBeNull());
});

describe("saving a door", () => {
  test("to its token's file, without asking", async () => {
    const token = tokens.issue(at("a.door.json"));
    expect(await files.save({ token, name: "other", text: "{1}" })).toEqual({ token, name: "a.door.json" });
    expect(text("a.door.json")).toBe("{1}");
    expect(offered).toEqual([]);
  });

  test("to a token nobody was given fails and writes nothing", async () => {
    const token = "f".repeat(32) as FileToken;
    await expect(files.save({ token, name: "a", text: "{}" })).rejects.toThrow("not chosen in this session");
  });

  test("without a token asks, offering a safe name, and completes the ending", async () => {
    chosen.save = at("back");
    expect(await files.save({ token: null, name: "../../x", text: "{2}" })).toMatchObject({
      name: "back.door.json",
    });
    expect(offered).toEqual(["x.door.json"]);
    expect(text("back.door.json")).toBe("{2}");
  });

  test("cancelled is null", async () => {
    expect(await files.saveAs({ name: "a", text: "{}" })).toBeNull();
    expect(remembered).toEqual([]);
  });

  test("asks before the completed name replaces another file, and respects a no", async () => {
    writeFileSync(at("back.door.json"), "old");
    chosen.save = at("back");
    expect(await files.saveAs({ name: "a", text: "new" })).toBeNull();
    expect(questions).toEqual(["back.door.json is there already. Replace it?"]);
    expect(text("back.door.json")).toBe("old");
    chosen.answer = 0;
    expect(await files.saveAs({ name: "a", text: "new" })).not.toBeNull();
    expect(text("back.door.json")).toBe("new");
  });

  test("that fails says so, and what becomes of the old file", async () => {
    chosen.save = at("nowhere/a.door.json");
    await expect(files.saveAs({ name: "a", text: "{}" })).rejects.toThrow(
      "a.door.json could not be saved: it is not there any more. What was there before is unchanged.",
    );
  });
});

test("an export gets the ending of its kind, whatever name is suggested", async () => {
  chosen.save = at("swing");
  const bytes = new Uint8Array([1, 2, 3]);
  expect(await files.saveBytes({ name: "run.exe", bytes, type: "text/csv" })).toBe("swing.csv");
  expect(offered).toEqual(["run.exe.csv"]);
  expect([...readFileSync(at("swing.csv"))]).toEqual([1, 2, 3]);
});
