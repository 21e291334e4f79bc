/**
 * The frame's template at full size: the opening seen from outdoors, both jambs folded into it (mirror images of each other) and
 * the sill seen from above, below it.
 */
import type { Door } from "../door/door.ts";
import type { DoorPlan, Pocket } from "./door-plan.ts";
import { circle, type Drawing, dimension, line, type Point, rectangle, Sketch, text } from "./drawing.ts";
import { centreCross, fitted, lines, type Place, pocketAcross, pocketFace, stackedPlaces } from "./marks.ts";
import { RULERS, rulers } from "./rulers.ts";
import type { Sizes } from "./sizes.ts";
import { depthWords, pocketWords } from "./template-words.ts";

/** From the opening's edge to a jamb folded inwards, and half its drawn width, mm. */
const FOLD = 13;
const JAMB_HALF = 13;
/** Left and right of the opening: pockets in the jambs, and dimension lines. */
const SIDE = 34;
const HEAD = 17;
const SILL_HALF = 20;
/** From the sill's line down to its view from above, mm. */
const SILL_GAP = 20;

interface Views {
  readonly sketch: Sketch;
  readonly plan: DoorPlan;
  readonly sizes: Sizes;
  readonly place: Place;
}

/** Everything to cut and drill on the frame. */
export function frameTemplate(door: Door, plan: DoorPlan, sizes: Sizes): Drawing {
  const { opening } = plan;
  const high = Math.min(0, opening.top);
  const deepest = Math.max(0, ...jambPockets(plan).map(({ depth }) => depth));
  const side = SIDE + Math.max(0, deepest - 6);
  const width = 2 * (opening.half + side);
  const inside = 2 * (opening.half - besideWords(plan)) > RULERS.width && opening.sill - opening.top > 170;
  const foot = inside ? 0 : RULERS.height + 4;
  const height = HEAD - high + opening.sill + SILL_GAP + 2 * SILL_HALF + 8 + sillDimensions(plan) + foot;
  const place: Place = (x, y) => [side + opening.half + x, HEAD - high + y];
  const views = { sketch: new Sketch(), plan, sizes, place };
  openingView(views, side);
  for (const pocket of plan.pockets.filter(({ on }) => on === "frame"))
    pocketAcross(views.sketch, pocket, place);
  for (const way of [-1, 1] as const) jambView(views, way);
  boltAcross(views);
  frameWords(views);
  sillView(views);
  const spot = place(-RULERS.width / 2, opening.top + 0.66 * (opening.sill - opening.top));
  views.sketch.on("RULER", ...rulers(inside ? spot : [6, height - foot + 2]));
  return views.sketch.drawing(`${door.name}: frame`, Math.max(width, RULERS.width + 12), height);
}

/** From the opening's edge to the words in it, mm. */
function besideWords(plan: DoorPlan): number {
  return jambPockets(plan).length > 0 ? FOLD + 2 * JAMB_HALF + 22 : 12;
}

/** Room below the sill's view for the places of its magnets, mm. */
function sillDimensions({ pockets }: DoorPlan): number {
  const count = pockets.filter(({ face }) => face === "sill").length;
  return count === 0 ? 0 : 9 + 5 * Math.floor((count - 1) / 2);
}

const jambPockets = ({ pockets }: DoorPlan): Pocket[] =>
  pockets.filter(({ face }) => face === "left jamb" || face === "right jamb");

function openingView({ sketch, plan, sizes, place }: Views, side: number): void {
  const { opening, flap } = plan;
  const { half, top, sill } = opening;
  sketch.on("CUT", rectangle(...place(-half, top), ...place(half, sill)));
  sketch.on("CENTRE", line(place(-half - 14, 0), place(half + 14, 0)));
  // Broken in the middle, where the words are.
  sketch.on("CENTRE", line(place(0, Math.min(0, top) - 5), place(0, Math.max(0, top) + 24)));
  sketch.on("CENTRE", line(place(0, sill - 40), place(0, sill + 18)));
  sketch.on(
    "HIDDEN",
    line(place(-flap.half, flap.top), place(-flap.half, flap.bottom)),
    line(place(flap.half, flap.top), place(flap.half, flap.bottom)),
    line(place(-flap.half, flap.bottom), place(flap.half, flap.bottom)),
  );
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  const [left] = place(-half, 0);
  const [right] = place(half, 0);
  on(place(-half, top), place(half, top), "x", place(0, Math.min(0, top))[1] - 9, sizes.short(2 * half));
  on(place(-half, top), place(-half, sill), "y", left - side + 7, sizes.short(sill - top));
  on(place(half, 0), place(half, sill), "y", right + side - 7, sizes.short(sill));
  sketch.on(
    "TEXT",
    text([place(-half, 0)[0] - 14, place(0, -1.4)[1]], "hinge axis", { clear: true, size: 2.6 }),
  );
}

/** A jamb's face as one looks at it from inside the opening, folded inwards about its outdoor edge. */
function jambView({ sketch, plan, sizes, place }: Views, way: 1 | -1): void {
  const name = way === 1 ? "right jamb" : "left jamb";
  const pockets = plan.pockets.filter(({ face }) => face === name);
  if (pockets.length === 0) return;
  const { opening } = plan;
  const outdoors = place(way * opening.half, 0)[0] - way * FOLD;
  const middle = outdoors - way * JAMB_HALF;
  const top = Math.max(0, opening.top);
  const at = (z: number, y: number): Point => [middle + way * z, place(0, y)[1]];
  sketch.on("OUTLINE", rectangle(...at(JAMB_HALF, top), ...at(-JAMB_HALF, opening.sill)));
  sketch.on("CENTRE", line(at(0, top + 16), at(0, opening.sill + 3)));
  sketch.on("CENTRE", line(at(JAMB_HALF + 3, 0), at(-JAMB_HALF - 3, 0)));
  pockets.forEach((pocket, i) => {
    const below: Point = [middle, at(0, pocket.y)[1] + pocket.diameter / 2 + 5];
    pocketFace(sketch, pocket, at(0, pocket.y), below, "middle");
    const [x] = at(-JAMB_HALF, 0);
    sketch.on(
      "DIMENSIONS",
      dimension(at(-3, 0), at(0, pocket.y), "y", x - way * (6 + 6 * i), sizes.short(pocket.y)),
    );
  });
  const [x, y] = at(0, top);
  sketch.on(
    "TEXT",
    text([x, y + 8], name, { size: 3.2, strong: true, anchor: "middle", clear: true }),
    text([x, y + 12.5], "drill here", { size: 2.6, anchor: "middle", clear: true }),
    text([x + way * (JAMB_HALF - 3), y + 50], "outdoors", {
      turn: -Math.PI / 2,
      size: 2.6,
      anchor: "middle",
    }),
    text([x - way * (JAMB_HALF - 3), y + 50], "indoors", { turn: -Math.PI / 2, size: 2.6, anchor: "middle" }),
    text([x - 1.2, y + 30], "flap's plane", { turn: -Math.PI / 2, size: 2.4, anchor: "middle", clear: true }),
  );
}

/** Bolt and guide below the sill, or the strike standing on it. */
function boltAcross({ sketch, plan, place }: Views): void {
  const { bolt, strike, opening } = plan;
  if (bolt?.on === "frame") {
    const foot = opening.sill + 14;
    sketch.on("LATCH", rectangle(...place(-bolt.width / 2, bolt.withdrawn), ...place(bolt.width / 2, foot)));
    const bore = bolt.guideBore / 2;
    sketch.on(
      "HIDDEN",
      line(place(-bore, opening.sill), place(-bore, foot)),
      line(place(bore, opening.sill), place(bore, foot)),
    );
  }
  if (strike?.on === "frame") {
    sketch.on(
      "LATCH",
      rectangle(...place(-strike.length / 2, strike.mouth), ...place(strike.length / 2, strike.back)),
    );
  }
}

function frameWords({ sketch, plan, sizes, place }: Views): void {
  const { opening, bolt, flap } = plan;
  const beside = besideWords(plan);
  const room = Math.min(130, Math.max(46, 2 * (opening.half - beside)));
  const clearance = opening.half - flap.half;
  const said = [
    `Cut on the full red line: ${sizes.long(2 * opening.half)} wide, ${sizes.long(opening.sill - opening.top)} high.`,
    hingeWords(plan, sizes),
    `Room beside the flap (dashed): ${sizes.long(clearance)} each side, ${sizes.long(opening.sill - flap.bottom)} below.`,
    ...pocketWords(plan, "frame", sizes),
    ...(bolt?.on === "frame" ? boltWords(plan, sizes) : []),
  ].flatMap((one) => fitted(one, room, 3));
  const [x, y] = place(0, opening.top + Math.max(34, (opening.sill - opening.top) * 0.2));
  const small = room < 60;
  sketch.on(
    "TEXT",
    text([x, y - 14], "FRAME", { size: small ? 7 : 9, strong: true, anchor: "middle", clear: true }),
    text([x, y - 7], "seen from outdoors", { size: small ? 3.2 : 4, anchor: "middle", clear: true }),
    ...lines([x, y], said, { size: 3, anchor: "middle", clear: true }),
  );
}

function hingeWords({ opening }: DoorPlan, sizes: Sizes): string {
  const above = `The hinge axis lies ${sizes.long(opening.sill)} above the sill`;
  if (Math.abs(opening.top) < 0.005) return `${above}, level with the top of the opening.`;
  return opening.top > 0
    ? `${above}, ${sizes.long(opening.top)} above the top of the opening.`
    : `${above}, ${sizes.long(-opening.top)} below the top of the opening.`;
}

function boltWords({ bolt, opening }: DoorPlan, sizes: Sizes): string[] {
  if (bolt === null) return [];
  const tip = opening.sill - bolt.withdrawn;
  const where =
    Math.abs(tip) < 0.005
      ? "level with the sill"
      : tip > 0
        ? `${sizes.long(tip)} above the sill`
        : `${sizes.long(-tip)} below the sill`;
  return [
    `Bolt ${sizes.long(bolt.width)}: guide bored ${sizes.long(bolt.guideBore)}; its tip, drawn back, stands ${where}.`,
    `Solenoid on the bolt's axis: it pulls ${sizes.long(bolt.stroke)} (its own page shows how to mark its bracket).`,
  ];
}

/** The sill from above; outdoors is the side nearer to the foot of the page. */
function sillView({ sketch, plan, sizes, place }: Views): void {
  const { opening, bolt, strike, flap } = plan;
  const middle = place(0, opening.sill)[1] + SILL_GAP + SILL_HALF;
  const at = (x: number, z: number): Point => [place(x, 0)[0], middle + z];
  sketch.on("OUTLINE", rectangle(...at(-opening.half, -SILL_HALF), ...at(opening.half, SILL_HALF)));
  sketch.on("CENTRE", line(at(-opening.half - 5, 0), at(opening.half + 5, 0)));
  sketch.on("CENTRE", line(at(0, -SILL_HALF - 4), at(0, SILL_HALF + 4)));
  const t = flap.thickness / 2;
  sketch.on("HIDDEN", rectangle(...at(-flap.half, -t), ...at(flap.half, t)));
  const on = (...d: Parameters<typeof dimension>) => sketch.on("DIMENSIONS", dimension(...d));
  for (const pocket of plan.pockets.filter(({ face }) => face === "sill")) {
    const beside: Point = [at(pocket.x, 0)[0] + pocket.diameter / 2 + 2, middle - pocket.diameter / 2 - 2];
    pocketFace(sketch, pocket, at(pocket.x, 0), beside, "start");
  }
  stackedPlaces(plan.pockets.filter(({ face }) => face === "sill")).forEach(({ x }, i) => {
    const line = middle + SILL_HALF + 5 + 5 * Math.floor(i / 2);
    on(at(0, 0), at(x, 0), "x", line, sizes.short(Math.abs(x)));
  });
  if (bolt?.on === "frame") {
    sketch.on("DRILL", circle(at(0, bolt.z), bolt.guideBore / 2));
    sketch.on("CENTRE", ...centreCross(at(0, bolt.z), bolt.guideBore / 2 + 3));
    sketch.on(
      "TEXT",
      text(
        [at(bolt.guideBore / 2 + 3.5, 0)[0], middle - 3],
        `bolt guide Ø ${sizes.short(bolt.guideBore)}, through`,
        { size: 2.6, clear: true },
      ),
    );
    if (Math.abs(bolt.z) > 0.005)
      on(at(0, 0), at(0, bolt.z), "y", at(-16, 0)[0], sizes.short(Math.abs(bolt.z)));
  }
  if (strike?.on === "frame") {
    const { length, halfThickness: h, slotLength, slotWidth, z } = strike;
    sketch.on("LATCH", rectangle(...at(-length / 2, z - h), ...at(length / 2, z + h)));
    sketch.on(
      "CUT",
      rectangle(...at(-slotLength / 2, z - slotWidth / 2), ...at(slotLength / 2, z + slotWidth / 2)),
    );
  }
  sketch.on(
    "TEXT",
    text([at(-opening.half, 0)[0], middle - SILL_HALF - 3], "sill, seen from above", {
      size: 3.2,
      strong: true,
    }),
    text([at(-opening.half + 3, 0)[0], middle - SILL_HALF + 5], "indoors", { size: 2.6 }),
    text([at(-opening.half + 3, 0)[0], middle + SILL_HALF - 3], "outdoors", { size: 2.6 }),
    ...sillPocketWords(
      plan,
      sizes,
      at(-opening.half + 3, 0)[0],
      middle + SILL_HALF + 4 + sillDimensions(plan),
    ),
  );
}

function sillPocketWords(plan: DoorPlan, sizes: Sizes, x: number, y: number) {
  const pocket = plan.pockets.find(({ face }) => face === "sill");
  return pocket === undefined
    ? []
    : [text([x, y], `magnet Ø ${sizes.short(pocket.diameter)}, ${depthWords(pocket, sizes)}`, { size: 2.6 })];
}
