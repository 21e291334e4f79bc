/** A study from its request to its answer on one thread; `channel.ts` spreads the counting over several. */
import { type HoldStudy, holdStudy } from "./hold-study.ts";
import type { StudyRequest } from "./request.ts";
import { SampleRun } from "./sample-run.ts";
import { emptyTally, type Tally } from "./tally.ts";
import { StudyTotal } from "./total.ts";

/** Counts samples `from` … `to` − 1; `run` may be kept for further ranges of the same request. */
export function countRange(run: SampleRun, request: StudyRequest, from: number, to: number): Tally {
  const tally = emptyTally(from, to, request.door.animals.length);
  for (let index = from; index < to; index++) run.add(index, tally);
  return tally;
}

/** The whole study on the calling thread. The request is known to be without faults (`requestFaults`). */
export function runStudy(request: StudyRequest): HoldStudy {
  const total = new StudyTotal(request);
  total.add(countRange(new SampleRun(request), request, 0, request.samples));
  return holdStudy(request, total);
}
