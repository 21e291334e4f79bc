import { expect, test } from "vitest";
import { commandOfKey } from "../../../renderer/shell/keys.ts";

test.each([
  ["z", false, "undo"],
  ["Z", true, "redo"],
  ["y", false, "redo"],
  ["s", false, "save"],
  ["p", false, "paper"],
  ["S", true, "save-as"],
  ["=", false, "larger-text"],
  ["+", true, "larger-text"],
  ["-", false, "smaller-text"],
  ["0", false, "usual-text"],
] as const)("Ctrl %s", (key, shift, command) => {
  expect(commandOfKey(key, shift)).toBe(command);
});

test("the browser's own keys are left alone", () => {
  for (const key of ["c", "v", "x", "a", "n", "t", "w", "r"])
    expect(commandOfKey(key, false)).toBeUndefined();
});
