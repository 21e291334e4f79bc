/** While zoomed: the whole of the time as a track, the stretch seen as a piece of it that is dragged or keyed along. */
import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import type { TimeWindow } from "./time-axis.ts";

export function StripOverview({
  window,
  whole,
  onPan,
}: {
  window: TimeWindow;
  whole: TimeWindow;
  onPan: (seconds: number) => void;
}) {
  const last = useRef<number | null>(null);
  const length = whole.to - whole.from;
  const seen = window.to - window.from;
  const drag = (event: PointerEvent<HTMLDivElement>): void => {
    const track = event.currentTarget.parentElement;
    if (last.current === null || track === null) return;
    onPan(((event.clientX - last.current) / track.clientWidth) * length);
    last.current = event.clientX;
  };
  const key = (event: KeyboardEvent): void => {
    const moves: Readonly<Record<string, number>> = {
      ArrowLeft: -seen / 10,
      ArrowRight: seen / 10,
      PageUp: seen,
      PageDown: -seen,
      Home: -length,
      End: length,
    };
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    onPan(move);
  };
  return (
    <div className="strip-overview">
      <div
        className="strip-overview-thumb"
        role="scrollbar"
        tabIndex={0}
        aria-label="Stretch of time shown"
        aria-controls="strip-stage"
        aria-orientation="horizontal"
        aria-valuemin={whole.from}
        aria-valuemax={Math.max(whole.from, whole.to - seen)}
        aria-valuenow={window.from}
        style={{
          left: `${(100 * (window.from - whole.from)) / length}%`,
          width: `${(100 * seen) / length}%`,
        }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          last.current = event.clientX;
        }}
        onPointerMove={drag}
        onPointerUp={() => {
          last.current = null;
        }}
        onPointerCancel={() => {
          last.current = null;
        }}
        onKeyDown={key}
      />
    </div>
  );
}
