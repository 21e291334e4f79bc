/** P(caught) of every timer setting from the study, over the axis of the bar's end. */
import { memo } from "react";
import type { StudyView } from "../state/view.ts";
import { ninesShare, percent } from "./nines.ts";
import type { Row } from "./rows.ts";
import { textWidth } from "./text-width.ts";
import { type TimeScale, toX } from "./time-axis.ts";
import { tracePath } from "./trace-path.ts";

interface Props {
  readonly study: StudyView;
  readonly target: number;
  /** The hold's time zero, s from detection. */
  readonly start: number;
  readonly scale: TimeScale;
  readonly row: Row;
  readonly rem: number;
}

export const StripProbability = memo(function StripProbability({
  study,
  target,
  start,
  scale,
  row,
  rem,
}: Props) {
  const { curve, recommended } = study;
  const time = curve.map(([setting]) => start + setting);
  const y = (p: number): number => row.top + row.height * (1 - ninesShare(p));
  const seen = { from: scale.from, to: scale.to };
  const chance = tracePath(scale, { time, value: curve.map(([, p]) => p) }, y, seen);
  const lower = tracePath(scale, { time, value: curve.map(([, , p]) => p) }, y, seen);
  const bottom = row.top + row.height;
  const right = scale.left + scale.width;
  return (
    <g>
      <rect className="strip-well" x={scale.left} width={scale.width} y={row.top} height={row.height} />
      {chance !== "" && <path className="strip-chance-ground" d={closed(chance, bottom)} />}
      <path className="strip-target" d={`M${scale.left} ${y(target)}H${right}`} />
      <path className="strip-chance" d={chance} />
      <path className="strip-chance-lower" d={lower} />
      {ticks(target, row, rem).map((p) => (
        <text key={p} className="strip-tick" x={scale.left - 6} y={y(p)} dy="0.35em" textAnchor="end">
          {p === target ? `P ${percent(p)}` : percent(p)}
        </text>
      ))}
      {recommended !== null && (
        <Recommended
          x={toX(scale, start + recommended)}
          right={right}
          text={recommended.toFixed(1)}
          {...{ scale, row, rem }}
        />
      )}
    </g>
  );
});

/** Probabilities to name beside the row: the target, and below it what has room. */
function ticks(target: number, row: Row, rem: number): number[] {
  const room = (0.9 * rem) / row.height;
  const more = [0.99, 0.9, 0.5].filter((p) => ninesShare(p) < ninesShare(target) - room);
  const named = [target];
  for (const p of more) {
    if (ninesShare(named[named.length - 1]) - ninesShare(p) >= room && ninesShare(p) > room) named.push(p);
  }
  return named;
}

/** The setting from which on the target is met, as a flag on the curve. */
function Recommended({
  x,
  right,
  text,
  scale,
  row,
  rem,
}: {
  x: number;
  right: number;
  text: string;
  scale: TimeScale;
  row: Row;
  rem: number;
}) {
  if (x < scale.left || x > right) return null;
  const words = `recommended ${text} s`;
  // Right of the flag the curve is above the words; left of it, where there is no room on the right, below them.
  const toLeft = x > right - textWidth(words, 0.8125 * rem, 620) - 1.5 * rem;
  return (
    <g className="strip-recommended">
      <path d={`M${x} ${row.top}v${row.height}`} />
      <path
        className="strip-recommended-flag"
        d={`M${x} ${row.top}l${toLeft ? -8 : 8} 4l${toLeft ? 8 : -8} 4z`}
      />
      <text
        x={x + (toLeft ? -24 : 12)}
        y={toLeft ? row.top + 0.95 * rem : row.top + row.height - 0.35 * rem}
        textAnchor={toLeft ? "end" : "start"}
      >
        {words}
      </text>
    </g>
  );
}

function closed(path: string, bottom: number): string {
  const points = path.slice(1).split("L");
  const first = points[0].split(" ")[0];
  const last = points[points.length - 1].split(" ")[0];
  return `${path}L${last} ${bottom}L${first} ${bottom}z`;
}
