import { beforeEach, describe, expect, test, vi } from "vitest";
import { type AdvicePort, adviseOn } from "../../../renderer/state/adviser.ts";
import type { Answer } from "../../../renderer/state/engine.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { createPage, findingsOf, textOf } from "../../../renderer/state/page-store.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";
import type { AdviceRequest } from "../../../renderer/worker/messages.ts";
import { exampleText } from "../example.ts";

class FakePort implements AdvicePort {
  readonly asked: AdviceRequest[] = [];
  ended = false;
  onmessage: AdvicePort["onmessage"] = null;
  postMessage(request: AdviceRequest): void {
    this.asked.push(request);
  }
  terminate(): void {
    this.ended = true;
  }
}

function setUp() {
  let listener: (answer: Answer) => void = () => {};
  const page = createPage({
    ask(question) {
      const made = prepare(question.text, question.units);
      if (made.ok) listener({ id: 0, kind: "view", view: viewAt(made.prepared, null, 1), question });
    },
    onAnswer(heard) {
      listener = heard;
      return () => {};
    },
  });
  const ports: FakePort[] = [];
  adviseOn(page, () => {
    const port = new FakePort();
    ports.push(port);
    return port;
  });
  const opened = openText(exampleText("never-latches"));
  if (!opened.ok) throw new Error("the example does not open");
  page.actions.show({ id: "d", file: opened.file, name: "d", token: null, saved: null });
  const hold = (entry: string) =>
    page.actions.change((f) => changeEntries("Hold", f, [{ path: "timer.holdTime", entry }]));
  return { page, ports, hold };
}

describe("advice comes after the view", () => {
  beforeEach(() => {
    vi.useFakeTimers();
    return () => vi.useRealTimers();
  });

  test("once the person pauses, for the text at hand", async () => {
    const { page, ports, hold } = setUp();
    hold("5 s");
    await vi.advanceTimersByTimeAsync(200);
    expect(ports).toEqual([]);
    hold("6 s");
    await vi.advanceTimersByTimeAsync(1000);
    expect(ports[0].asked.map(({ text }) => text)).toEqual([textOf(page.store.getState())]);
  });

  test("and is cut short by the next change; what comes of the old is not shown", async () => {
    const { page, ports, hold } = setUp();
    await vi.advanceTimersByTimeAsync(1000);
    const [{ id }] = ports[0].asked;
    const heard = ports[0].onmessage;
    hold("6 s");
    expect(ports[0].ended).toBe(true);
    const shown = findingsOf(page.store.getState());
    heard?.({ data: { id, kind: "advice", findings: [] } });
    expect(findingsOf(page.store.getState())).toBe(shown);
    await vi.advanceTimersByTimeAsync(1000);
    expect(ports).toHaveLength(2);
  });

  test("shown, it takes the place of the view's findings", async () => {
    const { page, ports } = setUp();
    await vi.advanceTimersByTimeAsync(1000);
    const [{ id }] = ports[0].asked;
    const [first] = findingsOf(page.store.getState());
    const better = [{ ...first, message: "with a way out" }];
    ports[0].onmessage?.({ data: { id, kind: "advice", findings: better } });
    expect(findingsOf(page.store.getState())).toEqual(better);
  });
});
