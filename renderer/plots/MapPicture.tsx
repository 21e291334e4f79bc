/**
 * A figure of the door over one or two of its inputs: coloured cells, or a curve. Places where the figure does not exist are
 * hatched. Hover and arrow keys read it off; a click, or Enter, adopts the place.
 */
import { type KeyboardEvent, type MouseEvent, useMemo, useRef, useState } from "react";
import { useSize } from "../strip/use-size.ts";
import { MapCells } from "./MapCells.tsx";
import { MapCurve } from "./MapCurve.tsx";
import {
  type Cell,
  cellAfterKey,
  cellAt,
  type GridBox,
  inputName,
  type MapFigure,
  type MapInput,
  type MapPlace,
  type MapValues,
  nearestIndex,
  plain,
} from "./map-grid.ts";
import { isSingle, mapColour, mapRange } from "./map-scale.ts";
import "./plots.css";

export interface MapPictureProps {
  readonly x: MapInput;
  readonly y?: MapInput;
  /** The figure shown. */
  readonly of: MapFigure;
  readonly values: MapValues;
  /** The door as it is, in the inputs' units. */
  readonly here?: MapPlace;
  /** Places are still coming. */
  readonly growing?: boolean;
  readonly onAdopt?: (x: number, y: number | null) => void;
}

export function MapPicture(props: MapPictureProps) {
  const { x, y, of, values, here, growing = false, onAdopt } = props;
  const place = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const [cell, setCell] = useState<Cell | null>(null);
  const rows = y?.values.length ?? 1;
  const box = useMemo(() => (size === null ? null : boxOf(size, y !== undefined)), [size, y]);
  const words = cell === null ? "" : readOff(props, cell);
  const adopt = (at: Cell | null): void => {
    if (at !== null) onAdopt?.(x.values[at.x], y === undefined ? null : y.values[at.y]);
  };
  const under = (event: MouseEvent<HTMLElement>): Cell | null => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    if (box === null) return null;
    const inside = y === undefined ? { ...box, top: 0, height: 1e6 } : box;
    return cellAt(inside, x.values.length, rows, event.clientX - left, event.clientY - top);
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key === "Enter") adopt(cell);
    const from = cell ?? hereCell(props) ?? { x: 0, y: 0 };
    const next = cellAfterKey(from, event.key, x.values.length, rows);
    if (next === null) return;
    event.preventDefault();
    setCell(next);
  };
  return (
    <figure className="map">
      <figcaption className="map-head">
        <h3>{of.title ?? of.name}</h3>
        <p>
          <output className="map-words">{words}</output>
          {words === "" &&
            `Point at a place to read it off${onAdopt === undefined ? "" : "; a click adopts it"}.`}
        </p>
      </figcaption>
      <div
        className="map-stage"
        ref={place}
        role="application"
        aria-label={`${of.title ?? of.name} over ${inputName(x)}${y === undefined ? "" : ` and ${inputName(y)}`}. Arrow keys read it${onAdopt === undefined ? "" : ", Enter adopts the place"}.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: see above.
        tabIndex={0}
        onPointerMove={(event) => setCell(under(event))}
        onPointerLeave={() => setCell(null)}
        onClick={(event) => adopt(under(event))}
        onKeyDown={key}
        data-adopts={onAdopt !== undefined || undefined}
      >
        {size !== null && box !== null && (
          <svg width={size.width} height={size.height} aria-hidden="true">
            {y === undefined ? (
              <MapCurve {...{ x, of, values, box, cell, here, growing }} rem={size.rem} />
            ) : (
              <MapCells {...{ x, y, values, box, cell, here, growing }} rem={size.rem} />
            )}
          </svg>
        )}
      </div>
      {y !== undefined && <ColourBar values={values} of={of} />}
    </figure>
  );
}

export default MapPicture;

function boxOf(
  { width, height, rem }: { width: number; height: number; rem: number },
  map: boolean,
): GridBox {
  const left = (map ? 4.5 : 5) * rem;
  return {
    left,
    // A curve's unit stands over its axis.
    top: (map ? 0.5 : 1.25) * rem,
    width: Math.max(20, width - left - rem),
    height: Math.max(20, height - (map ? 3.25 : 4) * rem),
  };
}

function readOff({ x, y, of, values, growing = false }: MapPictureProps, cell: Cell): string {
  const value = values[cell.y * x.values.length + cell.x];
  const at = (input: MapInput, i: number) =>
    `${inputName(input)} ${plain(input.values[i])} ${input.unit}`.trim();
  const places = y === undefined ? at(x, cell.x) : `${at(x, cell.x)}, ${at(y, cell.y)}`;
  const reads =
    value === undefined
      ? growing
        ? "still to come"
        : "not computed"
      : value === null
        ? (of.absent ?? "does not exist")
        : `${plain(value)} ${of.unit}`;
  return `${places}: ${reads}`;
}

function hereCell({ x, y, here }: MapPictureProps): Cell | null {
  if (here === undefined) return null;
  const row = y === undefined || here.y === undefined ? 0 : nearestIndex(y.values, here.y);
  return { x: nearestIndex(x.values, here.x), y: row };
}

/** The scale, from its least to its greatest value, with what hatching means. */
function ColourBar({ values, of }: { values: MapPictureProps["values"]; of: MapFigure }) {
  const range = mapRange(values.map((value) => value ?? null));
  const absent = values.some((value) => value === null);
  return (
    <div className="map-bar">
      {range !== null && <Colours {...range} unit={of.unit} />}
      {absent && (
        <span className="map-bar-absent">
          <i /> {of.absent ?? "does not exist"}
        </span>
      )}
    </div>
  );
}

function Colours({ least, most, unit }: { least: number; most: number; unit: string }) {
  const steps = Array.from({ length: 17 }, (_, i) => `${mapColour(i / 16)} ${((i / 16) * 100).toFixed(2)}%`);
  if (isSingle({ least, most })) {
    return (
      <span className="map-bar-same">
        <i style={{ background: mapColour(0.5) }} /> {plain(least)} {unit} everywhere
      </span>
    );
  }
  return (
    <>
      <span>
        {plain(least)} {unit}
      </span>
      <span
        className="map-bar-colours"
        style={{ background: `linear-gradient(to right, ${steps.join(", ")})` }}
      />
      <span>
        {plain(most)} {unit}
      </span>
    </>
  );
}
