/** Places of a map: values stand row by row, x running fastest. Pure. */
import { gridOrder } from "../../core/study/map-order.ts";
import { axisTicks } from "./ticks.ts";

/** One input that a map runs over; values in the unit that is shown, evenly apart, rising or falling. */
export interface MapInput {
  readonly key: string;
  /** In words; the key where it is missing. */
  readonly label?: string;
  readonly unit: string;
  readonly values: readonly number[];
}

/** The figure a map shows. */
export interface MapFigure {
  readonly name: string;
  readonly title?: string;
  readonly unit: string;
  /** What it means that there is none, "does not exist" where it is missing. */
  readonly absent?: string;
}

/** Row by row, x running fastest; `null` where the figure does not exist, undefined where it is still to come. */
export type MapValues = readonly (number | null | undefined)[];

/** A place in the inputs' units. */
export interface MapPlace {
  readonly x: number;
  readonly y?: number;
}

/**
 * Places along the axes, of a curve and of a map of two inputs. The first pass, one place in 16 and one in 4 each way, is then
 * within a tenth of the whole and has both ends, and the middle of the range is one of the places.
 */
export const CURVE_PLACES = 65;
export const MAP_PLACES = 17;

/** An input in words. */
export function inputName({ label, key }: MapInput): string {
  return label ?? key;
}

/** A cell of the map; y is 0 where there is one input. */
export interface Cell {
  readonly x: number;
  readonly y: number;
}

export interface GridBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The cell under a place in the box, the first row at the foot; `null` outside. */
export function cellAt(box: GridBox, countX: number, countY: number, px: number, py: number): Cell | null {
  const x = Math.floor(((px - box.left) / box.width) * countX);
  const y = Math.floor((1 - (py - box.top) / box.height) * countY);
  return x < 0 || y < 0 || x >= countX || y >= countY ? null : { x, y };
}

/** Where a cell lies. */
export function cellBox(box: GridBox, countX: number, countY: number, { x, y }: Cell): GridBox {
  const width = box.width / countX;
  const height = box.height / countY;
  return { left: box.left + x * width, top: box.top + (countY - 1 - y) * height, width, height };
}

/** The cell that an arrow key leads to, `null` for other keys. */
export function cellAfterKey(cell: Cell, key: string, countX: number, countY: number): Cell | null {
  const to = (x: number, y: number): Cell => ({
    x: Math.min(countX - 1, Math.max(0, x)),
    y: Math.min(countY - 1, Math.max(0, y)),
  });
  switch (key) {
    case "ArrowRight":
      return to(cell.x + 1, cell.y);
    case "ArrowLeft":
      return to(cell.x - 1, cell.y);
    case "ArrowUp":
      return to(cell.x, cell.y + 1);
    case "ArrowDown":
      return to(cell.x, cell.y - 1);
    case "Home":
      return to(0, cell.y);
    case "End":
      return to(countX - 1, cell.y);
    default:
      return null;
  }
}

/** The index nearest to a value. */
export function nearestIndex(values: readonly number[], value: number): number {
  let nearest = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i] - value) < Math.abs(values[nearest] - value)) nearest = i;
  }
  return nearest;
}

/** A number with at most four significant digits, for reading off. */
export function plain(value: number): string {
  const text = String(Number(value.toPrecision(4)));
  return text.startsWith("-") ? `−${text.slice(1)}` : text;
}

/**
 * The picture so far of a map that comes coarse to fine: a place still to come shows the value of the smallest block it lies in
 * whose first place is there. The first pass fills the whole picture.
 */
export function roughValues(values: MapValues, columns: number): MapValues {
  if (values.length === 0) return values;
  const [{ block: largest }] = gridOrder(columns, values.length / columns);
  return values.map((value, i) => {
    if (value !== undefined) return value;
    const [x, y] = [i % columns, Math.floor(i / columns)];
    for (let block = 2; block <= largest; block *= 2) {
      const first = values[(y - (y % block)) * columns + (x - (x % block))];
      if (first !== undefined) return first;
    }
    return undefined;
  });
}

/** Share along an axis of places, each in the middle of its own piece, at which a value lies; beyond 0 to 1 outside. */
export function alongPlaces(values: readonly number[], value: number): number {
  const count = values.length;
  const span = values[count - 1] - values[0];
  const index = span === 0 ? 0 : ((value - values[0]) / span) * (count - 1);
  return (index + 0.5) / count;
}

export interface PlaceTick {
  readonly share: number;
  readonly text: string;
}

/** Round numbers along an axis of places, rising or falling. */
export function placeTicks(values: readonly number[], most: number): PlaceTick[] {
  const [first, last] = [values[0], values[values.length - 1]];
  if (first === last) return [{ share: 0.5, text: plain(first) }];
  return axisTicks({ from: Math.min(first, last), to: Math.max(first, last) }, most).map(
    ({ value, text }) => ({ share: alongPlaces(values, value), text }),
  );
}
