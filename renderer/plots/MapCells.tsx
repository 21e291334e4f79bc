/** The cells of a map over two inputs, with their axes and the door's own place. */
import { useId, useMemo } from "react";
import {
  alongPlaces,
  type Cell,
  cellBox,
  type GridBox,
  inputName,
  type MapInput,
  type MapPlace,
  type MapValues,
  placeTicks,
  roughValues,
} from "./map-grid.ts";
import { mapColour, mapRange, shareOf } from "./map-scale.ts";

export function MapCells({
  x,
  y,
  values,
  box,
  cell,
  here,
  rem,
  growing,
}: {
  x: MapInput;
  y: MapInput;
  values: MapValues;
  /** Places are still coming: those that are there stand for the rest. */
  growing: boolean;
  here: MapPlace | undefined;
  box: GridBox;
  cell: Cell | null;
  rem: number;
}) {
  const hatch = useId();
  const range = useMemo(() => mapRange(values.map((value) => value ?? null)), [values]);
  const columns = x.values.length;
  const rows = y.values.length;
  const cells = useMemo(
    () =>
      (growing ? roughValues(values, columns) : values).map((value, i) => {
        const at = { x: i % columns, y: Math.floor(i / columns) };
        const { left, top, width, height } = cellBox(box, columns, rows, at);
        const fill =
          value === undefined
            ? "none"
            : value === null || range === null
              ? `url(#${hatch})`
              : mapColour(shareOf(value, range));
        // A hair over, so that no seams show between cells.
        return (
          <rect
            data-cell
            key={`${at.x}/${at.y}`}
            x={left}
            y={top}
            width={width + 0.4}
            height={height + 0.4}
            fill={fill}
          />
        );
      }),
    [values, columns, rows, box, range, hatch, growing],
  );
  return (
    <g>
      <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect className="map-absent" width="7" height="7" />
        <path className="map-absent-stroke" d="M-1 8L8 -1M-1 1L1 -1M6 8L8 6" />
      </pattern>
      <rect className="map-ground" x={box.left} y={box.top} width={box.width} height={box.height} />
      {cells}
      <MapAxes {...{ x, y, box, rem }} />
      {here?.y !== undefined && <Here box={box} x={x} y={y} here={{ x: here.x, y: here.y }} />}
      {cell !== null && <CellFrame box={cellBox(box, columns, rows, cell)} />}
    </g>
  );
}

function CellFrame({ box }: { box: GridBox }) {
  const place = { x: box.left, y: box.top, width: box.width, height: box.height };
  return (
    <>
      <rect className="map-frame-outer" {...place} />
      <rect className="map-frame" {...place} />
    </>
  );
}

/** The door as it is: a ring at its own place, between the cells if need be. */
function Here({
  box,
  x,
  y,
  here,
}: {
  box: GridBox;
  x: MapInput;
  y: MapInput;
  here: { x: number; y: number };
}) {
  const cx = box.left + alongPlaces(x.values, here.x) * box.width;
  const cy = box.top + (1 - alongPlaces(y.values, here.y)) * box.height;
  if (!(cx >= box.left && cx <= box.left + box.width && cy >= box.top && cy <= box.top + box.height))
    return null;
  return (
    <g className="map-here">
      <circle cx={cx} cy={cy} r="6" />
      <circle cx={cx} cy={cy} r="6" />
    </g>
  );
}

function MapAxes({ x, y, box, rem }: { x: MapInput; y: MapInput; box: GridBox; rem: number }) {
  const bottom = box.top + box.height;
  const middleY = box.top + box.height / 2;
  return (
    <g className="map-axes">
      {placeTicks(x.values, box.width / (3.5 * rem)).map(({ share, text }) => (
        <g key={text} transform={`translate(${box.left + share * box.width} ${bottom})`}>
          <path className="map-tick" d="M0 0v4" />
          <text y={1.1 * rem} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {placeTicks(y.values, box.height / (2 * rem)).map(({ share, text }) => (
        <g key={text} transform={`translate(${box.left} ${bottom - share * box.height})`}>
          <path className="map-tick" d="M0 0h-4" />
          <text x={-0.5 * rem} dy="0.35em" textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={box.left + box.width / 2} y={bottom + 2.4 * rem} textAnchor="middle">
        {withUnit(x)}
      </text>
      <text x={rem} y={middleY} textAnchor="middle" transform={`rotate(-90 ${rem} ${middleY})`}>
        {withUnit(y)}
      </text>
    </g>
  );
}

/** "gap of the magnets (mm)". */
function withUnit(input: MapInput): string {
  return input.unit === "" ? inputName(input) : `${inputName(input)} (${input.unit})`;
}
