import { describe, expect, test } from "vitest";
import { type Answer, createEngine, type Port } from "../../../renderer/state/engine.ts";
import type { ComputeRequest } from "../../../renderer/worker/messages.ts";

/** A worker that answers when told to. */
class SlowPort implements Port {
  readonly asked: ComputeRequest[] = [];
  onmessage: Port["onmessage"] = null;
  onerror: Port["onerror"] = null;
  postMessage(request: ComputeRequest): void {
    this.asked.push(request);
  }
  answer(index = this.asked.length - 1): void {
    this.onmessage?.({ data: { id: this.asked[index].id, kind: "faults", faults: [] } });
  }
}

function setUp() {
  const ports: SlowPort[] = [];
  const engine = createEngine(() => {
    const port = new SlowPort();
    ports.push(port);
    return port;
  });
  const answers: Answer[] = [];
  engine.onAnswer((answer) => answers.push(answer));
  const ask = (text: string) => engine.ask({ text, hold: null, units: "metric" });
  return { ports, answers, ask };
}

describe("latest wins", () => {
  test("while one is under way only the newest waits", () => {
    const { ports, answers, ask } = setUp();
    for (const text of ["a", "b", "c", "d"]) ask(text);
    expect(ports[0].asked.map(({ text }) => text)).toEqual(["a"]);
    ports[0].answer();
    expect(ports[0].asked.map(({ text }) => text)).toEqual(["a", "d"]);
    ports[0].answer();
    expect(answers.map(({ question }) => question.text)).toEqual(["a", "d"]);
  });

  test("an answer to a question already answered is dropped", () => {
    const { ports, answers, ask } = setUp();
    ask("a");
    ports[0].answer();
    ask("b");
    ports[0].answer(0);
    expect(answers).toHaveLength(1);
    ports[0].answer();
    expect(answers.map(({ question }) => question.text)).toEqual(["a", "b"]);
  });
});

test("a worker that dies is said to have failed, and the next question starts another", () => {
  const { ports, answers, ask } = setUp();
  ask("a");
  ask("b");
  ports[0].onerror?.({ message: "out of memory" });
  expect(answers[0]).toMatchObject({ kind: "failed", message: "out of memory" });
  expect(ports[1].asked.map(({ text }) => text)).toEqual(["b"]);
});
