/** The computation's own thread: one door at a time, the last one kept for trying other holds. */
import { type Prepared, prepare, viewAt } from "./compute-view.ts";
import type { ComputeAnswer, ComputeRequest } from "./messages.ts";

let kept: Prepared | null = null;
let serial = 0;

function answer({ id, text, hold, units }: ComputeRequest): ComputeAnswer {
  try {
    if (kept?.text !== text || kept.units !== units) {
      const preparation = prepare(text, units);
      if (!preparation.ok) return { id, kind: "faults", faults: preparation.faults };
      kept = preparation.prepared;
    }
    return { id, kind: "view", view: viewAt(kept, hold, ++serial) };
  } catch (error) {
    return { id, kind: "failed", message: error instanceof Error ? error.message : String(error) };
  }
}

/** The film is made anew for every answer, so its columns may move across; the rest is kept here and copied. */
function movable(message: ComputeAnswer): Transferable[] {
  if (message.kind !== "view") return [];
  const { time, angle, speed, bolt, coil, nose } = message.view.replay;
  return [time, angle, speed, bolt, coil, nose].map((column) => column.buffer as ArrayBuffer);
}

self.onmessage = ({ data }: MessageEvent<ComputeRequest>): void => {
  const message = answer(data);
  (self as unknown as Worker).postMessage(message, movable(message));
};
