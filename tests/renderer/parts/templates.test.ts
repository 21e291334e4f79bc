import { describe, expect, test } from "vitest";
import { editDoorFile, readRoot } from "../../../core/door/index.ts";
import { isAsked, neededBy, sectionTemplate } from "../../../renderer/parts/templates.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { exampleText } from "../example.ts";

function opened(text = exampleText("medium-dog")) {
  const result = openText(text);
  if (!result.ok) throw new Error("the example does not open");
  return result.file;
}

describe("a section taken out and added again makes a door that can be computed", () => {
  test.each(["magnets", "latch", "solenoid", "driver", "timer", "supply"])("%s", (section) => {
    const without = editDoorFile(opened(), section, undefined);
    expect(readRoot(without).ok).toBe(true);
    const added = readRoot(editDoorFile(without, section, sectionTemplate(section)));
    expect(added.ok ? [] : added.errors).toEqual([]);
  });
});

describe("what a choice makes necessary comes with it", () => {
  test.each([
    ["magnets", "magnets.arrangement", "jamb"],
    ["magnets", "magnets.arrangement", "sill"],
    ["driver", "driver.kind", "mosfet"],
  ])("%s: %s = %s", (section, path, value) => {
    const bare = editDoorFile(opened(), section, {});
    const changes = [{ path, entry: value }, ...neededBy(bare, path, value)];
    const read = readRoot(changeEntries("Choose", bare, changes).apply(bare));
    expect(read.ok ? [] : read.errors).toEqual([]);
  });

  test("what stands there already is left alone", () => {
    expect(neededBy(opened(), "magnets.arrangement", "sill")).toEqual([]);
  });
});

test("keys without a meaning for this door are not asked for", () => {
  const none = editDoorFile(opened(), "magnets", { arrangement: "none" });
  expect(isAsked(none, "magnets.gap")).toBe(false);
  expect(isAsked(none, "magnets.arrangement")).toBe(true);
  expect(isAsked(opened(), "driver.onResistance")).toBe(true);
  expect(isAsked(opened(), "driver.dropVoltage")).toBe(false);
  expect(isAsked(opened(), "latch.tipGap")).toBe(true);
});
