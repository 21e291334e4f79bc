/** Worker threads of Node for studies. */
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { StudyWorker } from "../study/channel.ts";

/** The bundled worker stands beside the bundled program. */
const BESIDE = new URL("./worker.mjs", import.meta.url);

/** Workers that a machine keeps busy: one per processor that this process may use. */
export function workerCount(samples: number): number {
  return Math.max(1, Math.min(availableParallelism(), Math.ceil(samples / 100)));
}

/** Starts a worker; `file` is the worker's bundle. */
export function startStudyWorker(file: URL = BESIDE): StudyWorker {
  const worker = new Worker(file);
  return {
    post: (message) => worker.postMessage(message),
    receive: (handler) => worker.on("message", handler),
    broken: (handler) => worker.on("error", (error) => handler(error.message)),
    end: () => void worker.terminate(),
  };
}
