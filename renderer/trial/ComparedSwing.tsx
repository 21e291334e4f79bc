/** The measured swing and the computed one over each other. */
import { type ReactNode, useMemo } from "react";
import type { Compared } from "../../core/study/fit/fit-types.ts";

const WIDTH = 360;
const HEIGHT = 120;
/** More points than this do not show. */
const MOST = 400;
const DEGREES = 180 / Math.PI;

interface ComparedSwingProps {
  readonly compared: Compared;
  /** The axis is time; else the turning points by number. */
  readonly timed: boolean;
  /** rad. */
  readonly residual: number;
}

export function ComparedSwing({ compared, timed, residual }: ComparedSwingProps): ReactNode {
  const { at, measured, computed } = compared;
  const drawn = useMemo(() => drawing({ at, measured, computed }), [at, measured, computed]);
  const { first, last, top, bottom } = drawn;
  const within = `${(residual * DEGREES).toFixed(2)}°`;
  return (
    <figure className="trial-compared">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`The computed swing follows the measured one within ${within}`}
        preserveAspectRatio="none"
      >
        <path className="trial-zero" d={`M0 ${drawn.zero}H${WIDTH}`} />
        <path className="trial-measured" d={drawn.dots} />
        <path className="trial-computed" d={drawn.line} />
      </svg>
      <figcaption>
        <span className="trial-key-measured">measured</span>{" "}
        <span className="trial-key-computed">computed</span>
        <span>
          {timed ? `${first.toFixed(1)} to ${last.toFixed(1)} s` : `turning points ${first} to ${last}`},{" "}
          {bottom.toFixed(0)}° to {top.toFixed(0)}°
        </span>
      </figcaption>
    </figure>
  );
}

function drawing({ at, measured, computed }: Compared) {
  const step = Math.max(1, Math.ceil(at.length / MOST));
  const shown = at.map((_, i) => i).filter((i) => i % step === 0);
  const [first, last] = [at[0], at[at.length - 1]];
  const high = measured.reduce((most, angle) => Math.max(most, angle), 0);
  const low = measured.reduce((least, angle) => Math.min(least, angle), 0);
  const x = (i: number) => (4 + ((WIDTH - 8) * (at[i] - first)) / (last - first || 1)).toFixed(1);
  const y = (angle: number) => (4 + ((HEIGHT - 8) * (high - angle)) / (high - low || 1)).toFixed(1);
  return {
    first,
    last,
    top: high * DEGREES,
    bottom: low * DEGREES,
    zero: y(0),
    // A line of no length with round ends is a dot that keeps its size.
    dots: shown.map((i) => `M${x(i)} ${y(measured[i])}h0`).join(""),
    line: `M${at.map((_, i) => `${x(i)} ${y(computed[i])}`).join("L")}`,
  };
}
