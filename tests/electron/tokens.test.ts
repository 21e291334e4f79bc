import { expect, test } from "vitest";
import type { FileToken } from "../../electron/bridge.ts";
import { createTokenRegistry } from "../../electron/tokens.ts";

const counting = (): (() => string) => {
  let count = 0;
  return () => String(++count).padStart(32, "0");
};

test("a token leads back to its path, and says nothing about it", () => {
  const tokens = createTokenRegistry(counting());
  const token = tokens.issue("/home/someone/door.door.json");
  expect(tokens.pathOf(token)).toBe("/home/someone/door.door.json");
  expect(token).not.toContain("door");
});

test("one path keeps its token, two paths have two", () => {
  const tokens = createTokenRegistry(counting());
  expect(tokens.issue("/a")).toBe(tokens.issue("/a"));
  expect(tokens.issue("/a")).not.toBe(tokens.issue("/b"));
});

test("a token never given out, or another registry's, leads nowhere", () => {
  const other = createTokenRegistry(() => "f".repeat(32)).issue("/secret");
  const tokens = createTokenRegistry(counting());
  expect(() => tokens.pathOf(other)).toThrow("not chosen in this session");
  expect(() => tokens.pathOf("/secret" as FileToken)).toThrow("not chosen in this session");
});
