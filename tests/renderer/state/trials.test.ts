import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { FileToken } from "../../../electron/bridge.ts";
import type { Engine } from "../../../renderer/state/engine.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { createPage, textOf } from "../../../renderer/state/page-store.ts";
import { createTrials, type FitPort } from "../../../renderer/state/trials.ts";
import { benchTrial } from "../../../renderer/worker/bench-trial.ts";
import type { FitOrder } from "../../../renderer/worker/fit-messages.ts";
import { exampleText } from "../example.ts";

/** A thread that works when told to. */
class HandPort implements FitPort {
  order: FitOrder | null = null;
  ended = false;
  onmessage: FitPort["onmessage"] = null;
  onerror: FitPort["onerror"] = null;
  postMessage(order: FitOrder): void {
    this.order = order;
  }
  terminate(): void {
    this.ended = true;
  }
  /** The limits are left out: they take a second. */
  work(): void {
    if (this.order === null) throw new Error("nothing was asked");
    for (const answer of benchTrial({ ...this.order, limits: false })) this.onmessage?.({ data: answer });
  }
}

const STILL: Engine = { ask: () => {}, onAnswer: () => () => {} };

/** Keeps readings as a bridge would, by token and name. */
function trialShelf() {
  const kept = new Map<string, string>();
  const key = (token: FileToken | null, name: string) => `${token} ${name}`;
  return {
    kept,
    readTrial: async (token: FileToken | null, name: string) => kept.get(key(token, name)) ?? null,
    keepTrial: async (token: FileToken | null, name: string, text: string | null) => {
      if (text === null) kept.delete(key(token, name));
      else kept.set(key(token, name), text);
    },
  };
}

function setUp(shelf = trialShelf()) {
  const page = createPage(STILL);
  const open = (id: string, name = id, token: FileToken | null = null) => {
    const opened = openText(exampleText("medium-dog"));
    if (!opened.ok) throw new Error("the example does not open");
    page.actions.show({ id, file: opened.file, name, token, saved: null });
  };
  const ports: HandPort[] = [];
  const trials = createTrials(page, shelf, () => {
    const port = new HandPort();
    ports.push(port);
    return port;
  });
  open("one");
  const change = (entry: string) =>
    page.actions.change((f) => changeEntries("change", f, [{ path: "hinge.frictionTorque", entry }]));
  return { page, trials, ports, open, change, shelf, state: trials.store.getState };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test("typing asks once, after a pause, and the newest entry wins", () => {
  const { trials, ports, state } = setUp();
  trials.write("still", "6");
  trials.write("still", "6.5");
  expect([ports.length, state().running]).toEqual([0, true]);
  vi.runAllTimers();
  expect(ports).toHaveLength(1);
  trials.write("still", "7");
  expect(ports[0].ended).toBe(true);
  vi.runAllTimers();
  ports[0].work();
  expect(state().found).toBeNull();
  ports[1].work();
  expect(state().readings.values.still).toBe(7);
  expect(state().found?.fit.ok).toBe(true);
  expect(state().running).toBe(false);
});

test("what to expect comes with every door; nothing is fitted before something was measured", () => {
  const { trials, ports, state } = setUp();
  trials.follow();
  vi.runAllTimers();
  ports[0].work();
  expect(state().expected).toMatchObject({ asOnCard: true, letGo: Math.PI / 3 });
  expect(state().expected?.still).toBeGreaterThan(state().expected?.settle ?? Number.POSITIVE_INFINITY);
  expect([state().found, state().running]).toEqual([null, false]);
});

test("cancelled, it ends its thread; a broken one says why", () => {
  const { trials, ports, state } = setUp();
  trials.write("still", "6");
  vi.runAllTimers();
  trials.cancel();
  expect([ports[0].ended, state().running]).toEqual([true, false]);
  trials.write("still", "6.5");
  vi.runAllTimers();
  ports[1].onerror?.({ message: "out of memory" });
  expect([state().reasons, state().running]).toEqual([["out of memory"], false]);
});

test("a file that cannot be read is explained line by line, and put aside", () => {
  const { trials, ports, state } = setUp();
  trials.load({ name: "a.csv", text: "time_s,angle_deg\n0,60\n0.1,wide\n0.2,x\n" });
  vi.runAllTimers();
  ports[0].work();
  expect(state().reasons.map((reason) => reason.slice(0, 7))).toEqual(["Line 3:", "Line 4:"]);
  trials.load(null);
  vi.runAllTimers();
  ports[1].work();
  expect(state().reasons).toEqual([]);
});

test("found again when the door changes, but not when it was put in; another document starts anew", () => {
  const { page, trials, ports, open, change, state } = setUp();
  trials.write("still", "6");
  vi.runAllTimers();
  ports[0].work();
  const found = state().found;
  change("4 mN m");
  trials.place(textOf(page.store.getState()));
  trials.follow();
  vi.runAllTimers();
  ports[1].work();
  expect(ports[1].order?.fit).toBe(false);
  expect(state().found).toBe(found);
  change("3 mN m");
  trials.follow();
  vi.runAllTimers();
  ports[2].work();
  expect(state().found?.text).toBe(textOf(page.store.getState()));
  open("two");
  expect([state().found, state().texts.still]).toEqual([null, ""]);
});

describe("kept for the door", () => {
  const file = { name: "a.csv", text: "time_s,angle_deg\n0,60\n" };
  const later = () => vi.advanceTimersByTimeAsync(1000);

  test("written and loaded, gone with another door, back with the same one, in another session too", async () => {
    const { trials, open, state, shelf } = setUp();
    await later();
    trials.write("still", "6.5");
    trials.write("coil", "118 °F");
    trials.load(file);
    await later();
    open("two", "two");
    await later();
    expect([state().texts.still, state().file]).toEqual(["", null]);
    open("three", "one");
    await later();
    expect(state()).toMatchObject({ texts: { still: "6.5", coil: "118 °F" }, file });
    expect(setUp(shelf).state().texts.still).toBe("");
    const next = setUp(shelf);
    await later();
    expect(next.state()).toMatchObject({ texts: { still: "6.5", coil: "118 °F" }, file });
  });

  test("the last word before another door comes is not lost", async () => {
    const { trials, open, shelf } = setUp();
    await later();
    trials.write("still", "7");
    open("two");
    await later();
    expect(shelf.kept.get("null one")).toContain('"still":"7"');
  });

  test("what was written while the kept ones were looked for stands, and is kept", async () => {
    const shelf = trialShelf();
    shelf.kept.set("null one", '{"format":"swingstill-trial","version":1,"texts":{"still":"5"},"file":null}');
    const { trials, state } = setUp(shelf);
    trials.write("settle", "4");
    await later();
    expect([state().texts.settle, state().texts.still]).toEqual(["4", ""]);
    expect(shelf.kept.get("null one")).toContain('"settle":"4"');
  });

  test("saved, the readings go with the file; the name alone is free again", async () => {
    const { page, trials, open, state, shelf } = setUp();
    await later();
    trials.write("still", "7");
    await later();
    page.actions.saved("mine.door.json", "token" as FileToken, "");
    await later();
    expect([...shelf.kept.keys()]).toEqual(["token mine.door.json"]);
    open("two", "mine.door.json", "token" as FileToken);
    await later();
    expect(state().texts.still).toBe("7");
  });

  test("all taken out, nothing is kept; undone, it is again", async () => {
    const { trials, shelf, state } = setUp();
    await later();
    trials.write("still", "7");
    await later();
    trials.clear();
    await later();
    expect(shelf.kept.size).toBe(0);
    trials.undo();
    await later();
    expect([state().texts.still, shelf.kept.size]).toEqual(["7", 1]);
  });

  test("a newer program's are left as they are, and that is said; torn ones are passed over", async () => {
    const shelf = trialShelf();
    const newer = '{"format":"swingstill-trial","version":2,"readings":[]}';
    shelf.kept.set("null one", newer).set("null two", "{ torn");
    const { trials, open, state } = setUp(shelf);
    await later();
    expect(state().trouble).toContain("newer program");
    trials.write("still", "7");
    await later();
    expect(shelf.kept.get("null one")).toBe(newer);
    open("two");
    await later();
    expect([state().trouble, state().texts.still]).toEqual(["", ""]);
  });

  test("a shelf that refuses says so, and goes on trying", async () => {
    const shelf = trialShelf();
    const { keepTrial } = shelf;
    const { trials, state } = setUp(shelf);
    await later();
    shelf.keepTrial = async () => Promise.reject(new Error("the disk is full"));
    trials.write("still", "7");
    await later();
    expect(state().trouble).toBe("The readings could not be kept: the disk is full");
    shelf.keepTrial = keepTrial;
    trials.write("still", "7.5");
    await later();
    expect([state().trouble, shelf.kept.size]).toEqual(["", 1]);
  });
});

test("undo and redo: a field is one step until it is left, a table is one, another door has none", () => {
  const { trials, open, state } = setUp();
  const still = () => [state().texts.still, state().file?.name ?? null];
  trials.write("still", "6");
  trials.write("still", "6.5");
  trials.endGesture();
  trials.write("still", "7");
  trials.load({ name: "a.csv", text: "" });
  trials.undo();
  expect(still()).toEqual(["7", null]);
  trials.undo();
  expect(still()).toEqual(["6.5", null]);
  trials.redo();
  trials.redo();
  expect(still()).toEqual(["7", "a.csv"]);
  for (let i = 0; i < 5; i++) trials.undo();
  expect(still()).toEqual(["", null]);
  trials.write("settle", "4");
  trials.redo();
  expect(still()).toEqual(["", null]);
  open("two");
  expect(state().history.done).toEqual([]);
});
