import { describe, expect, test } from "vitest";
import type { FileToken } from "../../../electron/bridge.ts";
import type { Answer, Engine, Question } from "../../../renderer/state/engine.ts";
import { changeEntries, entryFrom } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { createPage, isOlder, isUnsaved, type Page, textOf } from "../../../renderer/state/page-store.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";
import { exampleText } from "../example.ts";

/** An engine that answers when told to, as the worker would. */
class ManualEngine implements Engine {
  readonly asked: Question[] = [];
  private listener: (answer: Answer) => void = () => {};
  private serial = 0;
  ask(question: Question): void {
    this.asked.push(question);
  }
  onAnswer(listener: (answer: Answer) => void): () => void {
    this.listener = listener;
    return () => {};
  }
  answer(question = this.asked[this.asked.length - 1]): void {
    const preparation = prepare(question.text, question.units);
    const id = 0;
    if (!preparation.ok) this.listener({ id, kind: "faults", faults: preparation.faults, question });
    else {
      const view = viewAt(preparation.prepared, question.hold, ++this.serial);
      this.listener({ id, kind: "view", view, question });
    }
  }
}

function setUp() {
  const engine = new ManualEngine();
  const page = createPage(engine);
  const text = exampleText("medium-dog");
  const opened = openText(text);
  if (!opened.ok) throw new Error("the example does not open");
  page.actions.show({ id: "d", file: opened.file, name: "medium-dog.door.json", token: null, saved: text });
  engine.answer();
  return { engine, page, state: () => page.store.getState() };
}

function type(page: Page, path: string, text: string, gesture = path): void {
  page.actions.change(
    (file) => changeEntries(`Change ${path}`, file, [{ path, entry: entryFrom(path, text) }]),
    gesture,
  );
}

test("a shown door is computed and unchanged", () => {
  const { state } = setUp();
  expect(state().view?.relatch?.outcome).toBe("caught");
  expect([state().working, isUnsaved(state()), isOlder(state())]).toEqual([false, false, false]);
});

describe("a wrong entry", () => {
  test("is kept and explained, and the last good view stays, marked as older", () => {
    const { engine, page, state } = setUp();
    const good = state().view;
    type(page, "magnets.gap", "3/8 inn");
    engine.answer();
    expect(JSON.parse(textOf(state())).magnets.gap).toBe("3/8 inn");
    expect(state().faults.map(({ path }) => path)).toEqual(["magnets.gap"]);
    expect(state().view).toBe(good);
    expect(isOlder(state())).toBe(true);
  });

  test("mended, makes a new view", () => {
    const { engine, page, state } = setUp();
    type(page, "magnets.gap", "3/8 inn");
    engine.answer();
    type(page, "magnets.gap", "3/8 in");
    engine.answer();
    expect(state().faults).toEqual([]);
    expect(state().view?.door.magnets?.gap).toBeCloseTo(0.009525, 12);
    expect(isOlder(state())).toBe(false);
  });
});

test("an answer for a text that is no longer at hand settles nothing and explains nothing", () => {
  const { engine, page, state } = setUp();
  type(page, "magnets.gap", "x");
  const stale = engine.asked[engine.asked.length - 1];
  type(page, "magnets.gap", "4 mm");
  engine.answer(stale);
  expect([state().faults.length, state().working]).toEqual([0, true]);
  engine.answer();
  expect(state().working).toBe(false);
});

test("undoing all the way back gives the opened text, byte for byte, and an unsaved mark that goes", () => {
  const { page, state } = setUp();
  type(page, "magnets.gap", "3/8 in");
  type(page, "flap.width", "27 cm");
  expect(isUnsaved(state())).toBe(true);
  page.actions.undo();
  page.actions.undo();
  page.actions.undo();
  expect(textOf(state())).toBe(exampleText("medium-dog"));
  expect(isUnsaved(state())).toBe(false);
  page.actions.redo();
  expect(JSON.parse(textOf(state())).magnets.gap).toBe("3/8 in");
});

describe("trying a hold", () => {
  test("changes the view and not the file", () => {
    const { engine, page, state } = setUp();
    page.actions.tryHold(3);
    engine.answer();
    expect(state().view?.hold?.shown).toBe(3);
    expect(state().view?.relatch?.outcome).not.toBe("caught");
    expect(isUnsaved(state())).toBe(false);
    page.actions.tryHold(null);
    engine.answer();
    expect(state().view?.hold?.shown).toBe(10);
  });

  test("letting go is one step", () => {
    const { engine, page, state } = setUp();
    for (const hold of [9, 8, 7]) page.actions.tryHold(hold);
    page.actions.commitHold((f) =>
      changeEntries("Set the hold", f, [{ path: "timer.holdTime", entry: "7 s" }]),
    );
    engine.answer();
    expect(state().history.done.map(({ name }) => name)).toEqual(["Set the hold"]);
    expect(state().view?.hold?.nominal).toBe(7);
  });

  test("letting go where it began is no step, and the view is the timer's again", () => {
    const { engine, page, state } = setUp();
    page.actions.tryHold(9);
    engine.answer();
    page.actions.commitHold((f) =>
      changeEntries("Set the hold", f, [{ path: "timer.holdTime", entry: "10 s" }]),
    );
    engine.answer();
    expect(state().history.done).toEqual([]);
    expect(state().view?.hold?.shown).toBe(10);
  });
});

test("a pinned copy stays as it was, also beside another door", () => {
  const { page, state } = setUp();
  const pinned = state().view;
  page.actions.pin();
  type(page, "magnets.gap", "4 mm");
  page.actions.show({ ...(state().document as NonNullable<ReturnType<typeof state>["document"]>), id: "e" });
  expect(state().pinned).toBe(pinned);
  page.actions.unpin();
  expect(state().pinned).toBeNull();
});

test("saving takes the mark off until the next change", () => {
  const { page, state } = setUp();
  type(page, "magnets.gap", "4 mm");
  page.actions.saved("biscuit.door.json", "t" as FileToken, textOf(state()));
  expect([isUnsaved(state()), state().document?.name]).toEqual([false, "biscuit.door.json"]);
  page.actions.undo();
  expect(isUnsaved(state())).toBe(true);
});

test("another unit system asks anew: findings are sentences", () => {
  const { engine, page } = setUp();
  page.actions.setUnits("inch");
  expect(engine.asked[engine.asked.length - 1].units).toBe("inch");
});
