import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createSheetClient, type SheetPort, taskOf } from "../../../renderer/export/sheet-client.ts";
import {
  createPaperStore,
  PX_PER_MM,
  scaleOf,
  sheetAt,
  sheetsToPrint,
  zoomFrom,
} from "../../../renderer/paper/paper-store.ts";
import type { Engine } from "../../../renderer/state/engine.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { createPage } from "../../../renderer/state/page-store.ts";
import { createSettings } from "../../../renderer/state/settings.ts";
import type {
  DocumentView,
  PaperView,
  SheetAnswer,
  SheetOrder,
} from "../../../renderer/worker/sheet-messages.ts";
import { exampleText } from "../example.ts";

const STILL: Engine = { ask: () => {}, onAnswer: () => () => {} };

/** A thread that answers when told to. */
class HandPort implements SheetPort {
  readonly orders: SheetOrder[] = [];
  ended = false;
  onmessage: SheetPort["onmessage"] = null;
  onerror: SheetPort["onerror"] = null;
  postMessage(order: SheetOrder): void {
    this.orders.push(order);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(
    at: number,
    answer: { kind: "sheets"; view: PaperView } | { kind: "refused"; reasons: string[] },
  ): void {
    this.onmessage?.({ data: { id: this.orders[at].id, ...answer } as SheetAnswer });
  }
}

const document = (name: DocumentView["name"], sheets: number): DocumentView => ({
  name,
  title: name,
  what: "",
  fullSize: false,
  sheets: Array.from({ length: sheets }, (_, i) => ({
    name: String(i + 1),
    widthMm: 210,
    heightMm: 297,
    svg: "<svg/>",
  })),
  files: [],
  missing: sheets === 0 ? "no" : null,
});

const view = (...counts: number[]): PaperView => ({
  documents: [
    document("build-sheet", counts[0]),
    document("drill-template", counts[1]),
    document("wiring", counts[2]),
    document("bench-card", counts[3]),
  ],
  fails: [],
  hold: null,
});

function setUp() {
  const page = createPage(STILL);
  const opened = openText(exampleText("medium-dog"));
  if (!opened.ok) throw new Error("the example does not open");
  page.actions.show({ id: "one", file: opened.file, name: "a.door.json", token: null, saved: null });
  const settings = createSettings({ getItem: () => null, setItem: () => {} });
  const ports: HandPort[] = [];
  const client = createSheetClient(() => {
    const port = new HandPort();
    ports.push(port);
    return port;
  });
  const paper = createPaperStore(page, settings, client);
  return { page, settings, client, paper, ports, state: paper.store.getState };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const settled = () => vi.advanceTimersByTimeAsync(300);

test("the sheets of the door at hand come; of two answers on the way only the newest counts", async () => {
  const { page, paper, ports, state } = setUp();
  paper.follow();
  expect(state().busy).toBe(true);
  page.actions.change((f) => changeEntries("gap", f, [{ path: "magnets.gap", entry: "5 mm" }]));
  await settled();
  expect(ports[0].orders.map(({ task }) => task.text.includes('"gap": "5 mm"'))).toEqual([false, true]);
  ports[0].answer(1, { kind: "sheets", view: view(2, 3, 0, 1) });
  ports[0].answer(0, { kind: "sheets", view: view(9, 9, 9, 9) });
  await settled();
  expect([state().busy, state().view?.documents[0].sheets.length]).toEqual([false, 2]);
});

test("leafing goes through all documents, past one without sheets, and stops at both ends", async () => {
  const { paper, ports, state } = setUp();
  paper.follow();
  ports[0].answer(0, { kind: "sheets", view: view(2, 1, 0, 1) });
  await settled();
  const places: string[] = [];
  for (let i = 0; i < 5; i++) {
    places.push(`${state().at.document} ${state().at.sheet}`);
    paper.leaf(1);
  }
  expect(places).toEqual([
    "build-sheet 0",
    "build-sheet 1",
    "drill-template 0",
    "bench-card 0",
    "bench-card 0",
  ]);
  paper.leaf(-9);
  paper.leafTo("last");
  expect(state().at).toEqual({ document: "build-sheet", sheet: 1 });
  paper.show("wiring");
  expect(sheetAt(state())).toBeNull();
  paper.leaf(1);
  expect(state().at).toEqual({ document: "build-sheet", sheet: 0 });
});

test("fewer sheets after a change: one stands at the last that is left", async () => {
  const { settings, paper, ports, state } = setUp();
  paper.follow();
  ports[0].answer(0, { kind: "sheets", view: view(5, 1, 1, 1) });
  await settled();
  paper.goTo(4);
  settings.setState({ paper: "letter" });
  await settled();
  expect(ports[0].orders[1].task.paper).toBe("letter");
  ports[0].answer(1, { kind: "sheets", view: view(3, 1, 1, 1) });
  await settled();
  expect(state().at).toEqual({ document: "build-sheet", sheet: 2 });
});

test("a refused door gives its reasons and no sheets; a thread that breaks is started anew", async () => {
  const { page, paper, ports, state } = setUp();
  paper.follow();
  ports[0].answer(0, { kind: "refused", reasons: ["The gap is wrong."] });
  await settled();
  expect(state()).toMatchObject({ view: null, busy: false, reasons: ["The gap is wrong."] });
  page.actions.undo();
  page.actions.change((f) => changeEntries("gap", f, [{ path: "magnets.gap", entry: "4 mm" }]));
  await settled();
  ports[0].onerror?.({ message: "out of memory" });
  await settled();
  expect([state().reasons, ports[0].ended]).toEqual([["out of memory"], true]);
  page.actions.change((f) => changeEntries("gap", f, [{ path: "magnets.gap", entry: "3 mm" }]));
  await settled();
  expect(ports[1].orders).toHaveLength(1);
});

test("one thing is written at a time; what came of it is said, trouble until something else is tried", async () => {
  const { paper, ports, state } = setUp();
  paper.follow();
  ports[0].answer(0, { kind: "sheets", view: view(1, 1, 1, 1) });
  await settled();
  let finish = (_name: string | null): void => {};
  void paper.write("Writing a…", () => new Promise((done) => (finish = done)));
  void paper.write("Writing b…", async () => "b.pdf");
  expect(state().writing).toBe("Writing a…");
  finish("a.pdf");
  await vi.advanceTimersByTimeAsync(10);
  expect(state()).toMatchObject({ writing: null, said: "Written to a.pdf" });
  await vi.advanceTimersByTimeAsync(10_000);
  expect(state().said).toBe("");
  await paper.write("Writing c…", async () => {
    throw new Error("the disk is full");
  });
  await vi.advanceTimersByTimeAsync(10_000);
  expect(state().trouble).toBe("It could not be written: the disk is full");
  await paper.write("Writing d…", async () => null);
  expect(state()).toMatchObject({ said: "", trouble: "" });
});

test("put away, nothing more is laid out and what waits is let go", async () => {
  const { page, paper, client, ports, state } = setUp();
  const end = paper.follow();
  end();
  client.end();
  page.actions.change((f) => changeEntries("gap", f, [{ path: "magnets.gap", entry: "4 mm" }]));
  await settled();
  expect([ports.length, ports[0].ended, ports[0].orders.length]).toEqual([1, true, 1]);
  expect(state().reasons).toEqual([]);
});

test("paper and symbols are those usual where the units are, unless chosen", () => {
  const { page } = setUp();
  const none = { paper: null, symbols: null };
  expect(taskOf(page.store.getState(), none)).toMatchObject({ paper: "a4", symbols: "iec", units: "metric" });
  page.actions.setUnits("inch");
  expect(taskOf(page.store.getState(), none)).toMatchObject({
    paper: "letter",
    symbols: "ieee",
    units: "inch",
  });
  expect(taskOf(page.store.getState(), { paper: "a4", symbols: "iec" })).toMatchObject({
    paper: "a4",
    symbols: "iec",
  });
});

test("whole, width and steps of the zoom", () => {
  const a4 = { widthMm: 210, heightMm: 297 };
  const desk = { width: 1000, height: 600 };
  expect(scaleOf("whole", a4, desk) * 297 * PX_PER_MM).toBeCloseTo(600, 9);
  expect(scaleOf("width", a4, desk) * 210 * PX_PER_MM).toBeCloseTo(1000, 9);
  expect(scaleOf(2, a4, desk)).toBe(2);
  expect([zoomFrom(0.6, 1), zoomFrom(0.6, -1), zoomFrom(0.7, 1), zoomFrom(4, 1), zoomFrom(0.1, -1)]).toEqual([
    0.7, 0.5, 1, 4, 0.25,
  ]);
});

test("the printer gets the document shown, or all of them", async () => {
  const { paper, ports, state } = setUp();
  paper.follow();
  expect(sheetsToPrint(state())).toEqual([]);
  ports[0].answer(0, { kind: "sheets", view: view(2, 1, 0, 3) });
  await settled();
  paper.show("bench-card");
  expect(sheetsToPrint(state())).toHaveLength(3);
  paper.range("all");
  expect(sheetsToPrint(state())).toHaveLength(6);
});
