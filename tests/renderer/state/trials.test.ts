import { afterEach, beforeEach, expect, test, vi } from "vitest";
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

function setUp() {
  const page = createPage(STILL);
  const open = (id: string) => {
    const opened = openText(exampleText("medium-dog"));
    if (!opened.ok) throw new Error("the example does not open");
    page.actions.show({ id, file: opened.file, name: "a", token: null, saved: null });
  };
  open("one");
  const ports: HandPort[] = [];
  const trials = createTrials(page, () => {
    const port = new HandPort();
    ports.push(port);
    return port;
  });
  const change = (entry: string) =>
    page.actions.change((f) => changeEntries("change", f, [{ path: "hinge.frictionTorque", entry }]));
  return { page, trials, ports, open, change, state: trials.store.getState };
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
