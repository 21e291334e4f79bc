/**
 * The solenoid's template at full size: the bolt's axis with the lines that the tip is set to, and a grid to lay one's own solenoid
 * on. The file knows no bracket, so no hole is drawn for it: it is marked through the bracket itself.
 */
import type { Door } from "../door/door.ts";
import { ratedForce } from "../parts/solenoid.ts";
import { words } from "../review/words.ts";
import type { BoltPlan, DoorPlan, StrikePlan } from "./door-plan.ts";
import { type Drawing, dimension, line, type Point, polyline, rectangle, Sketch, text } from "./drawing.ts";
import { fitted, lines } from "./marks.ts";
import { RULERS, rulers } from "./rulers.ts";
import type { Sizes } from "./sizes.ts";

/** A guide is at least this many times as long as its bolt is wide, or it jams (common practice, no source). */
const GUIDE_LENGTH = 2;
/** Slots in a bracket that set the tip, mm either way (common practice, no source). */
const BRACKET_SLOT = 2;
/** The grid: half its width, its height, its lines' distance, mm. */
const GRID = { half: 40, height: 90, step: 5 } as const;
/** Between the guide's end and the grid: room to draw the link, mm. */
const LINK = 8;
const HEAD = 14;
const AXIS = 62;
/** Left edge and width of the column of words, mm. */
const COLUMN = { left: 116, width: 68 } as const;
const WIDTH = 186;
const SIZE = 3;

/** Depths along the axis from the slot's mouth, towards the solenoid, mm. */
interface Stations {
  readonly extended: number;
  readonly drawnBack: number;
  /** Sill, or the flap's lower edge where the bolt hangs on it. */
  readonly surface: number;
  readonly guideEnd: number;
  readonly grid: number;
  readonly end: number;
}

interface View {
  readonly sketch: Sketch;
  readonly bolt: BoltPlan;
  readonly strike: StrikePlan;
  readonly at: Stations;
  /** From across the axis and along it to the drawing. */
  readonly place: (across: number, along: number) => Point;
  readonly sizes: Sizes;
}

/** The template; `null` without a latch. */
export function solenoidTemplate(door: Door, plan: DoorPlan, sizes: Sizes): Drawing | null {
  const { bolt, strike } = plan;
  if (bolt === null || strike === null) return null;
  const at = stations(bolt, plan);
  const above = Math.max(Math.abs(strike.back - strike.mouth), -at.extended, -at.surface) + 6;
  const tall = HEAD + above + at.end;
  const mouth = bolt.points === 1 ? HEAD + above : HEAD + at.end;
  const place = (across: number, along: number): Point => [AXIS + across, mouth + bolt.points * along];
  const view: View = { sketch: new Sketch(), bolt, strike, at, place, sizes };
  grid(view);
  boltAndGuide(view);
  stationNames(view);
  measures(view);
  const foot = columnOf(view.sketch, sentences(door, plan, sizes));
  const height = Math.max(tall + 6, foot) + RULERS.height + 6;
  view.sketch.on("RULER", ...rulers([6, height - RULERS.height]));
  return view.sketch.drawing(`${door.name}: solenoid`, WIDTH, height);
}

function stations(bolt: BoltPlan, { opening, flap }: DoorPlan): Stations {
  const along = (y: number) => bolt.points * (y - bolt.mouth);
  const surface = along(bolt.on === "frame" ? opening.sill : flap.bottom);
  const drawnBack = along(bolt.withdrawn);
  const guideEnd = Math.max(surface, drawnBack) + GUIDE_LENGTH * bolt.width;
  const grid = guideEnd + bolt.stroke + LINK;
  return { extended: along(bolt.extended), drawnBack, surface, guideEnd, grid, end: grid + GRID.height };
}

function grid({ sketch, at, place }: View): void {
  const { half, height, step } = GRID;
  for (let x = -half; x <= half; x += step)
    sketch.on("SHADE", line(place(x, at.grid), place(x, at.grid + height)));
  for (let u = 0; u <= height; u += step)
    sketch.on("SHADE", line(place(-half, at.grid + u), place(half, at.grid + u)));
  sketch.on("CENTRE", line(place(0, at.extended - 5), place(0, at.end + 3)));
}

function boltAndGuide({ sketch, bolt, strike, at, place }: View): void {
  const [half, bore] = [bolt.width / 2, bolt.guideBore / 2];
  const box = (across: number, from: number, to: number) => {
    const [a, b] = [place(-across, from), place(across, to)];
    return rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1]));
  };
  sketch.on("LATCH", box(strike.length / 2, 0, -Math.abs(strike.back - strike.mouth)));
  sketch.on("LATCH", box(half, at.drawnBack, at.grid));
  sketch.on(
    "HIDDEN",
    box(strike.slotLength / 2, 0, -strike.slotDepth),
    box(half, at.extended, at.drawnBack),
    line(place(-bore, at.surface), place(-bore, at.guideEnd)),
    line(place(bore, at.surface), place(bore, at.guideEnd)),
    line(place(-bore - 6, at.guideEnd), place(bore + 6, at.guideEnd)),
  );
  for (const side of [-1, 1])
    sketch.on("OUTLINE", line(place(side * bore, at.surface), place(side * GRID.half, at.surface)));
}

/** Words to the left of the axis, each on its line; close lines are told apart by stepping the words down. */
function stationNames({ sketch, bolt, at, place, sizes }: View): void {
  const named: [along: number, words: string][] = [
    [at.extended, "bolt out"],
    [0, "slot's mouth"],
    [at.drawnBack, "drawn back"],
    [at.surface, bolt.on === "frame" ? "sill" : "flap's edge"],
    [at.guideEnd, `guide Ø ${sizes.short(bolt.guideBore)}`],
  ];
  const rows = named.map(([along, words]) => ({ y: place(0, along)[1], words })).sort((a, b) => a.y - b.y);
  let last = Number.NEGATIVE_INFINITY;
  for (const { y, words } of rows) {
    const at = Math.max(y + 1, last + 4);
    last = at;
    const [x] = place(-GRID.half - 2, 0);
    sketch.on(
      "DIMENSIONS",
      polyline([
        [x + 1, at - 1],
        [x + 3, at - 1],
        [x + 6, y],
        [AXIS - bolt.width / 2, y],
      ]),
    );
    sketch.on("TEXT", text([x, at], words, { size: 2.6, anchor: "end" }));
  }
}

/** Tip gap and stroke to the right of the axis. */
function measures({ sketch, bolt, at, place, sizes }: View): void {
  const half = bolt.width / 2;
  const [x] = place(half, 0);
  const on = (from: number, to: number, away: number, words: string) =>
    sketch.on("DIMENSIONS", dimension(place(half, from), place(half, to), "y", x + away, words));
  on(0, at.drawnBack, 8, `tip gap ${sizes.short(at.drawnBack)}`);
  on(at.extended, at.drawnBack, 28, `stroke ${sizes.short(bolt.stroke)}`);
}

/** Returns where the column ends. */
function columnOf(sketch: Sketch, said: readonly string[]): number {
  const { left, width } = COLUMN;
  sketch.on(
    "TEXT",
    text([left, HEAD + 2], "SOLENOID", { size: 7, strong: true }),
    text([left, HEAD + 8], "seen from outdoors", { size: 3.6 }),
  );
  let y = HEAD + 17;
  for (const one of said) {
    const rows = fitted(one, width, SIZE);
    sketch.on("TEXT", ...lines([left, y], rows, { size: SIZE }));
    y += rows.length * SIZE * 1.45 + 2.2;
  }
  return y;
}

function sentences(door: Door, { bolt, opening, flap }: DoorPlan, sizes: Sizes): string[] {
  if (bolt === null) return [];
  const onFrame = bolt.on === "frame";
  const edge = onFrame ? "sill" : "flap's lower edge";
  const aside =
    Math.abs(bolt.z) < 0.005
      ? "in the closed flap's plane"
      : `${sizes.long(Math.abs(bolt.z))} ${bolt.z > 0 ? "outdoors" : "indoors"} of the closed flap's plane`;
  return [
    "The hole pattern is your solenoid's own: mark it through its bracket on these lines.",
    `Bore the guide square to the ${edge}, Ø ${sizes.long(bolt.guideBore)}, at least ${sizes.long(GUIDE_LENGTH * bolt.width)} long. Its axis lies ${aside}.`,
    `Lay the page with its black line along the ${edge} and the axis over the guide.`,
    "Push the plunger right in, to its seat. Put the bolt's tip on the line “drawn back” and cut the link to hold both together.",
    "Lay the solenoid on the grid (5 mm) with its plunger along the axis: anywhere along it will do. Pack the body up until plunger and bolt are in one line, then mark through the bracket.",
    `Slot those holes ${sizes.long(BRACKET_SLOT)} either way along the axis: the tip gap is set there, with the plunger at its seat.`,
    `The spring draws the plunger out by ${sizes.long(bolt.stroke)}: leave it that room, and its tail in reach from inside.`,
    ...pullWords(door, sizes),
    onFrame
      ? `Guide, spring, link and solenoid have ${sizes.long(opening.floor - opening.sill)} from sill to floor.`
      : `Bolt and solenoid hang on the flap, ${sizes.long(flap.bottom - flap.top)} high: their mass must stand among the file's extra masses.`,
  ];
}

function pullWords({ solenoid, latch }: Door, { system }: Sizes): string[] {
  if (solenoid === null || latch === null) return [];
  const w = words(system);
  const full = w.force(ratedForce(solenoid.pull, solenoid.stroke));
  const seated = w.force(ratedForce(solenoid.pull, 0));
  return [
    `It pulls ${full} with the plunger out and ${seated} at its seat; bolt, link and plunger weigh ${w.mass(latch.boltMass)} together.`,
  ];
}
