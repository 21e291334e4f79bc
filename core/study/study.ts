/** A study from its request to its answer on one thread; `channel.ts` spreads the counting over several. */
import { type HoldStudy, holdStudy } from "./hold-study.ts";
import type { StudyRequest } from "./request.ts";
import { countRange, SampleRun } from "./sample-run.ts";
import { StudyTotal } from "./total.ts";

export { countRange } from "./sample-run.ts";

/** The whole study on the calling thread. The request is known to be without faults (`requestFaults`). */
export function runStudy(request: StudyRequest): HoldStudy {
  const total = new StudyTotal(request);
  total.add(countRange(new SampleRun(request), request, 0, request.samples));
  return holdStudy(request, total);
}
