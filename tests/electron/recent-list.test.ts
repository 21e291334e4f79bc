import { expect, test } from "vitest";
import { forget, MOST_RECENT, parseRecentList, remember } from "../../electron/recent-list.ts";

test("the newest stands first, each once", () => {
  expect(remember(["/a", "/b"], "/c")).toEqual(["/c", "/a", "/b"]);
  expect(remember(["/a", "/b"], "/b")).toEqual(["/b", "/a"]);
});

test("the list stays short", () => {
  const list = Array.from({ length: MOST_RECENT }, (_, i) => `/${i}`);
  const longer = remember(list, "/new");
  expect(longer).toHaveLength(MOST_RECENT);
  expect(longer).not.toContain(`/${MOST_RECENT - 1}`);
});

test("a forgotten path is gone, another one stays", () => {
  expect(forget(["/a", "/b"], "/a")).toEqual(["/b"]);
  expect(forget(["/a"], "/x")).toEqual(["/a"]);
});

test("a list survives its file; a damaged file is an empty list", () => {
  expect(parseRecentList('["/a", 5, "/b"]')).toEqual(["/a", "/b"]);
  for (const text of ["", "{", '{"a":1}', "null", '"x"']) expect(parseRecentList(text)).toEqual([]);
});
