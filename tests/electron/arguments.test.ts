import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { ownWords, readStart } from "../../electron/arguments.ts";

const folder = resolve("/home/someone");

describe("a start", () => {
  test.each([
    [["review", "a.door.json", "--json"]],
    [["hold", "x"]],
    [["--help"]],
    [["--version"]],
    [["unknown-word"]],
  ])("%j is a command", (words) =>
    expect(readStart(words, folder)).toEqual({ kind: "command", argv: words }),
  );

  test("without words opens an empty window", () => {
    expect(readStart([], folder)).toEqual({ kind: "window", files: [] });
  });

  test("with door files opens them, from where the person stands; the runtime's options are passed over", () => {
    const words = ["--no-sandbox", "Back.door.json", "/x/y.DOOR.json", "notes.txt", "--a.door.json"];
    expect(readStart(words, folder)).toEqual({
      kind: "window",
      files: [resolve(folder, "Back.door.json"), resolve("/x/y.DOOR.json")],
    });
  });

  test("a door file in small letters is no command", () => {
    expect(readStart(["back.door.json"], folder).kind).toBe("window");
  });
});

test("the person's own words follow the program, and from a checkout the script", () => {
  expect(ownWords(["/opt/swingstill", "a"], true)).toEqual(["a"]);
  expect(ownWords(["electron", "dist/electron/main.mjs", "a"], false)).toEqual(["a"]);
});
