import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { buildCommandLine } from "../../../core/cli/build.mjs";
import { startStudyWorker } from "../../../core/cli/study-worker.ts";
import { countOnWorkers, StudyStopped } from "../../../core/study/channel.ts";
import { holdStudy } from "../../../core/study/hold-study.ts";
import { runStudy } from "../../../core/study/study.ts";
import { referenceDoor } from "../doors.ts";

const REQUEST = { door: referenceDoor("01-plain"), samples: 60, seed: 2 };

async function bundle(): Promise<URL> {
  const program = await buildCommandLine();
  return pathToFileURL(join(dirname(program), "worker.mjs"));
}

test("Node's worker threads give the answer of one thread to the last bit", async () => {
  const file = await bundle();
  const workers = [startStudyWorker(file), startStudyWorker(file)];
  const total = await countOnWorkers(REQUEST, { from: 0, to: 60 }, workers);
  expect(holdStudy(REQUEST, total)).toEqual(runStudy(REQUEST));
});

test("Node's worker threads are stopped in the middle of a range", async () => {
  const file = await bundle();
  const stop = new AbortController();
  const long = { ...REQUEST, samples: 2_000_000 };
  const counting = countOnWorkers(long, { from: 0, to: long.samples }, [startStudyWorker(file)], {
    onProgress: () => stop.abort(),
    signal: stop.signal,
  });
  await expect(counting).rejects.toBeInstanceOf(StudyStopped);
});

test("a worker that cannot start is said", async () => {
  const missing = pathToFileURL("/nowhere/worker.mjs");
  await expect(countOnWorkers(REQUEST, { from: 0, to: 60 }, [startStudyWorker(missing)])).rejects.toThrow(
    "broke down",
  );
});
