import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isDoorFile, safeFileName, withEnding } from "../../electron/file-names.ts";

const door = (suggested: string): string => safeFileName(suggested, ".door.json", "door");

describe("a suggested name", () => {
  test.each([
    ["Back door", "Back door.door.json"],
    ["Back door.door.json", "Back door.door.json"],
    ["Back door.DOOR.JSON", "Back door.door.json"],
    ["Tür für Mäxchen", "Tür für Mäxchen.door.json"],
    ["v1.2", "v1.2.door.json"],
    ["../../etc/passwd", "passwd.door.json"],
    ["C:\\Windows\\system32\\x", "x.door.json"],
    ["/", "door.door.json"],
    ["", "door.door.json"],
    ["..", "door.door.json"],
    [".hidden", "hidden.door.json"],
    [" . . x . . ", "x.door.json"],
    ["a\0b\nc\u009b", "abc.door.json"],
    ['a<b>c:"d|e?f*', "abcdef.door.json"],
    ["nosj.rood\u202e", "nosj.rood.door.json"],
    ["CON", "door.door.json"],
    ["nul.txt", "door.door.json"],
    ["COM1", "door.door.json"],
    ["console", "console.door.json"],
    [".door.json", "door.door.json"],
  ])("%j becomes %j", (suggested, expected) => expect(door(suggested)).toBe(expected));

  test("of any kind ends up a plain name with the ending, short enough, and stays so the second time", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 400 }), (suggested) => {
        const name = door(suggested);
        expect(name).toMatch(/^[^./\\\s][^/\\\0]*\.door\.json$/u);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(200);
        expect(door(name)).toBe(name);
      }),
    );
  });

  test("is cut between characters", () => {
    expect(door("😀".repeat(100))).toBe(`${"😀".repeat(45)}.door.json`);
  });
});

test("the ending is added where it was left out, not twice", () => {
  expect(withEnding("/a/b", ".csv")).toBe("/a/b.csv");
  expect(withEnding("/a/b.CSV", ".csv")).toBe("/a/b.CSV");
});

test("a door file is known by its ending", () => {
  expect(isDoorFile("/a/Back.Door.JSON")).toBe(true);
  expect(isDoorFile("/a/back.json")).toBe(false);
  expect(isDoorFile("/a/back.door.json.exe")).toBe(false);
});
