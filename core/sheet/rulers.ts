/** Scales to check a print with: 100 mm and 4 in. */
import { line, type Point, type Primitive, polyline, text } from "./drawing.ts";

const INCH = 25.4;
/** Room the two scales and their names take, mm. */
export const RULERS = { width: 118, height: 15 } as const;

/** Both scales, the one in millimetres above; `at` is their common zero's upper end. */
export function rulers([x, y]: Point): Primitive[] {
  return [...millimetreRuler([x, y]), ...inchRuler([x, y + 8])];
}

/** 100 mm, every millimetre marked; the long marks stand at 0, 10 … 100. */
function millimetreRuler([x, y]: Point): Primitive[] {
  const ticks = Array.from({ length: 101 }, (_, mm) => {
    const length = mm % 10 === 0 ? 3.6 : mm % 5 === 0 ? 2.6 : 1.6;
    return line([x + mm, y], [x + mm, y + length]);
  });
  const numbers = [0, 20, 40, 60, 80].map((mm) => text([x + mm + 0.5, y + 5.4], String(mm), { size: 2.2 }));
  return [
    polyline([
      [x, y],
      [x + 100, y],
    ]),
    ...ticks,
    ...numbers,
    text([x + 102, y + 3], "100 mm", { size: 2.6, strong: true }),
  ];
}

/** 4 in, sixteenths marked. */
function inchRuler([x, y]: Point): Primitive[] {
  const ticks = Array.from({ length: 65 }, (_, i) => {
    const length = i % 16 === 0 ? 3.6 : i % 8 === 0 ? 2.8 : i % 4 === 0 ? 2.1 : 1.4;
    return line([x + (i * INCH) / 16, y], [x + (i * INCH) / 16, y + length]);
  });
  const numbers = [0, 1, 2, 3].map((inch) =>
    text([x + inch * INCH + 0.5, y + 5.4], String(inch), { size: 2.2 }),
  );
  return [
    polyline([
      [x, y],
      [x + 4 * INCH, y],
    ]),
    ...ticks,
    ...numbers,
    text([x + 4 * INCH + 2, y + 3], "4 in", { size: 2.6, strong: true }),
  ];
}
