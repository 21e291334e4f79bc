/** The four pictures of a swing, from what was computed: no physics here, only units and what is drawn of what. */
import { type SwingMeasure, swingMeasures, type Turn, turningPoints } from "../../core/swing/turns.ts";
import type { DoorView, EnergyColumns, UnitSystem } from "../state/view.ts";
import {
  type Axis,
  type Band,
  DASHES,
  type EitherWay,
  extent,
  type Figure,
  type Layer,
  type Line,
  type Mark,
  type Point,
  readAt,
  roomy,
} from "./figure.ts";

const DEGREES = 180 / Math.PI;

/** Torque in the trade's everyday unit: SI units in one of it. */
const TORQUE: Readonly<Record<UnitSystem, { unit: string; si: number }>> = {
  metric: { unit: "mN m", si: 1e-3 },
  inch: { unit: "ozf in", si: (4.4482216152605 / 16) * 0.0254 },
};

const NOTHING = { lines: [], layers: [], bands: [], eitherWay: [], marks: [], points: [] };

const inDegrees = (column: ArrayLike<number>): Float64Array => Float64Array.from(column, (a) => a * DEGREES);

/** Turning points and what is measured between them. */
export interface SwingReading {
  readonly turns: readonly Turn[];
  readonly swings: readonly SwingMeasure[];
}

export function readSwing({ swing }: DoorView): SwingReading {
  const turns = turningPoints(swing);
  return { turns, swings: swingMeasures(turns) };
}

/** The slot's band as a stretch of an axis of angles, degrees. */
function captureBand({ geometry }: DoorView, axis: Band["axis"]): Band[] {
  const { slotAngle, captureAngle } = geometry;
  if (captureAngle === null) return [];
  const from = (slotAngle - captureAngle) * DEGREES;
  return [{ axis, from, to: (slotAngle + captureAngle) * DEGREES, label: "inside the slot", ink: "caught" }];
}

/** Settle and rest, s after let-go. */
function endMarks(view: DoorView): Mark[] {
  const { settled, rest, letGo } = view.replay.marks;
  return [
    ...(settled === null ? [] : [{ x: settled - letGo, label: "settles" }]),
    ...(rest === null ? [] : [{ x: rest - letGo, label: "rests" }]),
  ];
}

function timeAxis(view: DoorView, pinned: DoorView | null): Axis {
  const end = Math.max(lastOf(view.swing.time), pinned === null ? 0 : lastOf(pinned.swing.time));
  return { label: "time after let-go", unit: "s", from: 0, to: end > 0 ? end : 1 };
}

const lastOf = (column: ArrayLike<number>): number => column[column.length - 1] ?? 0;

/** Angle against time, with the envelope through the turning points and the pinned door's swing. */
export function angleFigure(view: DoorView, pinned: DoorView | null, { turns }: SwingReading): Figure {
  const longer = pinned !== null && lastOf(pinned.swing.time) > lastOf(view.swing.time) ? pinned : view;
  const values = longer.swing.time;
  const angle = (of: DoorView): Float64Array =>
    inDegrees(of === longer ? of.swing.angle : readAt(of.swing.time, of.swing.angle, values));
  const lines: Line[] = [];
  const own = angle(view);
  if (pinned !== null) {
    lines.push({ label: "pinned door", ink: "ghost", dash: DASHES.long, width: 1.4, values: angle(pinned) });
  }
  lines.push(...envelope(turns, values));
  lines.push({ label: "angle", ink: "ink", dash: DASHES.solid, width: 1.8, values: own });
  const most = extent(...lines.map((line) => line.values)) ?? { least: -1, most: 1 };
  return {
    ...NOTHING,
    id: "angle",
    title: "Angle over time",
    note: "outdoors is up",
    x: timeAxis(view, pinned),
    y: { label: "angle", unit: "°", ...roomy(most.least, most.most) },
    values,
    lines,
    bands: captureBand(view, "y"),
    marks: endMarks(view),
  };
}

/** Straight lines through the turning points of either side. */
function envelope(turns: readonly Turn[], values: ArrayLike<number>): Line[] {
  const sides = [turns.filter((_, i) => i % 2 === 0), turns.filter((_, i) => i % 2 === 1)];
  return sides
    .filter((side) => side.length > 1)
    .map((side, i) => ({
      label: i === 0 ? "envelope" : "",
      ink: "ink-soft",
      dash: DASHES.dot,
      width: 1.2,
      values: inDegrees(
        readAt(
          side.map(({ time }) => time),
          side.map(({ angle }) => angle),
          values,
        ),
      ),
    }));
}

/** Speed against angle. */
export function phaseFigure(view: DoorView, pinned: DoorView | null): Figure {
  const lines: Line[] = [];
  const add = (of: DoorView, line: Omit<Line, "x" | "values">): void => {
    lines.push({ ...line, x: inDegrees(of.swing.angle), values: inDegrees(of.swing.speed) });
  };
  if (pinned !== null) add(pinned, { label: "pinned door", ink: "ghost", dash: DASHES.long, width: 1.2 });
  add(view, { label: "swing", ink: "ink", dash: DASHES.solid, width: 1.4 });
  const across = extent(...lines.map((line) => line.x ?? [])) ?? { least: -1, most: 1 };
  const up = extent(...lines.map((line) => line.values)) ?? { least: -1, most: 1 };
  return {
    ...NOTHING,
    id: "phase",
    title: "Speed against angle",
    note: "outdoors is right and up",
    x: { label: "angle", unit: "°", ...roomy(across.least, across.most) },
    y: { label: "speed", unit: "°/s", ...roomy(up.least, up.most) },
    values: [],
    lines,
    bands: captureBand(view, "x"),
    points: phasePoints(view),
  };
}

function phasePoints({ swing }: DoorView): Point[] {
  const last = swing.angle.length - 1;
  if (last < 0) return [];
  const at = (i: number) => ({ x: swing.angle[i] * DEGREES, y: swing.speed[i] * DEGREES });
  return [
    { ...at(0), label: "let go", shape: "round" },
    { ...at(last), label: "end", shape: "square" },
  ];
}

const SINKS: readonly (Omit<Layer, "values"> & { key: Exclude<keyof EnergyColumns, "initial"> })[] = [
  { key: "left", label: "still in the swing", ink: "flap", fill: "even" },
  { key: "hinge", label: "hinge, dry", ink: "metal", fill: "rising" },
  { key: "viscous", label: "hinge and damper, viscous", ink: "ghost", fill: "dots" },
  { key: "seal", label: "seal", ink: "animal", fill: "crossed" },
  { key: "stops", label: "stops", ink: "magnet", fill: "upright" },
  { key: "air", label: "air", ink: "open", fill: "falling" },
];

/** Where the energy is by each moment, mJ. Sinks that never take anything are left out. */
export function energyFigure(view: DoorView): Figure {
  const { energy, time } = view.swing;
  const layers = SINKS.map(({ key, ...look }): Layer => {
    return { ...look, values: Float64Array.from(energy[key], (joules) => joules * 1000) };
  }).filter(({ values }, i) => i === 0 || takes(values, energy.initial));
  const top = Math.max(energy.initial * 1000, ...peaks(layers));
  return {
    ...NOTHING,
    id: "energy",
    title: "Where the energy goes",
    note: "",
    x: timeAxis(view, null),
    y: { label: "energy", unit: "mJ", from: Math.min(0, ...peaks(layers)), to: 1.04 * (top || 1) },
    values: time,
    layers,
    marks: endMarks(view),
  };
}

const takes = (values: ArrayLike<number>, initial: number): boolean =>
  Math.abs(lastOf(values)) > 1e-6 * initial * 1000;

/** Greatest and least height that the stack's edges reach. */
function peaks(layers: readonly Layer[]): number[] {
  let sum = new Float64Array(layers[0]?.values.length ?? 0);
  return layers.flatMap(({ values }) => {
    sum = sum.map((below, i) => below + values[i]);
    const reached = extent(sum);
    return reached === null ? [] : [reached.least, reached.most];
  });
}

/** Torques on the resting flap; `near` shows only what lies about the slot. */
export function torqueFigure(view: DoorView, units: UnitSystem, near: boolean): Figure {
  const { torques } = view;
  const { unit, si } = TORQUE[units];
  const scaled = (column: ArrayLike<number>): Float64Array => Float64Array.from(column, (t) => t / si);
  const values = inDegrees(torques.angle);
  const gravity = scaled(torques.gravity);
  const magnets = scaled(torques.magnets);
  const air = scaled(torques.air);
  const total = gravity.map((g, i) => g + magnets[i] + air[i]);
  const acts = (column: Float64Array): boolean => column.some((value) => value !== 0);
  const lines: Line[] = [
    { label: "total", ink: "ink", dash: DASHES.solid, width: 2.4, values: total },
    { label: "gravity", ink: "flap", dash: DASHES.long, width: 1.6, values: gravity },
    ...(acts(magnets)
      ? [{ label: "magnets", ink: "magnet", dash: DASHES.dash, width: 1.6, values: magnets } as const]
      : []),
    ...(acts(air)
      ? [{ label: "wind and pressure", ink: "open", dash: DASHES.mixed, width: 1.6, values: air } as const]
      : []),
  ];
  const friction = scaled(torques.friction);
  const eitherWay: EitherWay[] = acts(friction)
    ? [{ label: "dry friction, either way", ink: "metal", fill: "rising", values: friction }]
    : [];
  const x = torqueAxis(view, near);
  return {
    ...NOTHING,
    id: "torque",
    title: "Torque against angle",
    note: "outwards is right and up",
    x,
    y: {
      label: "torque",
      unit,
      ...torqueRange(values, x, [...lines.map((l) => l.values), friction]),
    },
    values,
    lines,
    eitherWay,
    bands: captureBand(view, "x"),
  };
}

/** How far about the slot "near" reaches: some capture angles, or where the flap may rest. */
function torqueAxis(view: DoorView, near: boolean): Axis {
  const { slotAngle, captureAngle } = view.geometry;
  const axis = { label: "angle", unit: "°" };
  const stop = (view.torques.angle[view.torques.angle.length - 1] ?? 1) * DEGREES;
  if (!near) return { ...axis, from: -stop, to: stop };
  const band = view.results["swing.deadBand"]?.value ?? 0;
  const reach = Math.min(stop, 4 * DEGREES * Math.max(captureAngle ?? 0, band, 0.01));
  return { ...axis, from: slotAngle * DEGREES - reach, to: slotAngle * DEGREES + reach };
}

function torqueRange(x: ArrayLike<number>, axis: Axis, columns: readonly ArrayLike<number>[]) {
  const seen = columns.map((column) =>
    Array.from(column).filter((_, i) => x[i] >= axis.from && x[i] <= axis.to),
  );
  const reached = extent(...seen) ?? { least: -1, most: 1 };
  const friction = extent(seen[seen.length - 1] ?? []);
  const least = Math.min(reached.least, -(friction?.most ?? 0));
  return roomy(least, Math.max(reached.most, -least * 0.2));
}
