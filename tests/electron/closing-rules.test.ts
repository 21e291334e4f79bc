import { expect, test } from "vitest";
import { createClosing } from "../../electron/closing-rules.ts";

const unsavedWork = () => {
  const closing = createClosing();
  closing.setUnsaved(true);
  return closing;
};

test("without unsaved work a window just closes", () => {
  expect(createClosing().wanted()).toBe("close");
});

test("unsaved work is asked about, once at a time", () => {
  const closing = unsavedWork();
  expect(closing.wanted()).toBe("ask");
  expect(closing.wanted()).toBe("wait");
});

test("staying keeps the window and the work; the next time asks again", () => {
  const closing = unsavedWork();
  closing.wanted();
  expect(closing.answered("stay")).toBe("wait");
  expect(closing.wanted()).toBe("ask");
});

test("discarding closes", () => {
  const closing = unsavedWork();
  closing.wanted();
  expect(closing.answered("discard")).toBe("close");
  expect(closing.wanted()).toBe("close");
});

test("saving closes once the page has saved", () => {
  const closing = unsavedWork();
  closing.wanted();
  expect(closing.answered("save")).toBe("save");
  expect(closing.saved(true)).toBe(true);
  expect(closing.wanted()).toBe("close");
});

test("a save that failed, or whose dialog was cancelled, keeps the window open", () => {
  const closing = unsavedWork();
  closing.wanted();
  closing.answered("save");
  expect(closing.saved(false)).toBe(false);
  expect(closing.wanted()).toBe("ask");
});

test("a page that never answers does not lock the person in", () => {
  const closing = unsavedWork();
  closing.wanted();
  closing.answered("save");
  expect(closing.wanted()).toBe("ask");
  expect(closing.answered("discard")).toBe("close");
});

test("a page that says it saved without being asked closes nothing", () => {
  const closing = unsavedWork();
  expect(closing.saved(true)).toBe(false);
  expect(closing.wanted()).toBe("ask");
  expect(closing.saved(true)).toBe(false);
});
