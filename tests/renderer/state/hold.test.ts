import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { timerResult } from "../../../core/parts/timer.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { holdChanges } from "../../../renderer/state/hold.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { exampleText } from "../example.ts";

function timerOf(timer: Record<string, unknown>) {
  const text = JSON.stringify({ ...JSON.parse(exampleText("medium-dog")), timer });
  const read = readDoor(text);
  const opened = openText(text);
  if (!read.ok || !opened.ok || read.door.timer === null) throw new Error("the timer does not read");
  return { timer: read.door.timer, file: opened.file };
}

test("a hold without a one-shot is written as it was dragged, to a hundredth", () => {
  const { timer } = timerOf({ holdTime: "10 s" });
  expect(holdChanges(timer, 8.12345).changes).toEqual([{ path: "timer.holdTime", entry: "8.12 s" }]);
});

describe("with resistor and capacitor the resistor follows, so that the timer really holds that long", () => {
  test.each([0.5, 8.12, 47])("%s s", (hold) => {
    const { timer, file } = timerOf({ holdTime: "10 s", resistor: "91 kohm", capacitor: "100 uF" });
    const { changes } = holdChanges(timer, hold);
    const command = changeEntries("Hold", file, changes);
    const read = readDoor(JSON.stringify(command.apply(file).root));
    const after = read.ok ? read.door.timer : null;
    if (after === null) throw new Error("the changed timer does not read");
    expect(timerResult(after, null).nominal / hold).toBeCloseTo(1, 4);
  });
});

test("never less than a hundredth of a second", () => {
  const { timer } = timerOf({ holdTime: "10 s" });
  const [{ entry }] = holdChanges(timer, 0).changes;
  expect(parseQuantity(String(entry), "time")).toMatchObject({ ok: true, value: 0.01 });
});
