/** Which stretch of time the strip shows: all that matters of the passage, until the person zooms. */
import { useCallback, useMemo, useState } from "react";
import type { DoorView } from "../state/view.ts";
import { caughtFrom } from "./outcomes.ts";
import { panned, type TimeWindow, zoomed } from "./time-axis.ts";

/** Room after the last thing that matters, as a share of the whole. */
const ROOM = 1.1;

/** From detection to a little past the last mark, the hold's end, and the hold from which on all is well. */
export function fitWindow(view: DoorView): TimeWindow {
  const { marks } = view.replay;
  const sure = view.hold === null ? null : caughtFrom(view.outcomes);
  const moments = [
    marks.letGo + 1,
    marks.holdEnds,
    marks.decided,
    marks.settled,
    marks.rest,
    view.hold === null || view.hold.required === null ? null : view.hold.start + view.hold.required,
    sure === null || view.hold === null ? null : view.hold.start + sure,
  ];
  return { from: 0, to: ROOM * Math.max(...moments.map((m) => m ?? 0)) };
}

/** Everything there is: the film, and every hold whose outcome is known. */
export function wholeWindow(view: DoorView): TimeWindow {
  const { time } = view.replay;
  const holds = view.outcomes[view.outcomes.length - 1]?.to ?? 0;
  const last = Math.max(time[time.length - 1], (view.hold?.start ?? 0) + holds);
  return { from: 0, to: Math.max(last, fitWindow(view).to) };
}

export interface TimeView {
  readonly window: TimeWindow;
  readonly whole: TimeWindow;
  /** Nothing is zoomed: the window follows the door. */
  readonly fitted: boolean;
  zoom(time: number, factor: number): void;
  pan(seconds: number): void;
  fit(): void;
}

/** `held` keeps the fitted window as it was, while a drag would make it run away under the pointer. */
export function useTimeWindow(view: DoorView, held: TimeWindow | null): TimeView {
  const [chosen, setChosen] = useState<TimeWindow | null>(null);
  const whole = useMemo(() => wholeWindow(view), [view]);
  const fitting = useMemo(() => fitWindow(view), [view]);
  const window = chosen ?? held ?? fitting;
  const change = useCallback(
    (make: (window: TimeWindow) => TimeWindow) => setChosen((old) => make(old ?? held ?? fitting)),
    [held, fitting],
  );
  return {
    window,
    whole,
    fitted: chosen === null,
    zoom: useCallback((time, factor) => change((w) => zoomed(w, whole, time, factor)), [change, whole]),
    pan: useCallback((by) => change((w) => panned(w, whole, by)), [change, whole]),
    fit: useCallback(() => setChosen(null), []),
  };
}
