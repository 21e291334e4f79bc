/** The hold as a bar from its time zero, what comes of its end, and below it what would come of every other end. */
import { memo } from "react";
import type { DoorView, HoldView } from "../state/view.ts";
import { OutcomeMark } from "./OutcomeSign.tsx";
import { type LookStretch, lookAt, relatchFor, seconds } from "./outcomes.ts";
import type { Row } from "./rows.ts";
import { textWidth } from "./text-width.ts";
import { type TimeScale, toX } from "./time-axis.ts";

interface Props {
  readonly view: DoorView;
  readonly holdView: HoldView;
  /** The hold drawn, s: while dragging it is ahead of the view. */
  readonly hold: number;
  readonly step: number;
  readonly scale: TimeScale;
  readonly row: Row;
  readonly rem: number;
  /** Ids of the outcome patterns begin with it. */
  readonly patterns: string;
}

export function StripHold({ view, holdView, hold, step, scale, row, rem, patterns }: Props) {
  const clip = clipper(scale);
  const start = clip(holdView.start);
  const end = clip(holdView.start + hold);
  const inner = { y: row.top, height: row.height };
  const size = 0.8125 * rem;
  return (
    <g>
      <rect className="strip-well" x={scale.left} width={scale.width} {...inner} />
      <rect className="strip-coil" x={clip(0)} width={Math.max(0, start - clip(0))} {...inner} />
      <rect className="strip-hold" x={start} width={Math.max(0, end - start)} {...inner} />
      <Inside texts={COIL} from={clip(0)} to={start} row={row} size={size} kind="coil" />
      <Inside
        texts={[`hold ${seconds(hold, step)}`, seconds(hold, step)]}
        from={start}
        to={end}
        row={row}
        size={size}
        kind="hold"
      />
      <After
        view={view}
        hold={hold}
        ends={holdView.start + hold}
        lag={holdView.lag}
        {...{ scale, row, rem, patterns }}
      />
      <Spread holdView={holdView} hold={hold} scale={scale} row={row} />
    </g>
  );
}

function clipper(scale: TimeScale): (time: number) => number {
  return (time) => Math.min(scale.left + scale.width, Math.max(scale.left, toX(scale, time)));
}

const COIL = ["coil on, bolt withdrawn", "coil on"];

/** The first of the texts that has room in a piece of the bar. */
function Inside({
  texts,
  from,
  to,
  row,
  size,
  kind,
}: {
  texts: readonly string[];
  from: number;
  to: number;
  row: Row;
  size: number;
  kind: string;
}) {
  const text = texts.find((one) => to - from >= textWidth(one, size, 620) + 1.5 * size);
  if (text === undefined) return null;
  return (
    <text
      className={`strip-inside strip-inside--${kind}`}
      x={from + size / 2}
      y={row.top + row.height / 2}
      dy="0.35em"
    >
      {text}
    </text>
  );
}

/** From the shortest to the longest that this timer may hold, as a fine line under the bar's end. */
function Spread({
  holdView,
  hold,
  scale,
  row,
}: {
  holdView: HoldView;
  hold: number;
  scale: TimeScale;
  row: Row;
}) {
  const { start, nominal, shortest, longest } = holdView;
  if (!(nominal > 0) || longest <= shortest) return null;
  const clip = clipper(scale);
  const ends = [start + (hold * shortest) / nominal, start + (hold * longest) / nominal];
  const [from, to] = ends.map(clip);
  if (to <= from) return null;
  const y = row.top + row.height + 3.5;
  const caps = ends
    .filter((time) => time >= scale.from && time <= scale.to)
    .map((t) => `M${clip(t)} ${y - 2.5}v5`);
  return <path className="strip-spread" d={`M${from} ${y}H${to}${caps.join("")}`} />;
}

/** What follows the bar's end: coil and bolt on their way, a ride on the edge, the outcome to the end of time. */
function After({
  view,
  hold,
  ends,
  lag,
  scale,
  row,
  rem,
  patterns,
}: {
  view: DoorView;
  hold: number;
  ends: number;
  lag: number;
  scale: TimeScale;
  row: Row;
  rem: number;
  patterns: string;
}) {
  const look = lookAt(view, hold);
  if (look === null) return null;
  const relatch = relatchFor(view, hold);
  const decided = relatch === null ? ends + lag : view.replay.marks.letGo + relatch.time;
  const clip = clipper(scale);
  const from = clip(Math.max(ends, decided));
  const to = scale.left + scale.width;
  const { id, word } = look;
  const size = 0.8125 * rem;
  const inner = { y: row.top, height: row.height };
  const iconLeft = from + 0.75 * rem;
  const room = to - iconLeft - 1.25 * rem;
  const middle = row.top + row.height / 2;
  return (
    <g>
      <rect className="strip-ride" x={clip(ends)} width={Math.max(0, from - clip(ends))} {...inner} />
      <rect fill={`url(#${patterns}-${id})`} x={from} width={Math.max(0, to - from)} {...inner} />
      {to - from > 2 * rem && (
        <>
          <rect
            className={`strip-plate strip-plate--${id}`}
            x={iconLeft - 0.25 * rem}
            width={
              room > textWidth(word, size, 620) + 0.5 * rem
                ? 1.75 * rem + textWidth(word, size, 620)
                : 1.5 * rem
            }
            y={middle - 0.65 * rem}
            height={1.3 * rem}
            rx={0.3 * rem}
          />
          <OutcomeMark look={look} x={iconLeft} y={middle - rem / 2} size={rem} />
          {room > textWidth(word, size, 620) + 0.5 * rem && (
            <text className={`strip-word strip-word--${id}`} x={iconLeft + 1.25 * rem} y={middle} dy="0.35em">
              {word}
            </text>
          )}
        </>
      )}
    </g>
  );
}

/** A thin band along the axis: the outcome of the hold that would end there. */
export const StripRibbon = memo(function StripRibbon({
  stretches,
  start,
  scale,
  row,
  patterns,
}: {
  stretches: readonly LookStretch[];
  start: number;
  scale: TimeScale;
  row: Row;
  patterns: string;
}) {
  const clip = clipper(scale);
  return (
    <g>
      {stretches.map(({ from, to, look }) => {
        const left = clip(start + from);
        const width = clip(start + to) - left;
        if (width <= 0) return null;
        const { id } = look;
        const middle = row.top + row.height / 2 - 0.5;
        return (
          <g key={from}>
            <rect
              className={`strip-stretch strip-stretch--${id}`}
              fill={`url(#${patterns}-${id})`}
              x={left}
              width={Math.max(width, 1)}
              y={row.top}
              height={row.height}
            />
            <rect
              className={`strip-edge strip-edge--${id}`}
              x={left}
              width={Math.max(width, 1)}
              y={row.top + row.height - 2}
              height={2}
            />
            {width > 1.8 * row.height && (
              <OutcomeMark
                look={look}
                x={left + width / 2 - row.height * 0.4}
                y={middle - row.height * 0.4}
                size={row.height * 0.8}
              />
            )}
          </g>
        );
      })}
    </g>
  );
});
