/** One of several threads that count a study's samples; one of them also puts the counts together. */
import { readDoor } from "../../core/door/read-door.ts";
import { holdStudy } from "../../core/study/hold-study.ts";
import { packTally, unpackTally } from "../../core/study/pack.ts";
import { requestFaults, type StudyRequest } from "../../core/study/request.ts";
import { SampleRun } from "../../core/study/sample-run.ts";
import { countRange } from "../../core/study/study.ts";
import { StudyTotal } from "../../core/study/total.ts";
import type { StudyAnswer, StudyOrder } from "./study-messages.ts";

interface Work {
  readonly request: StudyRequest;
  readonly run: SampleRun;
  readonly total: StudyTotal;
}

let work: Work | null = null;

function begin({ text, samples, seed }: Extract<StudyOrder, { kind: "begin" }>): StudyAnswer {
  const read = readDoor(text);
  if (!read.ok) return { kind: "refused", reasons: read.errors.map(({ message }) => message) };
  const request: StudyRequest = { door: read.door, samples, seed };
  const faults = requestFaults(request);
  if (faults.length > 0) return { kind: "refused", reasons: faults.map(({ message }) => message) };
  work = { request, run: new SampleRun(request), total: new StudyTotal(request) };
  return { kind: "ready" };
}

function obey(order: StudyOrder): StudyAnswer | null {
  if (order.kind === "begin") return begin(order);
  if (work === null) throw new Error("A study must begin before its samples are counted.");
  const { request, run, total } = work;
  if (order.kind === "count") {
    return { kind: "counted", tally: packTally(countRange(run, request, order.from, order.to)) };
  }
  if (order.kind === "add") {
    total.add(unpackTally(order.tally));
    return null;
  }
  return { kind: "study", study: holdStudy(request, total) };
}

self.onmessage = ({ data }: MessageEvent<StudyOrder>): void => {
  const port = self as unknown as Worker;
  try {
    const answer = obey(data);
    if (answer !== null) port.postMessage(answer);
  } catch (error) {
    port.postMessage({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
  }
};
