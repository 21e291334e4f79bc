/** Named moments over the strip, each with a line down through the rows. */
import { memo } from "react";
import type { PlacedMark } from "./marks.ts";
import type { Rows } from "./rows.ts";

export const StripMarks = memo(function StripMarks({
  marks,
  rows,
  rem,
}: {
  marks: readonly PlacedMark[];
  rows: Rows;
  rem: number;
}) {
  const bottom = rows.marks.top + rows.marks.height;
  const textBottom = rows.marks.top + 0.95 * rem;
  return (
    <g>
      {marks.map(({ id, x, left, width, text }) => (
        <g key={id} className={`strip-mark strip-mark--${id}`}>
          <line x1={x} x2={x} y1={bottom} y2={rows.axis.top} />
          {left !== null && (
            <>
              <path d={`M${middle(left, width, x)} ${textBottom + 0.15 * rem}L${x} ${bottom}`} />
              <text x={left} y={textBottom - 0.15 * rem}>
                {text}
              </text>
            </>
          )}
        </g>
      ))}
    </g>
  );
});

/** Where the leader starts under a label: at the mark where it lies under the label, else at the nearer end. */
function middle(left: number, width: number, x: number): number {
  return Math.min(Math.max(x, left + 2), left + width - 2);
}
