/** The moment shown, shared with the door in 3D: moved once per frame outside React, dragged or keyed to scrub. */
import { type KeyboardEvent, useEffect, useRef } from "react";
import type { Replay } from "../../core/passage/replay.ts";
import type { Playhead } from "../state/playhead.ts";
import { type TimeScale, toX } from "./time-axis.ts";

const DEGREE = Math.PI / 180;

interface Props {
  readonly playhead: Playhead;
  readonly replay: Replay;
  readonly scale: TimeScale;
  readonly top: number;
  readonly bottom: number;
}

export function StripPlayhead({ playhead, replay, scale, top, bottom }: Props) {
  const line = useRef<HTMLDivElement>(null);
  const words = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const draw = (): void => place(line.current, words.current, playhead.time, replay, scale);
    draw();
    return playhead.subscribe(draw);
  }, [playhead, replay, scale]);
  const { time } = replay;
  return (
    <div
      ref={line}
      className="strip-playhead"
      style={{ top, height: bottom - top }}
      role="slider"
      tabIndex={0}
      aria-label="Moment shown"
      aria-orientation="horizontal"
      aria-valuemin={0}
      aria-valuemax={time[time.length - 1]}
      aria-valuenow={0}
      onKeyDown={(event) => scrubByKey(event, playhead)}
    >
      <span className="strip-playhead-words" ref={words} />
    </div>
  );
}

/** Arrows go frame by frame, pages half a second, Shift ten times as far. */
function scrubByKey(event: KeyboardEvent, playhead: Playhead): void {
  const { from, to } = playhead.settings;
  const far = event.shiftKey ? 10 : 1;
  switch (event.key) {
    case "ArrowRight":
    case "ArrowUp":
      playhead.step(far);
      break;
    case "ArrowLeft":
    case "ArrowDown":
      playhead.step(-far);
      break;
    case "PageUp":
      playhead.seek(playhead.time + 0.5 * far);
      break;
    case "PageDown":
      playhead.seek(playhead.time - 0.5 * far);
      break;
    case "Home":
      playhead.seek(from);
      break;
    case "End":
      playhead.seek(to);
      break;
    default:
      return;
  }
  event.preventDefault();
}

/** Puts line and words where the moment is; the words change only as often as they read differently. */
function place(
  line: HTMLDivElement | null,
  words: HTMLSpanElement | null,
  time: number,
  replay: Replay,
  scale: TimeScale,
): void {
  if (line === null || words === null) return;
  const x = toX(scale, time);
  const right = scale.left + scale.width;
  line.hidden = x < scale.left - 0.5 || x > right + 0.5;
  line.style.transform = `translateX(${x.toFixed(2)}px)`;
  words.dataset.side = x > right - 120 ? "left" : "right";
  const text = momentText(time, replay);
  if (words.textContent === text) return;
  words.textContent = text;
  line.setAttribute("aria-valuenow", time.toFixed(2));
  line.setAttribute("aria-valuetext", text);
}

function momentText(time: number, { interval, angle }: Replay): string {
  const index = Math.min(angle.length - 1, Math.max(0, Math.round(time / interval)));
  const degrees = angle[index] / DEGREE;
  const size = Math.abs(degrees).toFixed(Math.abs(degrees) < 10 ? 1 : 0);
  const side = Number(size) === 0 ? "" : degrees > 0 ? " out" : " in";
  return `${time.toFixed(2)} s · ${size}°${side}`;
}
