/** The computation's own thread: one door at a time, the last one kept for trying other holds. */
import { advise, type Prepared, prepare, viewAt } from "./compute-view.ts";
import type { DoorAnswer, DoorRequest } from "./messages.ts";

let kept: Prepared | null = null;
let serial = 0;

function answer(request: DoorRequest): DoorAnswer {
  const { id, text, units } = request;
  try {
    if (kept?.text !== text || kept.units !== units) {
      const preparation = prepare(text, units, kept);
      if (!preparation.ok) return { id, kind: "faults", faults: preparation.faults };
      kept = preparation.prepared;
    }
    if (request.kind === "advise") return { id, kind: "advice", findings: advise(kept) };
    return { id, kind: "view", view: viewAt(kept, request.hold, ++serial) };
  } catch (error) {
    return { id, kind: "failed", message: error instanceof Error ? error.message : String(error) };
  }
}

/** The film is made anew for every answer, so its columns may move across; the rest is kept here and copied. */
function movable(message: DoorAnswer): Transferable[] {
  if (message.kind !== "view") return [];
  const { time, angle, speed, bolt, coil, nose } = message.view.replay;
  return [time, angle, speed, bolt, coil, nose].map((column) => column.buffer as ArrayBuffer);
}

self.onmessage = ({ data }: MessageEvent<DoorRequest>): void => {
  const message = answer(data);
  (self as unknown as Worker).postMessage(message, movable(message));
};
