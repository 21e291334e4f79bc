/** Pointer and wheel on the strip's drawing: press and move to scrub, wheel to zoom about the pointer, sideways to pan. */
import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import type { Playhead } from "../state/playhead.ts";
import { secondsPerPixel, type TimeScale, toTime } from "./time-axis.ts";
import type { TimeView } from "./time-window.ts";

/** How much a wheel's notch (100 px) zooms. */
const NOTCH = 1.25;
/** Pixels of a wheel's line where a browser counts in lines. */
const LINE = 33;

export function useWheel(
  stage: RefObject<HTMLElement | null>,
  scale: TimeScale | null,
  { zoom, pan, fitted }: TimeView,
): void {
  useEffect(() => {
    const node = stage.current;
    if (node === null || scale === null) return;
    const onWheel = (event: WheelEvent): void => {
      const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE : 1;
      const sideways = event.shiftKey ? event.deltaX + event.deltaY : event.deltaX;
      const along = event.shiftKey ? 0 : event.deltaY;
      // Nothing more to show: the wheel is the page's.
      if (fitted && along > 0 && sideways === 0) return;
      event.preventDefault();
      const x = event.clientX - node.getBoundingClientRect().left;
      if (Math.abs(sideways) > Math.abs(along)) pan(sideways * unit * secondsPerPixel(scale));
      else zoom(toTime(scale, x), NOTCH ** ((along * unit) / 100));
    };
    // React listens passively to wheels, which could not keep the page from scrolling.
    node.addEventListener("wheel", onWheel, { passive: false });
    return () => node.removeEventListener("wheel", onWheel);
  }, [stage, scale, zoom, pan, fitted]);
}

export interface Scrubbing {
  onPointerDown(event: PointerEvent<HTMLElement>): void;
  onPointerMove(event: PointerEvent<HTMLElement>): void;
  onPointerUp(): void;
  onPointerCancel(): void;
}

/** A replay that runs is held while the moment is dragged, and goes on afterwards. */
export function useScrub(playhead: Playhead, scale: TimeScale | null): Scrubbing {
  const resume = useRef<boolean | null>(null);
  const seek = (event: PointerEvent<HTMLElement>): void => {
    if (scale === null) return;
    playhead.seek(toTime(scale, event.clientX - event.currentTarget.getBoundingClientRect().left));
  };
  const end = (): void => {
    if (resume.current === true) playhead.play();
    resume.current = null;
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      resume.current = playhead.settings.playing;
      playhead.pause();
      seek(event);
    },
    onPointerMove(event) {
      if (resume.current !== null) seek(event);
    },
    onPointerUp: end,
    onPointerCancel: end,
  };
}
