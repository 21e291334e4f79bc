import { describe, expect, test } from "vitest";
import { writeDoor } from "../../../core/door/index.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { exampleText } from "../example.ts";

test("a file opens and is written back byte for byte", () => {
  const text = `\ufeff${exampleText("cat").replace(/\n/g, "\r\n")}  `;
  const opened = openText(text);
  expect(opened.ok && writeDoor(opened.file)).toBe(text);
});

test("a door with wrong entries opens: they are explained in its forms", () => {
  const opened = openText(exampleText("cat").replace('"hinge"', '"hingge"'));
  expect(opened.ok).toBe(true);
});

describe("what is no door file is refused with the reason", () => {
  test.each([
    ["{ broken", /Line 1, column 3/],
    ["[]", /no door/],
    ["3", /no door/],
    ['{"format":"something-else","version":1}', /not a door file/],
    ['{"format":"swingstill-door","version":99}', /newer Swingstill/],
  ])("%s", (text, reason) => {
    const opened = openText(text);
    expect(opened.ok ? [] : opened.reasons.join(" ")).toMatch(reason);
  });
});
