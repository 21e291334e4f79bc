/** Ticks of the time axis, s from detection. */
import { memo } from "react";
import type { Row } from "./rows.ts";
import { type TimeScale, timeTicks, toX } from "./time-axis.ts";

export const StripAxis = memo(function StripAxis({
  scale,
  row,
  rem,
}: {
  scale: TimeScale;
  row: Row;
  rem: number;
}) {
  const right = scale.left + scale.width;
  const unit = "s from detection";
  const y = row.top + 0.65 * rem;
  return (
    <g>
      <line className="strip-axis" x1={scale.left} x2={right} y1={row.top} y2={row.top} />
      {timeTicks(scale, 4.5 * rem).map(({ time, text }) => {
        const x = toX(scale, time);
        return (
          <g key={text}>
            <line className="strip-axis" x1={x} x2={x} y1={row.top} y2={row.top + 0.3 * rem} />
            {x < right - 8 * rem && (
              <text
                className="strip-tick"
                x={x}
                y={y}
                dy="0.3em"
                textAnchor={x < scale.left + rem ? "start" : "middle"}
              >
                {text}
              </text>
            )}
          </g>
        );
      })}
      <text className="strip-tick" x={right} y={y} dy="0.3em" textAnchor="end">
        {unit}
      </text>
    </g>
  );
});
