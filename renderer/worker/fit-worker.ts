/** The thread of a trial on the bench. Cut short by ending it. */
import { benchTrial } from "./bench-trial.ts";
import type { FitAnswer, FitOrder } from "./fit-messages.ts";

self.onmessage = ({ data }: MessageEvent<FitOrder>): void => {
  const say = (answer: FitAnswer): void => (self as unknown as Worker).postMessage(answer);
  try {
    for (const answer of benchTrial(data)) say(answer);
  } catch (error) {
    say({ kind: "refused", reasons: [error instanceof Error ? error.message : String(error)] });
  }
};
