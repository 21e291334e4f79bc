/** The flap's template at full size: its face seen from outdoors, and its edges unfolded beside it. */
import type { Door } from "../door/door.ts";
import { type DoorPlan, POCKET_WALL, type Pocket, STRIKE_GRIP } from "./door-plan.ts";
import { type Drawing, dimension, line, type Point, polyline, rectangle, Sketch, text } from "./drawing.ts";
import { centreCross, fitted, lines, type Place, pocketAcross, pocketFace, stackedPlaces } from "./marks.ts";
import { planNotes } from "./plan-notes.ts";
import { RULERS, rulers } from "./rulers.ts";
import type { Sizes } from "./sizes.ts";
import { pocketWords } from "./template-words.ts";

/** Room beside the face (the left one for dimension lines), beyond an edge view, and the least half width of one, mm. */
const GAP = { left: 22, right: 18 } as const;
const BEYOND = 9;
const EDGE_LEAST = 6;
const HEAD = 17;
/** The scales, as a share of the flap's height. */
const RULER_LINE = 0.66;

interface Views {
  readonly sketch: Sketch;
  readonly plan: DoorPlan;
  readonly sizes: Sizes;
  readonly place: Place;
}

/** Where on the flap's face the scales stand: from its middle and below the hinge axis, mm. */
const rulerLine = ({ flap }: DoorPlan): number => flap.top + RULER_LINE * (flap.bottom - flap.top);

/** Whether they find room there: between the left edge and the line that measures the slot's mouth, clear of pockets. */
function rulersFit(plan: DoorPlan): boolean {
  const { flap, pockets } = plan;
  const line = rulerLine(plan);
  const clear = pockets.every(({ y }) => y < line - 12 || y > line + RULERS.height + 12);
  return clear && flap.half * (1 + MOUTH_LINE) > RULERS.width + 8 && flap.bottom - flap.top > 170;
}

const rulerLeft = ({ flap }: DoorPlan): number => Math.min(-51, flap.half * MOUTH_LINE - 4 - RULERS.width);

/** Everything to cut and drill on the flap. */
export function flapTemplate(door: Door, plan: DoorPlan, sizes: Sizes): Drawing {
  const { flap } = plan;
  const edges = edgePockets(plan);
  const edgeHalf = edgeHalfOf(plan);
  const side = (pockets: readonly Pocket[], gap: number) =>
    pockets.length > 0 ? gap + 2 * edgeHalf + BEYOND + 6 * (pockets.length - 1) : gap;
  const left = side(edges.left, GAP.left);
  const width = left + 2 * flap.half + side(edges.right, GAP.right);
  const below = bottomHalf(plan);
  const top =
    HEAD +
    Math.max(flap.bottom, plan.strike?.mouth ?? 0) +
    (below > 0 ? 16 + 2 * below + 10 + 5 * Math.floor(Math.max(0, edges.bottom.length - 1) / 2) : 10);
  const inside = rulersFit(plan);
  const foot = inside ? 0 : RULERS.height + 4;
  const height = top + foot;
  const place: Place = (x, y) => [left + flap.half + x, HEAD + y];
  const views = { sketch: new Sketch(), plan, sizes, place };
  faceView(views);
  hangingBolt(views);
  plan.pockets
    .filter(({ on }) => on === "flap")
    .forEach((p) => {
      pocketAcross(views.sketch, p, place);
    });
  faceDimensions(views);
  faceWords(views, door);
  views.sketch.on(
    "RULER",
    ...rulers(inside ? place(rulerLeft(plan), rulerLine(plan)) : [6, height - foot + 2]),
  );
  for (const way of [-1, 1] as const) edgeView(views, way === 1 ? edges.right : edges.left, way, edgeHalf);
  if (below > 0) bottomView(views, below);
  return views.sketch.drawing(`${door.name}: flap`, Math.max(width, RULERS.width + 12), height);
}

function edgePockets({ pockets }: DoorPlan) {
  const on = (face: Pocket["face"]) => pockets.filter((p) => p.face === face);
  return { left: on("left edge"), right: on("right edge"), bottom: on("bottom edge") };
}

/** Half the thickness of flap and cheeks, mm. */
function edgeHalfOf({ flap, cheeks }: DoorPlan): number {
  return Math.max(EDGE_LEAST, flap.thickness / 2 + (cheeks[0]?.thickness ?? 0));
}

/** Half the height of the view from below; 0 where nothing is to be seen from there. */
function bottomHalf(plan: DoorPlan): number {
  const strike = plan.strike?.on === "flap" ? plan.strike.halfThickness : 0;
  const magnets = edgePockets(plan).bottom.length > 0 ? edgeHalfOf(plan) : 0;
  return Math.max(strike, magnets);
}

function faceView({ sketch, plan, place }: Views): void {
  const { flap, notch, cheeks } = plan;
  const lower: Point[] =
    notch === null
      ? []
      : [
          place(notch.half, flap.bottom),
          place(notch.half, notch.top),
          place(-notch.half, notch.top),
          place(-notch.half, flap.bottom),
        ];
  sketch.on(
    "CUT",
    polyline(
      [
        place(-flap.half, flap.top),
        place(flap.half, flap.top),
        place(flap.half, flap.bottom),
        ...lower,
        place(-flap.half, flap.bottom),
      ],
      true,
    ),
  );
  sketch.on("CENTRE", line(place(-flap.half - 12, 0), place(flap.half + 12, 0)));
  // Broken in the middle, where the words are.
  sketch.on("CENTRE", line(place(0, -5), place(0, flap.top + 24)));
  sketch.on("CENTRE", line(place(0, (notch?.top ?? flap.bottom) - 24), place(0, flap.bottom + 6)));
  for (const { left, right, top, bottom } of cheeks) {
    sketch.on("OUTLINE", rectangle(...place(left, top), ...place(right, bottom)));
  }
  if (plan.strike?.on === "flap" && !plan.strike.inFlap) {
    const { length, mouth, back } = plan.strike;
    sketch.on("LATCH", rectangle(...place(-length / 2, back), ...place(length / 2, mouth)));
    sketch.on("HIDDEN", slotAcross(plan, place));
  }
}

/** A bolt that hangs on the flap, drawn back, on its axis. */
function hangingBolt({ sketch, plan, place }: Views): void {
  const { bolt } = plan;
  if (bolt?.on !== "flap") return;
  const half = bolt.width / 2;
  sketch.on("LATCH", rectangle(...place(-half, bolt.withdrawn - HANGING), ...place(half, bolt.withdrawn)));
  sketch.on(
    "TEXT",
    text([place(half + 3, 0)[0], place(0, bolt.withdrawn - 20)[1]], "bolt on the flap, drawn back", {
      size: 2.6,
      clear: true,
    }),
  );
}

/** Length of a hanging bolt that is drawn, mm. */
const HANGING = 40;

/** The slot seen across the width. */
function slotAcross({ strike }: DoorPlan, place: Place) {
  if (strike === null) return rectangle(0, 0, 0, 0);
  const deep = strike.on === "flap" ? strike.mouth - strike.slotDepth : strike.mouth + strike.slotDepth;
  const [a, b] = [place(-strike.slotLength / 2, strike.mouth), place(strike.slotLength / 2, deep)];
  return rectangle(a[0], Math.min(a[1], b[1]), b[0], Math.max(a[1], b[1]));
}

/** Where the height of the slot's mouth is measured, as a share of the half width. */
const MOUTH_LINE = 0.62;

function faceDimensions({ sketch, plan, sizes, place }: Views): void {
  const { flap, strike } = plan;
  const { short } = sizes;
  const [leftX] = place(-flap.half, 0);
  const [, topY] = place(0, 0);
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  on(place(-flap.half, flap.top), place(flap.half, flap.top), "x", topY - 8, short(2 * flap.half));
  on(
    place(-flap.half, flap.top),
    place(-flap.half, flap.bottom),
    "y",
    leftX - 8,
    short(flap.bottom - flap.top),
  );
  on(place(-flap.half, 0), place(-flap.half, flap.top), "y", leftX - 8, short(flap.top));
  on(place(-flap.half, 0), place(-flap.half, flap.bottom), "y", leftX - 16, short(flap.bottom));
  if (strike?.on === "flap") {
    const [x] = place(flap.half * MOUTH_LINE, 0);
    on(place(flap.half * MOUTH_LINE, 0), place(strike.length / 2, strike.mouth), "y", x, short(strike.mouth));
    on(
      place(-strike.length / 2, strike.back),
      place(strike.length / 2, strike.back),
      "x",
      place(0, strike.back)[1] - 5,
      short(strike.length),
    );
  }
}

function faceWords({ sketch, plan, sizes, place }: Views, door: Door): void {
  const { flap } = plan;
  const room = Math.min(130, 2 * (flap.half * MOUTH_LINE - 5));
  const material = door.flap.material === "" ? "sheet" : door.flap.material;
  const said = [
    `${material}, ${sizes.long(flap.thickness)} thick`,
    `Cut on the full red line: ${sizes.long(2 * flap.half)} wide, ${sizes.long(flap.bottom - flap.top)} high.`,
    `The hinge axis runs ${sizes.long(flap.top)} above the top edge.`,
    ...pocketWords(plan, "flap", sizes),
    ...strikeWords(plan, sizes),
    ...planNotes(plan, sizes),
  ].flatMap((one) => fitted(one, room, 3));
  const top = flap.top + Math.max(30, (flap.bottom - flap.top) * 0.2);
  const [x, y] = place(0, top);
  sketch.on(
    "TEXT",
    text([x, y - 14], "FLAP", { size: 9, strong: true, anchor: "middle", clear: true }),
    text([x, y - 7], "seen from outdoors", { size: 4, anchor: "middle", clear: true }),
    ...lines([x, y], said, { size: 3, anchor: "middle", clear: true }),
    text([place(-flap.half, 0)[0] + 4, place(0, -1.4)[1]], "hinge axis", { clear: true }),
  );
  massMarks({ sketch, plan, sizes, place }, door);
}

/** Where the centres of the extra masses lie; to the left, clear of strike and magnets. */
function massMarks({ sketch, plan, place }: Views, door: Door): void {
  const inSill = door.magnets?.arrangement === "sill";
  const share = inSill ? 0.25 : 0.5;
  for (const mass of door.flap.extraMasses) {
    const at = place(-plan.flap.half * share, mass.distanceFromHinge * 1000);
    sketch.on("CENTRE", ...centreCross(at, 4));
    const words = `${mass.name}: centre of mass at this height`;
    sketch.on(
      "TEXT",
      text([at[0], at[1] - (inSill ? 22 : 5.5)], words, { size: 2.6, anchor: "middle", clear: true }),
    );
  }
}

function strikeWords({ strike }: DoorPlan, sizes: Sizes): string[] {
  if (strike === null || strike.on !== "flap") return [];
  if (strike.inFlap)
    return [`Slot for the bolt straight in the lower edge, ${sizes.long(strike.slotDepth)} deep.`];
  return [
    `Green: the strike, ${sizes.long(2 * strike.halfThickness)} thick, its lower face ${sizes.long(strike.mouth)} below the hinge axis. It sits in the notch and grips the flap on both faces for ${sizes.long(STRIKE_GRIP)} or more.`,
  ];
}

/** An edge unfolded outwards: the side next to the face is the outdoor one. */
function edgeView(
  { sketch, plan, sizes, place }: Views,
  pockets: readonly Pocket[],
  way: 1 | -1,
  half: number,
): void {
  if (pockets.length === 0) return;
  const { flap, cheeks } = plan;
  const [faceX] = place(way * flap.half, 0);
  const middle = faceX + way * ((way === 1 ? GAP.right : GAP.left) + half);
  const across = (z: number, y: number): Point => [middle - way * z, place(0, y)[1]];
  const t = flap.thickness / 2;
  sketch.on("OUTLINE", rectangle(middle - t, place(0, flap.top)[1], middle + t, place(0, flap.bottom)[1]));
  for (const cheek of cheeks.filter(({ right }) => (way === 1 ? right > 0 : right < 0))) {
    const outer = t + cheek.thickness;
    sketch.on(
      "OUTLINE",
      rectangle(middle - outer, place(0, cheek.top)[1], middle - t, place(0, cheek.bottom)[1]),
    );
    sketch.on(
      "OUTLINE",
      rectangle(middle + t, place(0, cheek.top)[1], middle + outer, place(0, cheek.bottom)[1]),
    );
  }
  sketch.on("CENTRE", line(across(0, -4), across(0, flap.bottom + 5)));
  sketch.on("CENTRE", line(across(-half - 4, 0), across(half + 4, 0)));
  pockets.forEach((pocket, i) => {
    const below: Point = [middle, across(0, pocket.y)[1] + pocket.diameter / 2 + POCKET_WALL + 4];
    pocketFace(sketch, pocket, across(0, pocket.y), below, "middle");
    const at = middle + way * (half + 6 + 6 * i);
    sketch.on("DIMENSIONS", dimension(across(0, 0), across(0, pocket.y), "y", at, sizes.short(pocket.y)));
  });
  edgeWords(sketch, way, middle, half, place);
}

function edgeWords(sketch: Sketch, way: 1 | -1, middle: number, half: number, place: Place): void {
  const [, y] = place(0, 0);
  const name = way === 1 ? "right edge" : "left edge";
  sketch.on(
    "TEXT",
    text([middle, y - 9.5], name, { size: 3.2, strong: true, anchor: "middle" }),
    text([middle, y - 5.6], "drill here", { size: 2.6, anchor: "middle" }),
    text([middle - way * (half + 2), y + 52], "outdoors", {
      turn: -Math.PI / 2,
      size: 2.6,
      anchor: "middle",
    }),
    text([middle + way * (half + 2) + 2, y + 52], "indoors", {
      turn: -Math.PI / 2,
      size: 2.6,
      anchor: "middle",
    }),
  );
}

/** The lower edge seen from below: outdoors is the side next to the face. */
function bottomView({ sketch, plan, sizes, place }: Views, half: number): void {
  const { flap, strike, cheeks } = plan;
  const middle = place(0, Math.max(flap.bottom, strike?.mouth ?? 0))[1] + 16 + half;
  const across = (x: number, z: number): Point => [place(x, 0)[0], middle - z];
  const t = flap.thickness / 2;
  sketch.on("OUTLINE", rectangle(...across(-flap.half, t), ...across(flap.half, -t)));
  sketch.on("CENTRE", line(across(-flap.half - 6, 0), across(flap.half + 6, 0)));
  sketch.on("CENTRE", line(across(0, half + 4), across(0, -half - 4)));
  const bored = edgePockets(plan).bottom;
  for (const pocket of bored) {
    const [x, y] = across(pocket.x, 0);
    pocketFace(
      sketch,
      pocket,
      [x, y],
      [x + pocket.diameter / 2 + POCKET_WALL + 1.5, y - edgeHalfOf(plan) + 2.5],
      "start",
    );
  }
  if (bored.length > 0) {
    for (const { left, right, thickness } of cheeks) {
      sketch.on("OUTLINE", rectangle(...across(left, t + thickness), ...across(right, t)));
      sketch.on("OUTLINE", rectangle(...across(left, -t), ...across(right, -t - thickness)));
    }
    stackedPlaces(bored).forEach(({ x }, i) => {
      const at = middle + half + 6 + 5 * Math.floor(i / 2);
      sketch.on("DIMENSIONS", dimension(across(0, 0), across(x, 0), "x", at, sizes.short(Math.abs(x))));
    });
  }
  if (strike?.on === "flap") {
    const { length, halfThickness: h, slotLength, slotWidth } = strike;
    sketch.on("LATCH", rectangle(...across(-length / 2, h), ...across(length / 2, -h)));
    sketch.on(
      "CUT",
      rectangle(...across(-slotLength / 2, slotWidth / 2), ...across(slotLength / 2, -slotWidth / 2)),
    );
    const [x] = across(-length / 2, 0);
    const dim = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
    dim(
      across(-slotLength / 2, slotWidth / 2),
      across(-slotLength / 2, -slotWidth / 2),
      "y",
      x - 6,
      sizes.short(slotWidth),
    );
    dim(across(length / 2, h), across(length / 2, -h), "y", place(length / 2, 0)[0] + 6, sizes.short(2 * h));
  }
  sketch.on(
    "TEXT",
    text([place(-flap.half, 0)[0], middle - half - 6.5], "lower edge, seen from below", {
      size: 3.2,
      strong: true,
    }),
    text([place(-flap.half, 0)[0], middle - half - 2], "outdoors", { size: 2.6 }),
    text([place(-flap.half, 0)[0], middle + half + 4], "indoors", { size: 2.6 }),
  );
}
