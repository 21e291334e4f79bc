import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import type { HoldStudy } from "../../../core/study/hold-study.ts";
import { holdStudy } from "../../../core/study/hold-study.ts";
import { packTally, unpackTally } from "../../../core/study/pack.ts";
import type { StudyRequest } from "../../../core/study/request.ts";
import { SampleRun } from "../../../core/study/sample-run.ts";
import { countRange, runStudy as runHere } from "../../../core/study/study.ts";
import { StudyTotal } from "../../../core/study/total.ts";
import { runStudy, type StudyPort } from "../../../renderer/state/study-run.ts";
import type { StudyOrder } from "../../../renderer/worker/study-messages.ts";
import { exampleText } from "../example.ts";

function requestOf(text: string, samples: number, seed: number): StudyRequest {
  const read = readDoor(text);
  if (!read.ok) throw new Error("the example does not read");
  return { door: read.door, samples, seed };
}

/** A thread that works when told to, in the order in which it was asked. */
class HandPort implements StudyPort {
  readonly orders: StudyOrder[] = [];
  ended = false;
  onmessage: StudyPort["onmessage"] = null;
  onerror: StudyPort["onerror"] = null;
  private request: StudyRequest | null = null;
  private total: StudyTotal | null = null;
  postMessage(order: StudyOrder): void {
    this.orders.push(order);
  }
  terminate(): void {
    this.ended = true;
  }
  work(): boolean {
    const order = this.orders.shift();
    if (order === undefined || this.ended) return false;
    if (order.kind === "begin") {
      this.request = requestOf(order.text, order.samples, order.seed);
      this.total = new StudyTotal(this.request);
      this.onmessage?.({ data: { kind: "ready" } });
    } else if (this.request !== null && this.total !== null) {
      if (order.kind === "count") {
        const tally = countRange(new SampleRun(this.request), this.request, order.from, order.to);
        this.onmessage?.({ data: { kind: "counted", tally: packTally(tally) } });
      } else if (order.kind === "add") this.total.add(unpackTally(order.tally));
      else this.onmessage?.({ data: { kind: "study", study: holdStudy(this.request, this.total) } });
    }
    return true;
  }
}

function setUp(threads: number, samples = 650) {
  const ports: HandPort[] = [];
  const shares: number[] = [];
  const done: HoldStudy[] = [];
  const failed: (readonly string[])[] = [];
  const text = exampleText("medium-dog");
  const stop = runStudy(
    () => {
      const port = new HandPort();
      ports.push(port);
      return port;
    },
    { text, samples, seed: 7, threads },
    {
      onProgress: (share) => shares.push(share),
      onDone: (study) => done.push(study),
      onFailed: (reasons) => failed.push(reasons),
    },
  );
  return { ports, shares, done, failed, stop, text };
}

describe("the answer is that of one thread, however the work is shared", () => {
  test.each([1, 2, 3])("%s threads, the last one always first", (threads) => {
    const { ports, shares, done, text } = setUp(threads);
    while (ports.some((_, i) => ports[ports.length - 1 - i].work()));
    expect(shares[shares.length - 1]).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(done).toEqual([runHere(requestOf(text, 650, 7))]);
    expect(ports.every(({ ended }) => ended)).toBe(true);
  });
});

test("cut short, it ends its threads and says nothing more", () => {
  const { ports, shares, done, stop } = setUp(2);
  for (let i = 0; i < 3; i++) for (const port of ports) port.work();
  const before = shares.length;
  stop();
  for (const port of ports) port.work();
  expect([shares.length, done.length]).toEqual([before, 0]);
  expect(ports.every(({ ended }) => ended)).toBe(true);
});

test("a thread that breaks ends the study with its reason", () => {
  const { ports, failed } = setUp(2);
  ports[1].onerror?.({ message: "out of memory" });
  expect(failed).toEqual([["out of memory"]]);
  expect(ports.every(({ ended }) => ended)).toBe(true);
});
