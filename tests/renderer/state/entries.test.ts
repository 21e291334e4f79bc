import { describe, expect, test } from "vitest";
import { fieldAt, fileEntry, writeDoor } from "../../../core/door/index.ts";
import { changeEntries, defaultText, entryFrom, entryText } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { exampleText } from "../example.ts";

function opened(text: string) {
  const result = openText(text);
  if (!result.ok) throw new Error(result.reasons.join());
  return result.file;
}

describe("a typed text becomes an entry", () => {
  test("a quantity as it is written", () => {
    expect(entryFrom("flap.width", " 3/8 in ")).toBe(" 3/8 in ");
  });
  test("a plain number as a number, anything else as it is, for the reader to explain", () => {
    expect(entryFrom("hinge.staticRatio", "1.5")).toBe(1.5);
    expect(entryFrom("hinge.staticRatio", "0x10")).toBe("0x10");
    expect(entryFrom("hinge.staticRatio", "1e999")).toBe("1e999");
    expect(entryFrom("hinge.staticRatio", "lots")).toBe("lots");
  });
  test("an emptied field goes back to its default, a required one stands empty", () => {
    expect(entryFrom("opening.outOfPlumb", " ")).toBeUndefined();
    expect(entryFrom("timer.resistor", "")).toBeUndefined();
    expect(entryFrom("flap.width", "")).toBe("");
    expect(fieldAt("flap.width")).toMatchObject({ default: { kind: "required" } });
  });
  test("yes and no", () => {
    expect(entryFrom("timer.retriggers", "true")).toBe(true);
    expect(entryFrom("timer.retriggers", "false")).toBe(false);
  });
});

test("an entry shows as the person wrote it; none shows as nothing, with its default beside it", () => {
  const file = opened(exampleText("medium-dog"));
  expect(entryText(file, "animals.0.shoulderHeight")).toBe("41 cm");
  expect(entryText(file, "hinge.staticRatio")).toBe("1.2");
  expect(entryText(file, "timer.retriggers")).toBe("true");
  expect(entryText(file, "opening.outOfPlumb")).toBe("");
  expect(defaultText("opening.outOfPlumb")).toBe("0 deg");
  expect(defaultText("animals.0.pushHeight")).toContain("0.9");
});

test("several entries are one command", () => {
  const file = opened(exampleText("medium-dog"));
  const command = changeEntries("Both", file, [
    { path: "timer.holdTime", entry: "11 s" },
    { path: "timer.resistor", entry: "100 kohm" },
  ]);
  const after = command.apply(file);
  expect([fileEntry(after, "timer.holdTime"), fileEntry(after, "timer.resistor")]).toEqual([
    "11 s",
    "100 kohm",
  ]);
  expect(writeDoor(command.undo(after))).toBe(exampleText("medium-dog"));
});
