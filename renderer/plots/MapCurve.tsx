/** A figure over one input: a curve with its points, gaps hatched where it does not exist. */
import { useId } from "react";
import {
  alongPlaces,
  type Cell,
  type GridBox,
  inputName,
  type MapFigure,
  type MapInput,
  type MapPlace,
  type MapValues,
  placeTicks,
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
  /** Places are still coming: the line bridges what is not there yet. */
  readonly growing: boolean;
}

/** Most places whose points are drawn each. */
const MOST_POINTS = 70;

/** Room over and under the curve, as a share of its range. */
const ROOM = 0.08;

export function MapCurve({ x, of, values, here, box, cell, rem, growing }: Props) {
  const hatch = useId();
  const range = mapRange(values.map((value) => value ?? null)) ?? { least: 0, most: 1 };
  const room = ROOM * (range.most - range.least) || Math.abs(range.most) * ROOM || 1;
  const axis = { from: range.least - room, to: range.most + room };
  const column = box.width / x.values.length;
  const toX = (i: number): number => box.left + (i + 0.5) * column;
  const toY = (value: number): number =>
    box.top + box.height * (1 - (value - axis.from) / (axis.to - axis.from));
  const bottom = box.top + box.height;
  return (
    <g className="map-axes">
      <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect className="map-absent" width="7" height="7" />
        <path className="map-absent-stroke" d="M-1 8L8 -1M-1 1L1 -1M6 8L8 6" />
      </pattern>
      <rect className="map-ground" x={box.left} y={box.top} width={box.width} height={box.height} />
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
      {placeTicks(x.values, box.width / (3.5 * rem)).map(({ share, text }) => (
        <g key={text} transform={`translate(${box.left + share * box.width} ${bottom})`}>
          <path className="map-tick" d="M0 0v4" />
          <text y={1.1 * rem} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <AxisNames {...{ x, of, box, rem }} />
      {here !== undefined && <HereLine x={x} here={here.x} box={box} />}
      <path className="strip-line" d={curvePath(values, toX, toY, growing)} />
      {x.values.length <= MOST_POINTS &&
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
  const name = inputName(x);
  return (
    <>
      <text x={box.left + box.width / 2} y={box.top + box.height + 2.4 * rem} textAnchor="middle">
        {x.unit === "" ? name : `${name} (${x.unit})`}
      </text>
      <text x={box.left - 0.4 * rem} y={0.75 * rem} textAnchor="end">
        {of.unit}
      </text>
    </>
  );
}

/** The door as it is. */
function HereLine({ x, here, box }: { x: MapInput; here: number; box: GridBox }) {
  const at = box.left + alongPlaces(x.values, here) * box.width;
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

/** Runs of values that are there; a value without neighbours shows as its point alone. What does not exist always parts them. */
function curvePath(
  values: readonly (number | null | undefined)[],
  toX: (i: number) => number,
  toY: (value: number) => number,
  bridging: boolean,
): string {
  let path = "";
  let lifted = true;
  values.forEach((value, i) => {
    if (value === null || value === undefined) {
      if (value === null || !bridging) lifted = true;
      return;
    }
    path += `${lifted ? "M" : "L"}${toX(i).toFixed(1)} ${toY(value).toFixed(1)}`;
    lifted = false;
  });
  return path;
}
