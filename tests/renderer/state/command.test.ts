import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type DoorFile, fileEntry, writeDoor } from "../../../core/door/index.ts";
import { endGesture, type History, NO_HISTORY, redo, run, undo } from "../../../renderer/state/command.ts";
import { changeEntries, entryFrom } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { exampleText } from "../example.ts";

/** A file whose spacing no writer of ours would choose. */
const ODD = exampleText("cat").replace(/": /g, '"  :   ').replace(/\n/g, "\r\n");

function opened(text: string): DoorFile {
  const result = openText(text);
  if (!result.ok) throw new Error(result.reasons.join());
  return result.file;
}

interface State {
  file: DoorFile;
  history: History;
}

function type(state: State, path: string, text: string, gesture: string | null): State {
  const command = changeEntries(`Change ${path}`, state.file, [{ path, entry: entryFrom(path, text) }]);
  return run(state.history, state.file, command, gesture);
}

function undoAll(state: State): State {
  let now = state;
  for (;;) {
    const back = undo(now.history, now.file);
    if (back === null) return now;
    now = back;
  }
}

describe("one gesture is one step", () => {
  test("however many letters were typed", () => {
    let state: State = { file: opened(ODD), history: NO_HISTORY };
    for (const text of ["3", "3/", "3/8", "3/8 i", "3/8 in"])
      state = type(state, "flap.width", text, "typing");
    expect(state.history.done).toHaveLength(1);
    expect(fileEntry(state.file, "flap.width")).toBe("3/8 in");
    expect(writeDoor(undoAll(state).file)).toBe(ODD);
  });

  test("and the next gesture of the same field is another", () => {
    let state: State = { file: opened(ODD), history: NO_HISTORY };
    state = type(state, "flap.width", "20 cm", "typing");
    state = { ...state, history: endGesture(state.history) };
    state = type(state, "flap.width", "21 cm", "typing");
    expect(state.history.done).toHaveLength(2);
  });

  test("one that ends where it began leaves no step and the very file it began with", () => {
    const file = opened(ODD);
    const before = String(fileEntry(file, "flap.width"));
    let state: State = { file, history: NO_HISTORY };
    state = type(state, "flap.width", "x", "typing");
    state = type(state, "flap.width", before, "typing");
    expect(state.history.done).toHaveLength(0);
    expect(writeDoor(state.file)).toBe(ODD);
  });

  test("one after an undo does not join the step that was taken back", () => {
    let state: State = { file: opened(ODD), history: NO_HISTORY };
    state = type(state, "flap.width", "20 cm", "typing");
    state = type({ ...undoAll(state) }, "flap.width", "21 cm", "typing");
    expect(state.history.done).toHaveLength(1);
    expect(state.history.undone).toHaveLength(0);
  });
});

test("a change that changes nothing is no step", () => {
  const file = opened(ODD);
  const same = String(fileEntry(file, "flap.width"));
  const state = type({ file, history: NO_HISTORY }, "flap.width", same, null);
  expect(state.history.done).toHaveLength(0);
  expect(state.file).toBe(file);
});

test("undoing all of any changes gives the file back byte for byte, and redoing all the last state", () => {
  const paths = [
    "flap.width",
    "flap.thickness",
    "hinge.staticRatio",
    "seal.contactAngle",
    "name",
    "timer.holdTime",
  ];
  const step = fc.record({
    path: fc.constantFrom(...paths),
    text: fc.oneof(fc.string(), fc.constantFrom("", "3/8 in", "12 cm", "1.5", "0")),
    gesture: fc.constantFrom(null, "a", "b"),
  });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      let state: State = { file: opened(ODD), history: NO_HISTORY };
      for (const { path, text, gesture } of steps) state = type(state, path, text, gesture);
      const last = writeDoor(state.file);
      let back = undoAll(state);
      expect(writeDoor(back.file)).toBe(ODD);
      for (;;) {
        const on = redo(back.history, back.file);
        if (on === null) break;
        back = on;
      }
      expect(writeDoor(back.file)).toBe(last);
    }),
  );
});

test("nothing to undo or redo is said, not done", () => {
  const file = opened(ODD);
  expect(undo(NO_HISTORY, file)).toBeNull();
  expect(redo(NO_HISTORY, file)).toBeNull();
});
