import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { entryFrom, entryText } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { spreadFrom, spreadText } from "../../../renderer/state/spread-text.ts";
import { exampleText } from "../example.ts";

describe("a spread as one types it", () => {
  test.each([
    ["0.5 mm", "0.5 mm"],
    ["30 %", "30 %"],
    ["", undefined],
    ["0.3", 0.3],
    ["-1 mm to 2 mm", { low: "-1 mm", high: "2 mm" }],
    ["−10 % to 5 %, triangular", { low: "-10 %", high: "5 %", shape: "triangular" }],
    ["0 to 0.5", { low: 0, high: 0.5 }],
    ['{ "low": "1 mm" }', { low: "1 mm" }],
    ["wide", "wide"],
    ["{ broken", "{ broken"],
  ])("%s", (text, entry) => {
    expect(spreadFrom(text)).toEqual(entry);
  });
});

test("what stands in the file reads back as it stands there", () => {
  const end = fc.oneof(fc.integer(), fc.constantFrom("1 mm", "-3 %", "wide", "", "a, b", "{"));
  const shape = fc.constantFrom("uniform", "normal", "round");
  const entry = fc.oneof(
    fc.record({ low: end, high: end }),
    fc.record({ low: end, high: end, shape }),
    fc.record({ low: end, more: end }),
    fc.constantFrom("0.5 mm", "30 %", "half"),
  );
  fc.assert(
    fc.property(entry, (given) => {
      expect(spreadFrom(spreadText(given))).toEqual(given);
    }),
  );
});

test("what the page writes, the door file's reader takes", () => {
  const path = "study.tolerances.magnets.gap";
  for (const text of ["0.5 mm", "8 %", "-1 mm to 2 mm", "-1 mm to 2 mm, triangular"]) {
    const entry = entryFrom(path, text);
    const file = JSON.parse(exampleText("medium-dog"));
    const study = { ...file.study, tolerances: { "magnets.gap": entry } };
    const written = JSON.stringify({ ...file, study });
    const read = readDoor(written);
    expect(read.ok && read.door.study.tolerances.has("magnets.gap")).toBe(true);
    const opened = openText(written);
    expect(opened.ok && entryText(opened.file, path)).toBe(text);
  }
});
