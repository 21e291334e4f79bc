/**
 * Symbols of a wiring diagram, drawn of lines, after IEC 60617 or IEEE 315 (the shapes from memory of both). A part with two
 * ends is drawn along its own axis u, v across, and placed upright (u down) or level (u to the right).
 */
import {
  type Arc,
  circle,
  filled,
  line,
  type Point,
  type Primitive,
  polyline,
  rectangle,
} from "./drawing.ts";

export type SymbolSet = "iec" | "ieee";
export const SYMBOL_SETS: Readonly<Record<SymbolSet, string>> = { iec: "IEC 60617", ieee: "IEEE 315" };

/** Where a part with two ends lies: its first end, and which way it runs. */
export interface Along {
  readonly at: Point;
  readonly way: "down" | "right";
}

const arc = (centre: Point, radius: number, start: number, end: number): Arc => ({
  kind: "arc",
  centre,
  radius,
  start,
  end,
});

type Place = (u: number, v: number) => Point;
const placeOf = ({ at: [x, y], way }: Along): Place =>
  way === "down" ? (u, v) => [x + v, y + u] : (u, v) => [x + u, y - v];

/** Length of every part with two ends, leads included, mm. */
export const PART = 12;
const BODY_FROM = 2;
const BODY_TO = PART - BODY_FROM;
const HALF = 1.7;

const leads = (place: Place, from: number, to: number): Primitive[] => [
  line(place(0, 0), place(from, 0)),
  line(place(to, 0), place(PART, 0)),
];

const box = (place: Place, from: number, to: number, half: number): Primitive =>
  polyline([place(from, -half), place(to, -half), place(to, half), place(from, half)], true);

/** IEC: a box. IEEE: a zigzag of three periods. */
export function resistor(along: Along, set: SymbolSet): Primitive[] {
  const place = placeOf(along);
  if (set === "iec") return [...leads(place, BODY_FROM, BODY_TO), box(place, BODY_FROM, BODY_TO, 1.4)];
  const quarter = (BODY_TO - BODY_FROM) / 12;
  const turns = [1, 3, 5, 7, 9, 11].map((k, i) => place(BODY_FROM + k * quarter, i % 2 === 0 ? HALF : -HALF));
  return [...leads(place, BODY_FROM, BODY_TO), polyline([place(BODY_FROM, 0), ...turns, place(BODY_TO, 0)])];
}

/** A resistor set once with a screwdriver: a stroke through it, IEC with a bar at its end, IEEE with an arrow. */
export function trimmer(along: Along, set: SymbolSet): Primitive[] {
  const place = placeOf(along);
  const [foot, tip] = [place(BODY_TO - 0.6, -3.4), place(BODY_FROM + 0.6, 3.4)];
  const [dx, dy] = [tip[0] - foot[0], tip[1] - foot[1]];
  const [ux, uy] = [dx / Math.hypot(dx, dy), dy / Math.hypot(dx, dy)];
  const end: Primitive =
    set === "iec"
      ? line([tip[0] - uy * 1.3, tip[1] + ux * 1.3], [tip[0] + uy * 1.3, tip[1] - ux * 1.3])
      : arrowHead(tip, ux, uy, 2);
  return [...resistor(along, set), line(foot, tip), end];
}

function arrowHead([x, y]: Point, ux: number, uy: number, length: number): Primitive {
  const [bx, by] = [x - ux * length, y - uy * length];
  const half = length * 0.35;
  return filled([
    [x, y],
    [bx - uy * half, by + ux * half],
    [bx + uy * half, by - ux * half],
  ]);
}

/** The first end is the positive one of a polarised capacitor. IEEE bends its negative plate. */
export function capacitor(along: Along, set: SymbolSet, polarised: boolean): Primitive[] {
  const place = placeOf(along);
  const [near, far] = [PART / 2 - 0.7, PART / 2 + 0.7];
  const plate = (u: number) => line(place(u, -2.6), place(u, 2.6));
  const bent = set === "ieee" && polarised && along.way === "down";
  const second: Primitive = bent
    ? arc(place(far + 4.2, 0), 4.2, Math.PI * 1.5 - 0.62, Math.PI * 1.5 + 0.62)
    : plate(far);
  const plus = polarised
    ? [
        line(place(near - 1.7, -2.8), place(near - 1.7, -1.4)),
        line(place(near - 2.4, -2.1), place(near - 1, -2.1)),
      ]
    : [];
  return [...leads(place, near, far), plate(near), second, ...plus];
}

export type DiodeKind = "diode" | "zener" | "led";

/** Cathode at the first end. IEC: an open triangle with the conductor through it. IEEE: a filled triangle. */
export function diode(along: Along, set: SymbolSet, kind: DiodeKind): Primitive[] {
  const place = placeOf(along);
  return pointing(place, set, kind);
}

/** The same with its anode at the first end. */
export function diodeReversed(along: Along, set: SymbolSet, kind: DiodeKind): Primitive[] {
  const straight = placeOf(along);
  return pointing((u, v) => straight(PART - u, -v), set, kind);
}

function pointing(place: Place, set: SymbolSet, kind: DiodeKind): Primitive[] {
  const [cathode, anode] = [PART / 2 - 1.8, PART / 2 + 1.8];
  const corners = [place(cathode, 0), place(anode, -2.1), place(anode, 2.1)];
  const body =
    set === "iec" ? [polyline(corners, true), line(place(cathode, 0), place(anode, 0))] : [filled(corners)];
  return [
    ...leads(place, cathode, anode),
    ...body,
    line(place(cathode, -2.1), place(cathode, 2.1)),
    ...(kind === "zener" ? zenerEnds(place, cathode, set) : []),
    ...(kind === "led" ? lightArrows(place, anode) : []),
  ];
}

function zenerEnds(place: Place, cathode: number, set: SymbolSet): Primitive[] {
  const one = line(place(cathode, 2.1), place(cathode + 1.2, 2.1));
  return set === "iec" ? [one] : [one, line(place(cathode, -2.1), place(cathode - 1.2, -2.1))];
}

function lightArrows(place: Place, anode: number): Primitive[] {
  return [0, 1.7].flatMap((shift) => {
    const from = place(anode - 0.4 - shift, -2.6);
    const to = place(anode - 2.4 - shift, -5);
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    return [line(from, to), arrowHead(to, dx / length, dy / length, 1.3)];
  });
}

/** IEC: a box with its conductor through it. IEEE: the waved element. */
export function fuse(along: Along, set: SymbolSet): Primitive[] {
  const place = placeOf(along);
  if (set === "iec") return [line(place(0, 0), place(PART, 0)), box(place, BODY_FROM, BODY_TO, 1.4)];
  const quarter = (BODY_TO - BODY_FROM) / 4;
  const bulge = (from: number, sign: number): Point[] =>
    Array.from({ length: 9 }, (_, i) => {
      const turn = (Math.PI * i) / 8;
      return place(from + quarter * (1 - Math.cos(turn)), sign * 1.5 * Math.sin(turn));
    });
  const wave = [...bulge(BODY_FROM, 1), ...bulge(BODY_FROM + 2 * quarter, -1)];
  return [...leads(place, BODY_FROM, BODY_TO), polyline(wave)];
}

/** Length of the solenoid's coil, leads included, mm. */
export const COIL = 24;

/** Upright. IEC: the box of an operating coil. IEEE: five loops. */
export function coil([x, y]: Point, set: SymbolSet): Primitive[] {
  const [top, bottom] = [y + 6, y + 18];
  if (set === "iec") {
    return [
      line([x, y], [x, top]),
      rectangle(x - 4.5, top, x + 4.5, bottom),
      line([x, bottom], [x, y + COIL]),
    ];
  }
  const radius = 1.6;
  const first = y + COIL / 2 - 5 * radius;
  const loops = [0, 1, 2, 3, 4].map((i) =>
    arc([x, first + (2 * i + 1) * radius], radius, -Math.PI / 2, Math.PI / 2),
  );
  return [
    line([x, y], [x, first]),
    ...loops,
    line([x, first + 10 * radius], [x, y + COIL]),
    line([x + 2.6, first], [x + 2.6, first + 10 * radius]),
    line([x + 3.4, first], [x + 3.4, first + 10 * radius]),
  ];
}

/** IEEE draws an envelope; in IEC it may be left out, and is. */
const envelope = ([x, y]: Point, set: SymbolSet, radius: number): Primitive[] =>
  set === "ieee" ? [circle([x, y], radius)] : [];

/** The bar of a bipolar transistor with its two slanted lines; `out` is where they end, to the right of the bar. */
function bipolar([x, y]: Point, out: number, spread: number): Primitive[] {
  return [
    line([x, y - 2.5], [x, y + 2.5]),
    line([x, y - 1.1], [x + out, y - spread]),
    line([x, y + 1.1], [x + out, y + spread]),
  ];
}

function arrowOn(from: Point, to: Point): Primitive {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return arrowHead([from[0] + dx * 0.92, from[1] + dy * 0.92], dx / length, dy / length, 1.5);
}

/** Of a driver: its collector or drain above the base or gate, its emitter or source below, both this far to the right, mm. */
export const DRIVER = { reach: 13, rise: 9, fall: 12 } as const;

/** Two npn transistors, the first one's emitter driving the second one's base; base end at `at`. */
export function darlington([x, y]: Point, set: SymbolSet): Primitive[] {
  const out = x + DRIVER.reach;
  return [
    line([x, y], [x + 3, y]),
    ...bipolar([x + 3, y], 3.5, 3.2),
    arrowOn([x + 3, y + 1.1], [x + 6.5, y + 3.2]),
    polyline([
      [x + 6.5, y - 3.2],
      [x + 6.5, y - 5.2],
      [out, y - 5.2],
    ]),
    line([x + 6.5, y + 3.2], [x + 9, y + 3.2]),
    ...bipolar([x + 9, y + 3.2], 4, 3.6),
    arrowOn([x + 9, y + 4.3], [out, y + 6.8]),
    line([out, y - 0.4], [out, y - DRIVER.rise]),
    line([out, y + 6.8], [out, y + DRIVER.fall]),
    joint([out, y - 5.2]),
    ...envelope([x + 8.4, y + 0.8], set, 8.4),
  ];
}

/** An n-channel enhancement MOSFET, gate end at `at`. */
export function mosfet([x, y]: Point, set: SymbolSet): Primitive[] {
  const [gate, channel, out] = [x + 6.5, x + 7.7, x + DRIVER.reach];
  const segment = (dy: number) => line([channel, y + dy - 1.2], [channel, y + dy + 1.2]);
  return [
    line([x, y], [gate, y]),
    line([gate, y - 3.6], [gate, y + 3.6]),
    ...[-3.2, 0, 3.2].map(segment),
    polyline([
      [channel, y - 3.2],
      [out, y - 3.2],
      [out, y - DRIVER.rise],
    ]),
    polyline([
      [channel, y + 3.2],
      [out, y + 3.2],
      [out, y + DRIVER.fall],
    ]),
    polyline([
      [channel, y],
      [out, y],
      [out, y + 3.2],
    ]),
    arrowHead([channel, y], -1, 0, 2),
    joint([out, y + 3.2]),
    ...envelope([x + 9.6, y], set, 6.6),
  ];
}

/** Of the pnp: its emitter above the base and its collector below, both this far to the right, mm. */
export const PNP = { reach: 7, rise: 7 } as const;

/** A pnp transistor with its emitter up, base end at `at`. */
export function pnp([x, y]: Point, set: SymbolSet): Primitive[] {
  const out = x + PNP.reach;
  return [
    line([x, y], [x + 3, y]),
    ...bipolar([x + 3, y], 4, 3.6),
    line([out, y - 3.6], [out, y - PNP.rise]),
    line([out, y + 3.6], [out, y + PNP.rise]),
    arrowOn([out, y - 3.6], [x + 3, y - 1.1]),
    ...envelope([x + 4.8, y], set, 4.8),
  ];
}

/** A plug in a socket, level, the plug's wire at `at` and the socket's 6 mm to the right. IEC: bar in a cup. IEEE: two chevrons. */
export function contact([x, y]: Point, set: SymbolSet): Primitive[] {
  if (set === "iec") {
    return [
      line([x, y], [x + 1, y]),
      filled(rectangle(x + 1, y - 0.6, x + 3.4, y + 0.6).points),
      arc([x + 3, y], 1.6, -Math.PI / 2, Math.PI / 2),
      line([x + 4.6, y], [x + 6, y]),
    ];
  }
  const chevron = (at: number) =>
    polyline([
      [at - 1.4, y - 1.4],
      [at, y],
      [at - 1.4, y + 1.4],
    ]);
  return [line([x, y], [x + 2.6, y]), chevron(x + 2.6), chevron(x + 4), line([x + 4, y], [x + 6, y])];
}

/** The 0 V mark: the end of a lead that belongs to the 0 V rail. */
export function zeroMark([x, y]: Point): Primitive[] {
  return [line([x, y], [x, y + 1.6]), line([x - 2.2, y + 1.6], [x + 2.2, y + 1.6])];
}

/** The loop of an antenna on a mast of 5 mm, standing on `at`. */
export function antenna([x, y]: Point): Primitive[] {
  return [line([x, y], [x, y - 6]), line([x, y - 3], [x - 2.4, y - 6]), line([x, y - 3], [x + 2.4, y - 6])];
}

/** Wires joined. */
export function joint([x, y]: Point): Primitive {
  const radius = 0.75;
  return filled(
    Array.from(
      { length: 16 },
      (_, i): Point => [x + radius * Math.cos((Math.PI * i) / 8), y + radius * Math.sin((Math.PI * i) / 8)],
    ),
  );
}
