/**
 * Studies on worker threads. A channel is all that is asked of a worker: Node's threads and the browser's workers both
 * make one in a few lines. The worker counts ranges of samples; ranges may come back in any order, and any number of workers
 * gives the same answer to the last bit.
 */
import { type PackedTally, packTally, unpackTally } from "./pack.ts";
import type { StudyRequest } from "./request.ts";
import { countRange, SampleRun } from "./sample-run.ts";
import { type SampleRange, StudyTotal } from "./total.ts";

/**
 * One end of a two-way channel for plain data. Messages are copied, never handed over: in V8 one buffer that was handed over makes
 * every typed array of its thread slower from then on, and a tally is small.
 */
export interface Channel {
  post(message: unknown): void;
  /** Sets who gets the messages of the other end. */
  receive(handler: (message: unknown) => void): void;
}

/** A worker as the thread that started it sees it. */
export interface StudyWorker extends Channel {
  /** Sets who hears of a worker that broke down. */
  broken(handler: (reason: string) => void): void;
  /** Ends it at once, whatever it is doing. */
  end(): void;
}

type ToWorker =
  | { readonly kind: "begin"; readonly request: StudyRequest }
  | { readonly kind: "count"; readonly from: number; readonly to: number };

interface FromWorker {
  readonly kind: "counted";
  readonly tally: PackedTally;
}

/** The worker's side: answers on its channel for as long as it lives. */
export function serveStudy(channel: Channel): void {
  let current: { request: StudyRequest; run: SampleRun } | null = null;
  channel.receive((message) => {
    const order = message as ToWorker;
    if (order.kind === "begin") current = { request: order.request, run: new SampleRun(order.request) };
    else if (current !== null) {
      const tally = packTally(countRange(current.run, current.request, order.from, order.to));
      const answer: FromWorker = { kind: "counted", tally };
      channel.post(answer);
    }
  });
}

/** How a long count is watched and stopped. */
export interface Watch {
  /** Called after every range with the samples counted so far, of how many. */
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** A study that was stopped before its end. */
export class StudyStopped extends Error {
  override readonly name = "StudyStopped";
  constructor() {
    super("the study was stopped");
  }
}

/** Samples that a worker gets at once: many ranges, so that the last ones end together, but none too small to send. */
function rangeSize(samples: number, workers: number): number {
  return Math.max(10, Math.min(250, Math.ceil(samples / (workers * 16))));
}

/**
 * Counts a range of samples on workers, which are ended whatever happens.
 * @throws {StudyStopped} once the signal says so; an Error with a broken worker's reason
 */
export function countOnWorkers(
  request: StudyRequest,
  range: SampleRange,
  workers: readonly StudyWorker[],
  watch: Watch = {},
): Promise<StudyTotal> {
  const counting = new Promise<StudyTotal>((resolve, reject) => {
    const total = new StudyTotal(request);
    const size = rangeSize(range.to - range.from, workers.length);
    let next = range.from;
    let done = 0;
    const order = (worker: StudyWorker) => {
      if (next >= range.to) return;
      const count: ToWorker = { kind: "count", from: next, to: Math.min(range.to, next + size) };
      next = count.to;
      worker.post(count);
    };
    const counted = (worker: StudyWorker, { tally }: FromWorker) => {
      total.add(unpackTally(tally));
      done += tally.to - tally.from;
      watch.onProgress?.(done, range.to - range.from);
      if (done >= range.to - range.from) resolve(total);
      else order(worker);
    };
    const stop = () => reject(new StudyStopped());
    if (watch.signal?.aborted === true) stop();
    watch.signal?.addEventListener("abort", stop, { once: true });
    for (const worker of workers) {
      worker.receive((message) => counted(worker, message as FromWorker));
      worker.broken((reason) => reject(new Error(`a worker of the study broke down: ${reason}`)));
      const begin: ToWorker = { kind: "begin", request };
      worker.post(begin);
      order(worker);
    }
    if (range.to <= range.from) resolve(total);
  });
  return counting.finally(() => {
    for (const worker of workers) worker.end();
  });
}
