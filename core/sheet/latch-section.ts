/** The latch cut open along the swing, enlarged, with every length a builder sets: for reading, not for measuring. */
import type { DoorPlan } from "./door-plan.ts";
import {
  type Anchor,
  type Drawing,
  dimension,
  line,
  type Point,
  polyline,
  rectangle,
  Sketch,
  text,
} from "./drawing.ts";
import type { Place } from "./marks.ts";
import type { Room } from "./page.ts";
import type { Sizes } from "./sizes.ts";

export interface SectionBox {
  /** Of the slot's mouth on the bolt's axis. */
  readonly at: Point;
  /** Drawing millimetres to one of the door. */
  readonly scale: number;
}

/** Flap's plate shown above its strike, door mm. */
const PLATE = 7;

/** How far the section reaches above and below the mouth, door millimetres. */
export function sectionReach({ bolt, strike, opening }: DoorPlan): { up: number; down: number } {
  if (bolt === null || strike === null) return { up: 0, down: 0 };
  return bolt.points === 1
    ? {
        up: strike.mouth - strike.back + PLATE,
        down: Math.max(opening.sill - strike.mouth, bolt.withdrawn - strike.mouth) + 14,
      }
    : { up: strike.mouth - bolt.withdrawn + 16, down: strike.slotDepth + 10 };
}

/** Draws the section; nothing without a latch. */
export function latchSection(sketch: Sketch, plan: DoorPlan, sizes: Sizes, box: SectionBox): void {
  const { bolt, strike } = plan;
  if (bolt === null || strike === null) return;
  // z to the right: outdoors is the right side.
  const place: Place = (z, y) => [
    box.at[0] + (z - bolt.z) * box.scale,
    box.at[1] + (y - strike.mouth) * box.scale,
  ];
  strikeParts(sketch, plan, place, box.scale);
  boltParts(sketch, plan, place);
  if (bolt.points === 1) sillParts(sketch, plan, place);
  sectionDimensions(sketch, plan, sizes, place, box.scale);
}

function strikeParts(sketch: Sketch, { strike, bolt, flap }: DoorPlan, place: Place, scale: number): void {
  if (strike === null || bolt === null) return;
  const { halfThickness: h, slotWidth, slotDepth, mouth, back, z } = strike;
  const deep = mouth + (strike.on === "flap" ? -slotDepth : slotDepth);
  const s = slotWidth / 2;
  // One closed run: outside, then the slot.
  const body: Point[] = [
    place(z - h, mouth),
    place(z - h, back),
    place(z + h, back),
    place(z + h, mouth),
    place(z + s, mouth),
    place(z + s, deep),
    place(z - s, deep),
    place(z - s, mouth),
  ];
  sketch.on("SHADE", {
    kind: "hatch",
    points: body,
    spacing: Math.max(0.9, 0.5 * scale),
    turn: -Math.PI / 4,
  });
  sketch.on("LATCH", polyline(body, true));
  const t = flap.thickness / 2;
  if (strike.on === "flap" && !strike.inFlap) {
    const plate: Point[] = [place(-t, back), place(-t, back - PLATE), place(t, back - PLATE), place(t, back)];
    sketch.on("SHADE", { kind: "hatch", points: plate, spacing: 1.2, turn: Math.PI / 4 });
    sketch.on(
      "OUTLINE",
      polyline([place(-t, back), place(-t, back - PLATE)]),
      polyline([place(t, back), place(t, back - PLATE)]),
    );
  }
}

function boltParts(sketch: Sketch, { bolt, strike, opening }: DoorPlan, place: Place): void {
  if (bolt === null || strike === null) return;
  const half = bolt.width / 2;
  const foot = bolt.points === 1 ? Math.max(opening.sill, bolt.withdrawn) + 12 : bolt.withdrawn - 14;
  sketch.on(
    "OUTLINE",
    polyline([
      place(bolt.z - half, foot),
      place(bolt.z - half, bolt.withdrawn),
      place(bolt.z + half, bolt.withdrawn),
      place(bolt.z + half, foot),
    ]),
  );
  sketch.on("HIDDEN", rectangleOf(place, bolt.z - half, bolt.extended, bolt.z + half, bolt.withdrawn));
  sketch.on("HIDDEN", line(place(bolt.z - half, bolt.engaged), place(bolt.z + half, bolt.engaged)));
  sketch.on(
    "CENTRE",
    line(place(bolt.z, Math.min(strike.back, bolt.withdrawn) - 6), place(bolt.z, foot + 2)),
  );
}

function rectangleOf(place: Place, left: number, top: number, right: number, bottom: number) {
  const [a, b] = [place(left, top), place(right, bottom)];
  return rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1]));
}

function sillParts(sketch: Sketch, { opening, bolt, strike }: DoorPlan, place: Place): void {
  if (bolt === null || strike === null) return;
  const bore = bolt.guideBore / 2;
  const reach = strike.halfThickness + 7;
  const low = Math.max(opening.sill, bolt.withdrawn) + 10;
  for (const [from, to] of [
    [bolt.z - reach, bolt.z - bore],
    [bolt.z + bore, bolt.z + reach],
  ] as const) {
    sketch.on("SHADE", {
      kind: "hatch",
      points: [place(from, opening.sill), place(to, opening.sill), place(to, low), place(from, low)],
      spacing: 1.4,
      turn: Math.PI / 4,
    });
    sketch.on("OUTLINE", line(place(from, opening.sill), place(to, opening.sill)));
  }
  sketch.on("OUTLINE", line(place(bolt.z - bore, opening.sill), place(bolt.z - bore, low)));
  sketch.on("OUTLINE", line(place(bolt.z + bore, opening.sill), place(bolt.z + bore, low)));
}

function sectionDimensions(
  sketch: Sketch,
  { bolt, strike }: DoorPlan,
  sizes: Sizes,
  place: Place,
  scale: number,
): void {
  if (bolt === null || strike === null) return;
  const { halfThickness: h, slotWidth, mouth, back, z } = strike;
  const { short } = sizes;
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  const side = Math.max(h, bolt.width);
  const [left] = place(z - side, 0);
  const [right] = place(z + side, 0);
  const far = place(0, back)[1];
  const away = bolt.points === 1 ? -1 : 1;
  // Clear of the flap's plate above a strike that hangs on it.
  const clear = bolt.points === 1 ? PLATE * scale + 3 : 8;
  on(
    place(z - slotWidth / 2, mouth),
    place(z + slotWidth / 2, mouth),
    "x",
    far + away * clear,
    `slot ${short(slotWidth)}`,
  );
  on(place(z - h, back), place(z + h, back), "x", far + away * (clear + 7), short(2 * h));
  const half = bolt.width / 2;
  sketch.on("DIMENSIONS", {
    ...dimension(
      place(bolt.z - half, mouth),
      place(bolt.z - half, bolt.withdrawn),
      "y",
      left - 6,
      `tip gap ${short(Math.abs(bolt.withdrawn - mouth))}`,
    ),
    before: true,
  });
  on(
    place(bolt.z + half, mouth),
    place(bolt.z + half, bolt.engaged),
    "y",
    right + 6,
    `at least ${short(Math.abs(bolt.engaged - mouth))}`,
  );
  on(
    place(bolt.z + half, bolt.extended),
    place(bolt.z + half, bolt.withdrawn),
    "y",
    right + 32,
    `stroke ${short(bolt.stroke)}`,
  );
  const foot = place(0, bolt.withdrawn + bolt.points * 9)[1];
  on(
    place(bolt.z - half, bolt.withdrawn),
    place(bolt.z + half, bolt.withdrawn),
    "x",
    foot,
    short(bolt.width),
  );
}

/** The section by itself, as large as the height allows, with the names of its parts. */
export function latchDrawing(plan: DoorPlan, sizes: Sizes, room: Room): Drawing {
  const reach = sectionReach(plan);
  const scale = LATCH_SCALES.find((one) => (reach.up + reach.down) * one <= room.height - ABOVE) ?? 1;
  const sketch = new Sketch();
  const up = plan.bolt?.points === 1;
  const head = up ? ABOVE : 4;
  const at: Point = [room.width / 2, head + reach.up * scale];
  latchSection(sketch, plan, sizes, { at, scale });
  partNames(sketch, plan, sizes, { at, scale });
  const height = head + (reach.up + reach.down) * scale + (up ? 2 : ABOVE);
  sketch.on("TEXT", text([0, height - 2], `scale ${scale} : 1`, { size: 2.5 }));
  return sketch.drawing("Latch, cut open along the swing", room.width, height);
}

const LATCH_SCALES = [4, 3, 2.5, 2, 1.5, 1] as const;
/** Room for the level dimension lines, mm. */
const ABOVE = 15;

function partNames(sketch: Sketch, plan: DoorPlan, sizes: Sizes, { at, scale }: SectionBox): void {
  const { bolt, strike, opening } = plan;
  if (bolt === null || strike === null) return;
  const half = Math.max(strike.halfThickness, bolt.width) * scale;
  const y = (below: number) => at[1] + (below - strike.mouth) * scale;
  const name = (below: number, to: number, words: string) => {
    named(sketch, [at[0] - half - 30, y(below) + 1], [at[0] - to * scale, y(below)], words, "end");
  };
  const middle = (strike.back + strike.mouth) / 2;
  name(middle, strike.halfThickness - 1, strike.on === "flap" ? "strike on the flap" : "strike on the sill");
  const low = Math.max(opening.sill, bolt.withdrawn);
  name(bolt.points === 1 ? low + 8 : bolt.withdrawn - 9, bolt.width / 2 - 0.5, "bolt, drawn back");
  if (bolt.points === 1) name(low + 3, bolt.guideBore / 2 + 3, "sill and guide");
  const right = at[0] + half;
  const words = bolt.points === 1 ? y(low) : y(strike.back) + 4;
  sketch.on(
    "TEXT",
    text([right + 7 * scale + 3, words + 5], `slot's mouth ${sizes.long(strike.mouth)}`, {}),
    text([right + 7 * scale + 3, words + 9], "below the hinge axis", {}),
    text([at[0] - half - 2, y(strike.back) - 2], "indoors", { size: 2.5, anchor: "end" }),
    text([right + 2, y(strike.back) - 2], "outdoors", { size: 2.5 }),
  );
}

/** A word with a thin line to what it names. */
export function named(sketch: Sketch, at: Point, to: Point, words: string, anchor: Anchor = "start"): void {
  sketch.on("DIMENSIONS", line([at[0] + (anchor === "start" ? -1 : 1), at[1] - 1], to));
  sketch.on("TEXT", text(at, words, { anchor, clear: true }));
}
