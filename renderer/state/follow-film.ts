/** Keeps the playhead's stretch that of the film shown, and starts the first one by itself. */
import type { StoreApi } from "zustand/vanilla";
import type { PageState } from "./page-store.ts";
import type { Playhead } from "./playhead.ts";
import type { DoorView } from "./view.ts";

/** @param starts whether a door that comes on the bench begins to swing unasked */
export function followFilm(store: StoreApi<PageState>, playhead: Playhead, starts: boolean): () => void {
  let shown: string | undefined;
  return store.subscribe(({ view, document }, before) => {
    if (view === null || view === before.view) return;
    playhead.setRange(0, lengthOf(view));
    if (document?.id === shown) return;
    shown = document?.id;
    playhead.seek(0);
    if (starts) playhead.play();
  });
}

/** s from detection. */
function lengthOf({ replay }: DoorView): number {
  return replay.time[replay.time.length - 1] ?? 0;
}
