/**
 * The passage strip: one time axis to scale from detection to relatch. The flap's angle with the bands about the slot, the
 * hold as a bar whose end is dragged, what comes of that end and of every other, and P(caught) where a study has run.
 */
import { type KeyboardEvent, useCallback, useEffect, useId, useMemo, useRef } from "react";
import type { PassageStripProps } from "../state/view.ts";
import { useFaceLoaded } from "./face.ts";
import { type HoldDrag, holdLimits, useHoldDrag } from "./hold-drag.ts";
import { pointerStep } from "./hold-keys.ts";
import { placedMarks, stripMarks } from "./marks.ts";
import { OutcomePatterns } from "./OutcomeSign.tsx";
import { holdText, lookStretches } from "./outcomes.ts";
import { type Rows, stripRows } from "./rows.ts";
import { StripAxis } from "./StripAxis.tsx";
import { StripHead } from "./StripHead.tsx";
import { StripHold, StripRibbon } from "./StripHold.tsx";
import { StripMarks } from "./StripMarks.tsx";
import { StripOverview } from "./StripOverview.tsx";
import { StripPlayhead } from "./StripPlayhead.tsx";
import { StripProbability } from "./StripProbability.tsx";
import { StripTrace } from "./StripTrace.tsx";
import "./strip.css";
import { textWidth } from "./text-width.ts";
import { secondsPerPixel, type TimeScale, type TimeWindow, toX } from "./time-axis.ts";
import { type TimeView, useTimeWindow } from "./time-window.ts";
import { type Size, useSize } from "./use-size.ts";
import { useScrub, useWheel } from "./use-stage-pointer.ts";

/** Beside the drawing, rem: the ticks' words on the left, room for half a grip on the right. */
const GUTTER = 4.5;
const MARGIN = 0.75;

export function PassageStrip(props: PassageStripProps) {
  const { view, pinned, playhead, study } = props;
  const stage = useRef<HTMLDivElement>(null);
  const size = useSize(stage);
  const live = useRef<TimeScale | null>(null);
  const drag = useHoldDrag(view, () => placeOf(stage.current, live.current), props);
  const time = useTimeWindow(view, drag.held);
  const scale = useScale(size, time.window);
  useEffect(() => {
    live.current = scale;
  }, [scale]);
  useWheel(stage, scale, time);
  useFollow(playhead, time);
  const scrub = useScrub(playhead, scale);
  const hold = view.hold === null ? null : (drag.hold ?? view.hold.shown);
  const middle = (time.window.from + time.window.to) / 2;
  const about = (): number => inWindow(playhead.time, time.window) ?? middle;
  return (
    <section
      className="strip"
      aria-label="Passage from detection to relatch"
      onKeyDown={(event) => zoomByKey(event, time, about())}
    >
      <StripHead
        view={view}
        hold={hold}
        pinned={pinned !== null}
        fitted={time.fitted}
        onZoom={(factor) => time.zoom(about(), factor)}
        onFit={time.fit}
      />
      <div className="strip-stage" id="strip-stage" ref={stage} {...scrub}>
        {scale !== null && size !== null && (
          <Stage {...{ view, pinned, playhead, study, scale, size, hold, drag }} />
        )}
      </div>
      {!time.fitted && <StripOverview window={time.window} whole={time.whole} onPan={time.pan} />}
    </section>
  );
}

export default PassageStrip;

type StageProps = Pick<PassageStripProps, "view" | "pinned" | "playhead" | "study"> & {
  readonly scale: TimeScale;
  readonly size: Size;
  readonly hold: number | null;
  readonly drag: HoldDrag;
};

function Stage({ view, pinned, playhead, study, scale, size, hold, drag }: StageProps) {
  const patterns = useId();
  const loaded = useFaceLoaded();
  const { height, width, rem } = size;
  const hasCurve = study !== null && view.hold !== null && study.curve.length > 1;
  const timer = view.hold !== null;
  const rows = useMemo(
    () => stripRows(height, rem, { timer, study: hasCurve }),
    [height, rem, timer, hasCurve],
  );
  const ends = hold === null || view.hold === null ? null : view.hold.start + hold;
  // Before the face is there, letters are taken to be a little wider than half their height.
  const measure = useCallback(
    (text: string) => (loaded ? textWidth(text, 0.8125 * rem) : 0.55 * 0.8125 * rem * text.length),
    [loaded, rem],
  );
  const marks = useMemo(
    () => placedMarks(stripMarks(view, ends), scale, rem, measure),
    [view, ends, scale, rem, measure],
  );
  const step = pointerStep(secondsPerPixel(scale));
  const { outcomes } = view;
  const need = view.hold?.need ?? null;
  const stretches = useMemo(() => lookStretches(outcomes, need), [outcomes, need]);
  return (
    <>
      <svg className="strip-drawing" width={width} height={height} aria-hidden="true">
        <OutcomePatterns prefix={patterns} />
        <StripTrace {...{ view, pinned, scale }} row={rows.trace} hatch={`${patterns}-stuck`} />
        {hasCurve && study !== null && view.hold !== null && rows.probability !== null && (
          <StripProbability
            {...{ study, scale, rem }}
            target={view.door.study.reliability}
            start={view.hold.start}
            row={rows.probability}
          />
        )}
        {view.hold !== null && hold !== null && (
          <>
            <StripHold {...{ view, hold, step, scale, rem, patterns }} holdView={view.hold} row={rows.hold} />
            <StripRibbon
              {...{ scale, patterns }}
              stretches={stretches}
              start={view.hold.start}
              row={rows.ribbon}
            />
          </>
        )}
        <RowNames rows={rows} left={scale.left} timer={view.hold !== null} />
        <StripAxis {...{ scale, rem }} row={rows.axis} />
        <StripMarks {...{ marks, rows, rem }} />
      </svg>
      <MomentList view={view} ends={ends} />
      <StripPlayhead
        {...{ playhead, scale }}
        replay={view.replay}
        top={rows.trace.top}
        bottom={rows.axis.top}
      />
      {view.hold !== null && hold !== null && <Grip {...{ view, hold, scale, rows, drag, rem }} />}
    </>
  );
}

/** What the rows are, where the trace's ticks stand. */
function RowNames({ rows, left, timer }: { rows: Rows; left: number; timer: boolean }) {
  const at = (row: { top: number; height: number }, text: string) => (
    <text className="strip-tick" x={left - 6} y={row.top + row.height / 2} dy="0.35em" textAnchor="end">
      {text}
    </text>
  );
  if (!timer) return null;
  return (
    <g>
      {at(rows.hold, "hold")}
      {at(rows.ribbon, "what if")}
    </g>
  );
}

/** The bar's end: a slider. */
function Grip({
  view,
  hold,
  scale,
  rows,
  drag,
  rem,
}: {
  view: StageProps["view"];
  hold: number;
  scale: TimeScale;
  rows: Rows;
  drag: HoldDrag;
  rem: number;
}) {
  const start = view.hold?.start ?? 0;
  const x = toX(scale, start + hold);
  const { least, most } = holdLimits(view);
  const beyond = x < scale.left - 1 || x > scale.left + scale.width + 1;
  return (
    <div
      className="strip-grip"
      data-dragging={drag.dragging || undefined}
      style={{
        transform: `translateX(${x}px)`,
        top: rows.hold.top - 0.25 * rem,
        height: rows.hold.height + 0.5 * rem,
        visibility: beyond ? "hidden" : "visible",
      }}
      role="slider"
      tabIndex={0}
      aria-label="Hold time"
      aria-orientation="horizontal"
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={Number(hold.toFixed(3))}
      aria-valuetext={holdText(view, hold, pointerStep(secondsPerPixel(scale)))}
      {...drag.handlers}
    />
  );
}

/** The marks for those who do not see the drawing. */
function MomentList({ view, ends }: { view: StageProps["view"]; ends: number | null }) {
  return (
    <ul className="strip-unseen">
      {stripMarks(view, ends).map(({ id, word, time }) => (
        <li key={id}>{`${word}: ${time.toFixed(2)} s from detection`}</li>
      ))}
    </ul>
  );
}

function useScale(size: Size | null, { from, to }: TimeWindow): TimeScale | null {
  return useMemo(() => {
    if (size === null) return null;
    const left = Math.round(GUTTER * size.rem);
    return { from, to, left, width: Math.max(50, size.width - left - MARGIN * size.rem) };
  }, [size, from, to]);
}

function placeOf(node: HTMLElement | null, scale: TimeScale | null) {
  return node === null || scale === null ? null : { scale, left: node.getBoundingClientRect().left };
}

function inWindow(time: number, { from, to }: TimeWindow): number | null {
  return time >= from && time <= to ? time : null;
}

/** While zoomed and playing, the window turns a page when the moment runs out of it. */
function useFollow(playhead: PassageStripProps["playhead"], { window, pan, fitted }: TimeView): void {
  const { from, to } = window;
  useEffect(() => {
    if (fitted) return;
    return playhead.subscribe(() => {
      const { time, settings } = playhead;
      if (settings.playing && (time > to || time < from)) pan(time - from - 0.05 * (to - from));
    });
  }, [playhead, from, to, pan, fitted]);
}

function zoomByKey(event: KeyboardEvent, time: TimeView, about: number): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === "+" || event.key === "=") time.zoom(about, 1 / 1.5);
  else if (event.key === "-") time.zoom(about, 1.5);
  else if (event.key === "0") time.fit();
  else return;
  event.preventDefault();
}
