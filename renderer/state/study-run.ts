/**
 * A study on several threads: samples are handed out in small ranges, so that it can be told how far it is and be cut
 * short at any time. The answer is the same however many threads there are and in whatever order they finish.
 */
import type { HoldStudy } from "../../core/study/hold-study.ts";
import type { PackedTally } from "../../core/study/pack.ts";
import type { StudyAnswer, StudyOrder } from "../worker/study-messages.ts";

/** The part of a Worker that is needed here. */
export interface StudyPort {
  postMessage(order: StudyOrder): void;
  terminate(): void;
  onmessage: ((event: { data: StudyAnswer }) => void) | null;
  onerror: ((event: { message: string }) => void) | null;
}

export interface StudyOrders {
  readonly text: string;
  readonly samples: number;
  readonly seed: number;
  readonly threads: number;
}

export interface StudyEvents {
  /** Share of the samples counted, 0 to 1. */
  readonly onProgress: (share: number) => void;
  readonly onDone: (study: HoldStudy) => void;
  /** Sentences for the person. */
  readonly onFailed: (reasons: readonly string[]) => void;
}

/** Samples handed out at once: a fraction of a second's work. */
const RANGE = 200;

/** Starts a study; what it returns cuts it short, after which no event comes. */
export function runStudy(start: () => StudyPort, orders: StudyOrders, events: StudyEvents): () => void {
  const { text, samples, seed, threads } = orders;
  const ports = Array.from({ length: Math.max(1, threads) }, start);
  const [keeper] = ports;
  let next = 0;
  let counted = 0;

  const end = (): void => {
    for (const port of ports) {
      port.onmessage = null;
      port.terminate();
    }
  };
  const fail = (reasons: readonly string[]): void => {
    end();
    events.onFailed(reasons);
  };
  const handOut = (port: StudyPort): void => {
    if (next >= samples) return;
    const from = next;
    next = Math.min(samples, from + RANGE);
    port.postMessage({ kind: "count", from, to: next });
  };
  const count = (tally: PackedTally): void => {
    counted += tally.to - tally.from;
    keeper.postMessage({ kind: "add", tally });
    events.onProgress(counted / samples);
    if (counted === samples) keeper.postMessage({ kind: "finish" });
  };
  const hear = (port: StudyPort, answer: StudyAnswer): void => {
    if (answer.kind === "ready") handOut(port);
    else if (answer.kind === "counted") {
      count(answer.tally);
      handOut(port);
    } else if (answer.kind === "study") {
      end();
      events.onDone(answer.study);
    } else fail(answer.kind === "refused" ? answer.reasons : [answer.message]);
  };
  for (const port of ports) {
    port.onmessage = ({ data }) => hear(port, data);
    port.onerror = ({ message }) => fail([message]);
    port.postMessage({ kind: "begin", text, samples, seed });
  }
  return end;
}
