/** The whole door to scale for the build sheet: from outdoors, and cut open from the side with the flap's swing. */
import type { Computed } from "../review/compute.ts";
import type { DoorPlan, Pocket } from "./door-plan.ts";
import { type Drawing, dimension, line, type Point, polyline, rectangle, Sketch, text } from "./drawing.ts";
import type { Place } from "./marks.ts";
import type { Room } from "./page.ts";
import type { Sizes } from "./sizes.ts";

/** Scales of ISO 5455 and the steps between them that a rule shows. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 50, 100] as const;
/** Wall shown around the opening, and its depth in the section (assumption: the file has none), door mm. */
const WALL = 40;
const WALL_DEPTH = 90;
const SMALL = 2.5;
/** Room for dimension lines and words, mm of paper. */
const LEFT = 10;
const BETWEEN = 34;
const RIGHT = 4;

interface View {
  readonly sketch: Sketch;
  readonly plan: DoorPlan;
  readonly sizes: Sizes;
  readonly place: Place;
  /** Door millimetres to one of the drawing. */
  readonly scale: number;
}

/** Both views side by side in a room, and the scale chosen. */
export function doorViews(computed: Computed, plan: DoorPlan, sizes: Sizes, room: Room): Drawing {
  const { door } = computed;
  const top = Math.min(0, plan.opening.top) - WALL;
  const tall = plan.opening.floor - top;
  const front = 2 * (plan.opening.half + WALL);
  const swing = swingReach(computed, plan);
  const scale = chosen(front + swing + WALL_DEPTH / 2, tall, room);
  const sketch = new Sketch();
  const y0 = 12 - top / scale;
  const used = LEFT + front / scale + BETWEEN + (WALL_DEPTH / 2 + swing) / scale;
  const start = Math.max(0, (room.width - used) / 2) + LEFT;
  const x0 = start + front / scale / 2;
  const sideX = start + front / scale + BETWEEN + WALL_DEPTH / 2 / scale;
  const height = y0 + plan.opening.floor / scale + 11;
  const view = (x: number): View => ({
    sketch,
    plan,
    sizes,
    scale,
    place: (u, v) => [x + u / scale, y0 + v / scale],
  });
  frontView(view(x0), top);
  sideView(view(sideX), computed, top, swing);
  const said = `scale 1 : ${scale}`;
  sketch.on(
    "TEXT",
    text([x0, height - 1.5], `seen from outdoors, ${said}`, { size: SMALL, anchor: "middle" }),
    text([sideX + (swing / scale) * 0.35, height - 1.5], `from the side, ${said}`, {
      size: SMALL,
      anchor: "middle",
    }),
  );
  return sketch.drawing(`${door.name}: the whole door`, room.width, height, true);
}

/** Views' own lengths go to scale; dimension lines and words around them do not. */
function chosen(wide: number, tall: number, room: Room): number {
  const fits = (scale: number) =>
    wide / scale <= room.width - LEFT - BETWEEN - RIGHT && tall / scale <= room.height - 24;
  return SCALES.find(fits) ?? SCALES[SCALES.length - 1];
}

/** How far outdoors the section shows the open flap, door mm. */
function swingReach(computed: Computed, plan: DoorPlan): number {
  const angle = Math.min(Math.PI / 2, Math.abs(computed.governing.swing.releaseAngle));
  return Math.max(WALL_DEPTH / 2 + 30, plan.flap.bottom * Math.sin(angle) + 20);
}

function frontView({ sketch, plan, sizes, place, scale }: View, top: number): void {
  const { opening, flap, strike, bolt } = plan;
  const wall = opening.half + WALL;
  sketch.on("SHADE", rectangle(...place(-wall, top), ...place(wall, opening.floor)));
  sketch.on("OUTLINE", rectangle(...place(-opening.half, opening.top), ...place(opening.half, opening.sill)));
  sketch.on("OUTLINE", line(place(-wall - 8, opening.floor), place(wall + 8, opening.floor)));
  sketch.on("CUT", rectangle(...place(-flap.half, flap.top), ...place(flap.half, flap.bottom)));
  sketch.on("CENTRE", line(place(-opening.half - 30, 0), place(opening.half + 30, 0)));
  for (const pocket of plan.pockets) magnetSeen(sketch, pocket, place);
  if (strike !== null) {
    const [a, b] = [place(-strike.length / 2, strike.mouth), place(strike.length / 2, strike.back)];
    sketch.on("LATCH", rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1])));
  }
  if (bolt !== null) {
    const foot = bolt.withdrawn + bolt.points * 50;
    const [a, b] = [place(-bolt.width / 2, bolt.withdrawn), place(bolt.width / 2, foot)];
    sketch.on("LATCH", rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1])));
  }
  frontDimensions({ sketch, plan, sizes, place, scale }, wall, top);
}

function magnetSeen(sketch: Sketch, pocket: Pocket, place: Place): void {
  const [lx, ly] = pocket.looks;
  const half = pocket.diameter / 2;
  const a = place(pocket.x - ly * half, pocket.y - lx * half);
  const b = place(pocket.x - lx * pocket.thickness + ly * half, pocket.y - ly * pocket.thickness + lx * half);
  const box = rectangle(
    Math.min(a[0], b[0]),
    Math.min(a[1], b[1]),
    Math.max(a[0], b[0]),
    Math.max(a[1], b[1]),
  );
  sketch.on("MAGNETS", { ...box, filled: true });
}

function frontDimensions({ sketch, plan, sizes, place }: View, wall: number, top: number): void {
  const { opening, flap } = plan;
  const { short } = sizes;
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  const [left] = place(-wall, 0);
  const [right] = place(wall, 0);
  const above = place(0, top)[1];
  on(
    place(-opening.half, opening.top),
    place(opening.half, opening.top),
    "x",
    above - 2.5,
    `opening ${short(2 * opening.half)}`,
    SMALL,
  );
  on(
    place(-flap.half, flap.bottom),
    place(flap.half, flap.bottom),
    "x",
    place(0, flap.top + 0.72 * (flap.bottom - flap.top))[1],
    `flap ${short(2 * flap.half)}`,
    SMALL,
  );
  on(
    place(-opening.half, opening.top),
    place(-opening.half, opening.sill),
    "y",
    left - 6,
    short(opening.sill - opening.top),
    SMALL,
  );
  on(
    place(-opening.half, opening.sill),
    place(-opening.half, opening.floor),
    "y",
    left - 6,
    short(opening.floor - opening.sill),
    SMALL,
  );
  on(
    place(opening.half, 0),
    place(opening.half, opening.floor),
    "y",
    right + 7,
    `hinge axis ${short(opening.floor)}`,
    SMALL,
  );
  const [x] = place(-flap.half * 0.55, 0);
  on(
    place(-flap.half * 0.55, flap.top),
    place(-flap.half * 0.55, flap.bottom),
    "y",
    x,
    short(flap.bottom - flap.top),
    SMALL,
  );
}

/** Outdoors is the right side. */
function sideView(view: View, computed: Computed, top: number, swing: number): void {
  const { sketch, plan, place } = view;
  const { opening, flap } = plan;
  wallSection(view, top);
  const t = Math.max(flap.thickness / 2, 0.4 * view.scale);
  sketch.on("CUT", rectangle(...place(-t, flap.top), ...place(t, flap.bottom)));
  sketch.on("CENTRE", line(place(-WALL_DEPTH / 2 - 20, 0), place(Math.max(swing, 80), 0)));
  sketch.on("CENTRE", line(place(0, -20), place(0, opening.sill + 10)));
  sketch.on("OUTLINE", { kind: "circle", centre: place(0, 0), radius: 0.9 });
  openFlap(view, computed);
  sketch.on("OUTLINE", line(place(-WALL_DEPTH / 2 - 40, opening.floor), place(swing, opening.floor)));
  latchSeen(view);
  backLine(view, computed, swing);
  sideDimensions(view);
}

function wallSection({ sketch, plan, place }: View, top: number): void {
  const { opening } = plan;
  const half = WALL_DEPTH / 2;
  const part = (from: number, to: number) => {
    if (to - from < 0.5) return;
    const points: Point[] = [place(-half, from), place(half, from), place(half, to), place(-half, to)];
    sketch.on("SHADE", { kind: "hatch", points, spacing: 1.4, turn: Math.PI / 4 });
    sketch.on("OUTLINE", polyline(points, true));
  };
  part(top, Math.min(opening.top, -6));
  part(opening.sill, opening.floor);
}

/** The flap where it is let go, its lower edge's way there, and the angle. */
function openFlap({ sketch, plan, place, scale }: View, computed: Computed): void {
  const angle = Math.abs(computed.governing.swing.releaseAngle);
  if (angle < 0.02) return;
  const { flap } = plan;
  const at = (r: number, a: number): Point => place(r * Math.sin(a), r * Math.cos(a));
  sketch.on("HIDDEN", line(at(flap.top, angle), at(flap.bottom, angle)));
  // Clockwise from the open flap down to the closed one: angles from the x axis, y down.
  sketch.on("HIDDEN", {
    kind: "arc",
    centre: place(0, 0),
    radius: flap.bottom / scale,
    start: Math.PI / 2 - angle,
    end: Math.PI / 2,
  });
  const degrees = Math.round((angle * 180) / Math.PI);
  const [x, y] = at(flap.bottom * 0.5, angle);
  sketch.on("TEXT", text([x + 2, y], `let go at ${degrees}°`, { size: SMALL, clear: true }));
}

function latchSeen({ sketch, plan, place }: View): void {
  const { strike, bolt } = plan;
  if (strike === null || bolt === null) return;
  const h = strike.halfThickness;
  const [a, b] = [place(strike.z - h, strike.mouth), place(strike.z + h, strike.back)];
  sketch.on("LATCH", rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1])));
  const foot = bolt.withdrawn + bolt.points * 50;
  const [c, d] = [place(bolt.z - bolt.width / 2, bolt.withdrawn), place(bolt.z + bolt.width / 2, foot)];
  sketch.on("LATCH", rectangle(c[0], Math.min(c[1], d[1]), d[0], Math.max(c[1], d[1])));
}

/** The back of the animal whose swing governs. */
function backLine({ sketch, plan, sizes, place }: View, computed: Computed, swing: number): void {
  const { animal } = computed.governing;
  const back = plan.opening.floor - animal.shoulderHeight * 1000;
  sketch.on("HIDDEN", line(place(WALL_DEPTH / 2 + 6, back), place(swing, back)));
  const [x, y] = place(swing, back);
  const words = `${animal.name}'s back, ${sizes.short(animal.shoulderHeight * 1000)} up`;
  sketch.on("TEXT", text([x, y + 3.4], words, { size: SMALL, anchor: "end", clear: true }));
}

function sideDimensions({ sketch, plan, sizes, place }: View): void {
  const { opening, flap, strike } = plan;
  const [left] = place(-WALL_DEPTH / 2, 0);
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  on(
    place(-WALL_DEPTH / 2, 0),
    place(0, flap.bottom),
    "y",
    left - 5,
    `edge ${sizes.short(flap.bottom)}`,
    SMALL,
  );
  on(
    place(-WALL_DEPTH / 2, 0),
    place(-WALL_DEPTH / 2, opening.sill),
    "y",
    left - 11,
    `sill ${sizes.short(opening.sill)}`,
    SMALL,
  );
  if (strike !== null) {
    on(
      place(-WALL_DEPTH / 2, 0),
      place(0, strike.mouth),
      "y",
      left - 17,
      `slot ${sizes.short(strike.mouth)}`,
      SMALL,
    );
  }
}
