/** A figure over one input: a curve with its points, gaps hatched where it does not exist. */
import { useId } from "react";
import {
  type Cell,
  type GridBox,
  inputName,
  labelEvery,
  type MapFigure,
  type MapInput,
  type MapPlace,
  type MapValues,
  plain,
} from "./map-grid.ts";
import { mapRange } from "./map-scale.ts";
import { axisTicks } from "./ticks.ts";

interface Props {
  readonly x: MapInput;
  readonly of: MapFigure;
  readonly values: MapValues;
  readonly here: MapPlace | undefined;
  readonly box: GridBox;
  readonly cell: Cell | null;
  readonly rem: number;
}

/** Room over and under the curve, as a share of its range. */
const ROOM = 0.08;

export function MapCurve({ x, of, values, here, box, cell, rem }: Props) {
  const hatch = useId();
  const range = mapRange(values.map((value) => value ?? null)) ?? { least: 0, most: 1 };
  const room = ROOM * (range.most - range.least) || Math.abs(range.most) * ROOM || 1;
  const axis = { from: range.least - room, to: range.most + room };
  const column = box.width / x.values.length;
  const toX = (i: number): number => box.left + (i + 0.5) * column;
  const toY = (value: number): number =>
    box.top + box.height * (1 - (value - axis.from) / (axis.to - axis.from));
  const bottom = box.top + box.height;
  const every = labelEvery(x.values.length, box.width, 3.5 * rem);
  return (
    <g className="map-axes">
      <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect className="map-absent" width="7" height="7" />
        <path className="map-absent-stroke" d="M-1 8L8 -1M-1 1L1 -1M6 8L8 6" />
      </pattern>
      <rect className="strip-well" x={box.left} y={box.top} width={box.width} height={box.height} />
      {values.map((value, i) =>
        value !== null ? null : (
          <rect
            key={x.values[i]}
            x={box.left + i * column}
            y={box.top}
            width={column + 0.4}
            height={box.height}
            fill={`url(#${hatch})`}
          />
        ),
      )}
      {axisTicks(axis, box.height / (2.2 * rem)).map(({ value, text }) => (
        <g key={text}>
          <line
            className="strip-grid"
            x1={box.left}
            x2={box.left + box.width}
            y1={toY(value)}
            y2={toY(value)}
          />
          <text x={box.left - 0.4 * rem} y={toY(value)} dy="0.35em" textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {x.values.map((value, i) =>
        i % every !== 0 ? null : (
          <text key={value} x={toX(i)} y={bottom + 1.1 * rem} textAnchor="middle">
            {plain(value)}
          </text>
        ),
      )}
      <AxisNames {...{ x, of, box, rem }} />
      {here !== undefined && <HereLine x={x} here={here.x} box={box} />}
      <path className="strip-line" d={curvePath(values, toX, toY)} />
      {x.values.length <= 60 &&
        values.map((value, i) =>
          value === null || value === undefined ? null : (
            <circle key={x.values[i]} className="map-point" cx={toX(i)} cy={toY(value)} r="2.5" />
          ),
        )}
      {cell !== null && <Reading at={toX(cell.x)} value={values[cell.x]} {...{ toY, box }} />}
    </g>
  );
}

function AxisNames({ x, of, box, rem }: Pick<Props, "x" | "of" | "box" | "rem">) {
  const middle = box.top + box.height / 2;
  const name = inputName(x);
  return (
    <>
      <text x={box.left + box.width / 2} y={box.top + box.height + 2.4 * rem} textAnchor="middle">
        {x.unit === "" ? name : `${name} (${x.unit})`}
      </text>
      <text x={rem} y={middle} textAnchor="middle" transform={`rotate(-90 ${rem} ${middle})`}>
        {of.unit === "" ? (of.title ?? of.name) : `${of.title ?? of.name} (${of.unit})`}
      </text>
    </>
  );
}

/** The door as it is. */
function HereLine({ x, here, box }: { x: MapInput; here: number; box: GridBox }) {
  const { values } = x;
  const span = values[values.length - 1] - values[0];
  const index = span === 0 ? 0 : ((here - values[0]) / span) * (values.length - 1);
  const at = box.left + ((index + 0.5) / values.length) * box.width;
  if (!(at >= box.left && at <= box.left + box.width)) return null;
  return <path className="map-here-line" d={`M${at} ${box.top}v${box.height}`} />;
}

function Reading({
  at,
  value,
  toY,
  box,
}: {
  at: number;
  value: number | null | undefined;
  toY: (value: number) => number;
  box: GridBox;
}) {
  return (
    <>
      <path className="map-reading" d={`M${at} ${box.top}v${box.height}`} />
      {typeof value === "number" && <circle className="map-found" cx={at} cy={toY(value)} r="5" />}
    </>
  );
}

/** Runs of values that are there; a value without neighbours shows as its point alone. */
function curvePath(
  values: readonly (number | null | undefined)[],
  toX: (i: number) => number,
  toY: (value: number) => number,
): string {
  let path = "";
  let lifted = true;
  values.forEach((value, i) => {
    if (value === null || value === undefined) {
      lifted = true;
      return;
    }
    path += `${lifted ? "M" : "L"}${toX(i).toFixed(1)} ${toY(value).toFixed(1)}`;
    lifted = false;
  });
  return path;
}
