/** Places of a map: values stand row by row, x running fastest. Pure. */

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
}

/** Row by row, x running fastest; `null` where the figure does not exist, undefined where it is still to come. */
export type MapValues = readonly (number | null | undefined)[];

/** A place in the inputs' units. */
export interface MapPlace {
  readonly x: number;
  readonly y?: number;
}

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

/** Every so many values so that labels `room` px wide fit along `length` px. */
export function labelEvery(count: number, length: number, room: number): number {
  const most = Math.max(1, Math.floor(length / room));
  return Math.max(1, Math.ceil(count / most));
}
