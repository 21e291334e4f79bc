/** A sign per outcome, each of its own shape, and the patterns that fill what an outcome covers. */
import { memo } from "react";
import type { OutcomeLook } from "./outcomes.ts";

/** By the look's id. */
const SIGNS: Readonly<Record<string, { outline: string; inside: string }>> = {
  caught: { outline: "M8 1a7 7 0 1 1 0 14a7 7 0 0 1 0-14z", inside: "M4.6 8.4l2.4 2.4l4.4-5" },
  passing: {
    outline: "M8 1a7 7 0 1 1 0 14a7 7 0 0 1 0-14z",
    inside: "M4.8 4.8l3 3.2l-3 3.2M8.4 4.8l3 3.2l-3 3.2",
  },
  stuck: { outline: "M8 .8L15.2 8L8 15.2L.8 8z", inside: "M5 8h6" },
  "shut-out": { outline: "M1.6 1.6h12.8v12.8h-12.8z", inside: "M5 5l6 6M11 5l-6 6" },
  under: { outline: "M8 1.2L15.4 14.6H.6z", inside: "M8 6v4M8 12v.4" },
};

/** Drawn in a 16 by 16 box at the place given; `size` px. */
export const OutcomeMark = memo(function OutcomeMark({
  look,
  x,
  y,
  size,
}: {
  look: OutcomeLook;
  x: number;
  y: number;
  size: number;
}) {
  const { outline, inside } = SIGNS[look.id];
  return (
    <g className={`strip-sign strip-sign--${look.id}`} transform={`translate(${x} ${y}) scale(${size / 16})`}>
      <path className="strip-sign-outline" d={outline} />
      <path className="strip-sign-inside" d={inside} />
    </g>
  );
});

/** The sign by itself, one em high; a word stands beside it. */
export function OutcomeSign({ look }: { look: OutcomeLook }) {
  return (
    <svg className="strip-sign-alone" viewBox="0 0 16 16" aria-hidden="true">
      <OutcomeMark look={look} x={0} y={0} size={16} />
    </svg>
  );
}

/** One pattern per outcome: even, upright, dots, rising hatch, crossed hatch. Their ids begin with `prefix`. */
export const OutcomePatterns = memo(function OutcomePatterns({ prefix }: { prefix: string }) {
  return (
    <defs>
      <Pattern id={`${prefix}-caught`} kind="caught" size={8} d="" />
      <Pattern id={`${prefix}-passing`} kind="passing" size={5} d="M2.5 -1V6" />
      <Pattern id={`${prefix}-stuck`} kind="stuck" size={6} d="M1.5 1.5h.01M4.5 4.5h.01" />
      <Pattern id={`${prefix}-shut-out`} kind="shut-out" size={6} d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5" />
      <Pattern id={`${prefix}-under`} kind="under" size={6} d="M0 0L6 6M6 0L0 6" />
    </defs>
  );
});

function Pattern({ id, kind, size, d }: { id: string; kind: string; size: number; d: string }) {
  return (
    <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse">
      <rect className={`strip-ground--${kind}`} width={size} height={size} />
      {d !== "" && <path className={`strip-hatch strip-hatch--${kind}`} d={d} />}
    </pattern>
  );
}
