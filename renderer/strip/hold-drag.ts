/** The gesture on the hold's end, by pointer or key: moves are tried live, the release is one step, Escape gives up. */
import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useRef, useState } from "react";
import type { DoorView, HoldView, PassageStripProps } from "../state/view.ts";
import { type HoldLimits, holdAfterKey, holdAtPointer, pointerStep } from "./hold-keys.ts";
import { secondsPerPixel, type TimeScale, type TimeWindow, toTime } from "./time-axis.ts";
import { fitWindow } from "./time-window.ts";

export interface HoldDrag {
  /** The hold to draw, s; `null` when the view's own is. */
  readonly hold: number | null;
  /** The fitted window when the gesture began. */
  readonly held: TimeWindow | null;
  readonly dragging: boolean;
  readonly handlers: {
    onPointerDown(event: PointerEvent<HTMLElement>): void;
    onPointerMove(event: PointerEvent<HTMLElement>): void;
    onPointerUp(event: PointerEvent<HTMLElement>): void;
    onPointerCancel(): void;
    onKeyDown(event: KeyboardEvent): void;
    onKeyUp(event: KeyboardEvent): void;
    onBlur(): void;
  };
}

interface Gesture {
  readonly by: "pointer" | "key" | "done";
  readonly hold: number;
  /** The hold when the gesture began: back there, nothing is changed. */
  readonly from: number;
  readonly held: TimeWindow;
  /** Pointer's distance from the bar's end when it went down, px. */
  readonly grip: number;
}

type Callbacks = Pick<PassageStripProps, "onHoldPreview" | "onHoldCommit" | "onHoldCancel" | "isSettled">;

/** Holds from none at all to the longest whose outcome is known. */
export function holdLimits(view: DoorView): HoldLimits {
  const last = view.outcomes[view.outcomes.length - 1]?.to ?? 0;
  const most = Math.max(last, view.hold?.longest ?? 0, 1);
  return { least: 0, most: Math.floor(most * 10) / 10 };
}

export function useHoldDrag(
  view: DoorView,
  stage: () => { readonly scale: TimeScale; readonly left: number } | null,
  calls: Callbacks,
): HoldDrag {
  const [gesture, setGesture] = useState<Gesture | null>(null);
  const now = useRef<Gesture | null>(null);
  const change = useCallback((next: Gesture | null) => {
    now.current = next;
    setGesture(next);
  }, []);
  const { hold: holdView } = view;
  const { isSettled } = calls;
  // Views of holds tried on the way may still come: until the last one is there, the bar stays where it was let go.
  useEffect(() => {
    if (now.current?.by === "done" && (view.hold === null || isSettled())) change(null);
  }, [view, isSettled, change]);

  const start = (by: Gesture["by"], own: HoldView, grip: number): Gesture => {
    const hold = now.current?.hold ?? own.shown;
    return { by, hold, from: hold, held: fitWindow(view), grip };
  };
  const moveTo = (from: Gesture, hold: number): void => {
    if (hold === from.hold && now.current === from) return;
    change({ ...from, hold });
    calls.onHoldPreview(hold);
  };
  const finish = (): void => {
    const { current } = now;
    if (current === null || current.by === "done" || holdView === null) return;
    if (Math.abs(current.hold - current.from) < 1e-9) cancel();
    else {
      change({ ...current, by: "done" });
      calls.onHoldCommit(current.hold);
    }
  };
  const cancel = (): void => {
    const { current } = now;
    if (current === null || current.by === "done") return;
    calls.onHoldCancel();
    change(isSettled() ? null : { ...current, by: "done", hold: current.from });
  };

  return {
    hold: gesture?.hold ?? null,
    held: gesture?.held ?? null,
    dragging: gesture?.by === "pointer",
    handlers: {
      onPointerDown(event) {
        const place = stage();
        if (event.button !== 0 || holdView === null || place === null) return;
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        const time = toTime(place.scale, event.clientX - place.left);
        const own = now.current?.hold ?? holdView.shown;
        const grip = (time - holdView.start - own) / secondsPerPixel(place.scale);
        change(start("pointer", holdView, grip));
      },
      onPointerMove(event) {
        const place = stage();
        const { current } = now;
        if (current?.by !== "pointer" || holdView === null || place === null) return;
        const { scale, left } = place;
        const x = Math.min(scale.left + scale.width, event.clientX - left - current.grip);
        const raw = toTime(scale, x) - holdView.start;
        moveTo(current, holdAtPointer(raw, pointerStep(secondsPerPixel(scale)), holdLimits(view)));
      },
      onPointerUp: finish,
      onPointerCancel: cancel,
      onKeyDown(event) {
        if (event.key === "Escape" && now.current !== null && now.current.by !== "done") {
          event.preventDefault();
          event.stopPropagation();
          return cancel();
        }
        if (holdView === null) return;
        const own = now.current?.hold ?? holdView.shown;
        const next = holdAfterKey(own, event.key, event.shiftKey, holdLimits(view));
        if (next === null) return;
        event.preventDefault();
        moveTo(now.current?.by === "key" ? now.current : start("key", holdView, 0), next);
      },
      onKeyUp: () => {
        if (now.current?.by === "key") finish();
      },
      onBlur: () => {
        if (now.current?.by === "key") finish();
      },
    },
  };
}
