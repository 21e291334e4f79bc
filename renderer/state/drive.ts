/** The page's one driver of the playhead: a frame loop that runs while it plays and sleeps otherwise. */
import type { Playhead } from "./playhead.ts";

/** A page that was hidden or held up does not leap: no frame lets more than this pass, s. */
const LONGEST_FRAME = 0.1;

export interface FrameClock {
  requestAnimationFrame(callback: (now: number) => void): number;
  cancelAnimationFrame(handle: number): void;
}

/** Returns what ends it. */
export function drivePlayhead(playhead: Playhead, clock: FrameClock): () => void {
  let handle: number | null = null;
  // In an object, where a number is written over: in a variable it would be a new one every frame.
  const before = { now: Number.NaN };
  const frame = (now: number): void => {
    handle = playhead.settings.playing ? clock.requestAnimationFrame(frame) : null;
    // The first frame after a pause only sets the clock.
    if (!Number.isNaN(before.now)) playhead.advance(Math.min(LONGEST_FRAME, (now - before.now) / 1000));
    before.now = now;
  };
  const follow = (): void => {
    if (!playhead.settings.playing || handle !== null) return;
    before.now = Number.NaN;
    handle = clock.requestAnimationFrame(frame);
  };
  const unsubscribe = playhead.subscribeSettings(follow);
  follow();
  return () => {
    unsubscribe();
    if (handle !== null) clock.cancelAnimationFrame(handle);
  };
}
