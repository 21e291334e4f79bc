/** The flap's angle against time: the passage as it happens, the free swing behind it, and the pinned door's. */
import { memo } from "react";
import type { DoorView } from "../state/view.ts";
import { type AngleScale, angleScale, angleTicks, angleY } from "./angle-scale.ts";
import type { Row } from "./rows.ts";
import { type TimeScale, toX } from "./time-axis.ts";
import { tracePath } from "./trace-path.ts";

const DEGREE = Math.PI / 180;

interface Props {
  readonly view: DoorView;
  readonly pinned: DoorView | null;
  readonly scale: TimeScale;
  readonly row: Row;
  readonly hatch: string;
}

export const StripTrace = memo(function StripTrace({ view, pinned, scale, row, hatch }: Props) {
  const angles = scaleOf(view, pinned, row);
  const y = (angle: number): number => angleY(angles, angle);
  const { replay, swing } = view;
  const { letGo, mouth, decided } = replay.marks;
  const all = { from: scale.from, to: scale.to };
  // Until the bolt meets the flap it is the film's own line, which lies over it.
  const free = { time: swing.time, value: swing.angle };
  const film = { time: replay.time, value: replay.angle };
  return (
    <g>
      <Ground view={view} scale={scale} row={row} angles={angles} hatch={hatch} />
      {pinned !== null && (
        <path
          className="strip-line strip-line--pinned"
          d={tracePath(scale, { time: pinned.replay.time, value: pinned.replay.angle }, y, all)}
        />
      )}
      {decided !== null && (
        <path
          className="strip-line strip-line--free"
          d={tracePath(scale, free, y, { from: mouth ?? decided, to: scale.to, shift: letGo })}
        />
      )}
      <path className="strip-line" d={tracePath(scale, film, y, all) + stillness(view, scale, y)} />
      {mouth !== null && decided !== null && (
        <path
          className="strip-line strip-line--deciding"
          d={tracePath(scale, film, y, { from: mouth, to: decided })}
        />
      )}
    </g>
  );
});

/** A flap that stands still when the film ends is drawn on to the window's end. */
function stillness({ replay }: DoorView, scale: TimeScale, y: (angle: number) => number): string {
  const last = replay.time.length - 1;
  const end = replay.time[last];
  if (replay.speed[last] !== 0 || end >= scale.to) return "";
  return `M${Math.max(scale.left, toX(scale, end))} ${y(replay.angle[last]).toFixed(1)}H${scale.left + scale.width}`;
}

function scaleOf(view: DoorView, pinned: DoorView | null, row: Row): AngleScale {
  const { slotAngle, captureAngle } = view.geometry;
  const largest = Math.max(
    largestFrom(view, slotAngle),
    pinned === null ? 0 : largestFrom(pinned, slotAngle),
  );
  return angleScale(slotAngle, captureAngle, largest, row.top, row.height);
}

/** Farthest from the slot that the flap gets, rad: on the free swing or while it is pushed. */
function largestFrom({ swing, replay }: DoorView, centre: number): number {
  return Math.max(farthest(swing.angle, centre), farthest(replay.angle, centre));
}

function farthest(angles: Float64Array, centre: number): number {
  let largest = 0;
  for (let i = 0; i < angles.length; i++) largest = Math.max(largest, Math.abs(angles[i] - centre));
  return largest;
}

/** The row's ground: phases, the bands about the slot, ticks. */
function Ground({
  view,
  scale,
  row,
  angles,
  hatch,
}: Omit<Props, "pinned"> & { readonly angles: AngleScale }) {
  const { captureAngle, blockAngle, slotAngle } = view.geometry;
  const { left, width } = scale;
  const band = (from: number, to: number) => {
    const top = angleY(angles, slotAngle + to);
    return { x: left, width, y: top, height: angleY(angles, slotAngle + from) - top };
  };
  return (
    <>
      <rect className="strip-well" x={left} width={width} y={row.top} height={row.height} />
      <Phases view={view} scale={scale} row={row} />
      {blockAngle !== null && captureAngle !== null && blockAngle > captureAngle && (
        <>
          <rect fill={`url(#${hatch})`} {...band(captureAngle, blockAngle)} />
          <rect fill={`url(#${hatch})`} {...band(-blockAngle, -captureAngle)} />
        </>
      )}
      {captureAngle !== null && <rect className="strip-capture" {...band(-captureAngle, captureAngle)} />}
      <AngleTicks angles={angles} left={left} slot={captureAngle !== null} right={left + width} />
    </>
  );
}

function AngleTicks({
  angles,
  left,
  right,
  slot,
}: {
  angles: AngleScale;
  left: number;
  right: number;
  slot: boolean;
}) {
  const at = (angle: number, text: string, shift: string) => (
    <g key={text}>
      <line
        className="strip-grid"
        x1={left}
        x2={right}
        y1={angleY(angles, angle)}
        y2={angleY(angles, angle)}
      />
      <text className="strip-tick" x={left - 6} y={angleY(angles, angle)} dy={shift} textAnchor="end">
        {text}
      </text>
    </g>
  );
  return (
    <g>
      {angleTicks(angles).flatMap((tick) => [
        at(angles.centre + tick, `${Math.round(tick / DEGREE)}° out`, "0.35em"),
        at(angles.centre - tick, `${Math.round(tick / DEGREE)}° in`, "0.35em"),
      ])}
      {at(angles.centre, slot ? "slot" : "closed", "0.35em")}
    </g>
  );
}

/** Approach, push, free swing: what the animal and the flap do. */
function Phases({ view, scale, row }: Pick<Props, "view" | "scale" | "row">) {
  const { arrival, letGo } = view.replay.marks;
  const x = (time: number) => Math.min(scale.left + scale.width, Math.max(scale.left, toX(scale, time)));
  const push = { from: x(arrival), to: x(letGo) };
  return (
    <rect
      className="strip-push"
      x={push.from}
      width={Math.max(0, push.to - push.from)}
      y={row.top}
      height={row.height}
    />
  );
}
