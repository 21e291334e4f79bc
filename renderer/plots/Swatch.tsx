/** A legend's sample: the stroke with its dashes, or the area with its fill. */
import { useId } from "react";
import type { LegendEntry } from "./draw.ts";
import { FILL_STROKES, FILL_TILE, GROUND_OPACITY, STROKE_OPACITY } from "./pen.ts";

export function Swatch({ entry }: { entry: LegendEntry }) {
  const id = useId();
  const colour = `var(--${entry.ink})`;
  if (entry.kind === "line") {
    return (
      <svg className="plot-swatch" viewBox="0 0 26 12" aria-hidden="true">
        <path d="M0 6H26" stroke={colour} strokeWidth={entry.width} strokeDasharray={entry.dash.join(" ")} />
      </svg>
    );
  }
  const strokes = FILL_STROKES[entry.fill].map(([x1, y1, x2, y2]) => `M${x1} ${y1}L${x2} ${y2}`).join("");
  return (
    <svg className="plot-swatch" viewBox="0 0 26 12" aria-hidden="true">
      <pattern id={id} width={FILL_TILE} height={FILL_TILE} patternUnits="userSpaceOnUse">
        <rect width={FILL_TILE} height={FILL_TILE} fill={colour} opacity={GROUND_OPACITY} />
        {strokes !== "" && (
          <path
            d={strokes}
            stroke={colour}
            strokeWidth={1.2}
            strokeLinecap="round"
            opacity={STROKE_OPACITY}
          />
        )}
      </pattern>
      <rect width="26" height="12" fill={`url(#${id})`} />
    </svg>
  );
}
