/**
 * Where everything on the flap and in its frame sits, in millimetres: the one source of the template, the build sheet's drawing and
 * the parts list. Seen from outdoors: x to the right of the flap's middle, y down from the hinge axis, z towards
 * outdoors from the closed flap's plane.
 *
 * The door file leaves some places open (where along the width a bolt stands, how thick the block around a magnet is). They are
 * chosen here, once, each marked as an assumption.
 */
import type { Door, Flap, Latch, Magnets } from "../door/door.ts";
import { facingPoles, type Pole, sillPlaces } from "../parts/magnet-places.ts";
import { magnetRows } from "../parts/magnets.ts";

const mm = (metres: number): number => metres * 1000;

/** Wall left around a magnet's pocket, mm (common practice, no source). */
export const POCKET_WALL = 2;
/** Along the width: the slot is this much longer than the bolt is wide, and the strike this much longer than its slot, mm
 *  (common practice, no source). */
export const SLOT_END_PLAY = 2;
export const STRIKE_ENDS = 16;
/** Below the fully extended tip, and behind that, mm (common practice, no source). */
export const SLOT_BOTTOM_PLAY = 1;
export const STRIKE_WEB = 2;
/** The strike reaches at least this far up the flap, mm (common practice, no source). */
export const STRIKE_GRIP = 6;
/** A guide's bore is this much wider than its bolt, mm (common practice, no source). */
export const GUIDE_PLAY = 0.4;

/** One magnet in its pocket. */
export interface Pocket {
  readonly on: "flap" | "frame";
  /** Bored from this face. */
  readonly face: "left edge" | "right edge" | "bottom edge" | "left jamb" | "right jamb" | "sill";
  /** Middle of the magnet's working face, mm. */
  readonly x: number;
  readonly y: number;
  /** The way the working face looks, towards its partner: x or y of a unit vector. */
  readonly looks: readonly [x: number, y: number];
  readonly diameter: number;
  readonly thickness: number;
  /** From the surface bored to the working face, mm; negative: the magnet stands proud. */
  readonly recess: number;
  /** Depth of the pocket from the surface bored, mm; 0 where the magnet sits on the surface. */
  readonly depth: number;
  /** The pole that shows when one looks into the pocket. */
  readonly shows: Pole;
  /** Places of a facing pair carry the same number, from 1. */
  readonly pair: number;
}

/** A block around a pocket where the flap is too thin for it: a cheek glued to either face of the flap, flush with its edge. */
export interface Cheek {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Of one cheek; there are two. */
  readonly thickness: number;
}

export interface StrikePlan {
  /** What carries the slot; the bolt is on the other. */
  readonly on: "flap" | "frame";
  /** Slot's mouth, and the strike's far side, mm below the hinge axis. */
  readonly mouth: number;
  readonly back: number;
  /** Along the width. */
  readonly length: number;
  readonly slotLength: number;
  /** Along the swing. */
  readonly halfThickness: number;
  readonly slotWidth: number;
  readonly slotDepth: number;
  /** Middle of the slot, mm towards outdoors. */
  readonly z: number;
  /** The flap's own edge is thick enough to carry the slot: no block of its own. */
  readonly inFlap: boolean;
}

export interface BoltPlan {
  readonly on: "flap" | "frame";
  /** +1 the tip points up (towards −y), −1 down. */
  readonly points: 1 | -1;
  readonly width: number;
  /** Tip below the hinge axis: withdrawn, at the slot's mouth, at least engagement, fully extended. */
  readonly withdrawn: number;
  readonly mouth: number;
  readonly engaged: number;
  readonly extended: number;
  readonly stroke: number;
  readonly guideBore: number;
  readonly z: number;
}

export interface DoorPlan {
  readonly flap: {
    readonly half: number;
    readonly top: number;
    readonly bottom: number;
    readonly thickness: number;
  };
  readonly opening: {
    readonly half: number;
    /** Below the hinge axis; negative is above it. */
    readonly top: number;
    readonly sill: number;
    /** Floor below the hinge axis. */
    readonly floor: number;
  };
  readonly pockets: readonly Pocket[];
  readonly cheeks: readonly Cheek[];
  readonly strike: StrikePlan | null;
  readonly bolt: BoltPlan | null;
  /** Cut out of the flap's lower edge for strike or bolt. */
  readonly notch: { readonly half: number; readonly top: number } | null;
}

/** The plan of a valid door. */
export function doorPlan(door: Door): DoorPlan {
  const { flap, opening } = door;
  const bottom = mm(flap.hingeOffset + flap.height);
  const sill = bottom + mm(flap.bottomClearance);
  const frame = {
    half: mm(opening.width) / 2,
    top: sill - mm(opening.height),
    sill,
    floor: sill + mm(opening.sillHeight),
  };
  const pockets = door.magnets === null ? [] : pocketsOf(door.magnets, flap, frame.half, bottom, sill);
  const latch = door.latch === null ? null : latchPlan(door, door.latch, bottom);
  return {
    flap: {
      half: mm(flap.width) / 2,
      top: mm(flap.hingeOffset),
      bottom,
      thickness: mm(flap.thickness),
    },
    opening: frame,
    pockets,
    cheeks: cheeksOf(pockets, mm(flap.thickness), mm(flap.width) / 2, bottom),
    strike: latch?.strike ?? null,
    bolt: latch?.bolt ?? null,
    notch: latch?.notch ?? null,
  };
}

function pocketsOf(
  magnets: Magnets,
  flap: Flap,
  openingHalf: number,
  bottom: number,
  sill: number,
): Pocket[] {
  return magnets.arrangement === "jamb"
    ? jambPockets(magnets, mm(flap.width) / 2, openingHalf)
    : sillPockets(magnets, mm(flap.width), bottom, sill);
}

/** The gap's middle is the middle of the room beside the flap (choice made here): both magnets are recessed alike. */
function jambPockets(magnets: Magnets, flapHalf: number, openingHalf: number): Pocket[] {
  const middle = (flapHalf + openingHalf) / 2;
  const recess = (mm(magnets.gap) - (openingHalf - flapHalf)) / 2;
  const sides: readonly (1 | -1)[] = magnets.sides === 1 ? [1] : [1, -1];
  let pair = 0;
  return magnetRows(magnets).flatMap((distance, row) =>
    sides.flatMap((side) => {
      pair++;
      const poles = facingPoles(magnets, row);
      const name = side === 1 ? "right" : "left";
      const at = (share: number) => side * (middle + (share * mm(magnets.gap)) / 2);
      const disc = discOf(magnets, recess);
      return [
        pocket(disc, "flap", `${name} edge`, [at(-1), mm(distance)], [side, 0], poles.flap, pair),
        pocket(disc, "frame", `${name} jamb`, [at(1), mm(distance)], [-side, 0], poles.frame, pair),
      ];
    }),
  );
}

function sillPockets(magnets: Magnets, width: number, bottom: number, sill: number): Pocket[] {
  const flapFace = mm(magnets.distanceFromHinge);
  const sillFace = flapFace + mm(magnets.gap);
  const poles = facingPoles(magnets, 0);
  return sillPlaces(magnets.sides, width).flatMap((x, i) => [
    pocket(
      discOf(magnets, bottom - flapFace),
      "flap",
      "bottom edge",
      [x, flapFace],
      [0, 1],
      poles.flap,
      i + 1,
    ),
    pocket(discOf(magnets, sillFace - sill), "frame", "sill", [x, sillFace], [0, -1], poles.frame, i + 1),
  ]);
}

type Disc = Pick<Pocket, "diameter" | "thickness" | "recess" | "depth">;

function discOf(magnets: Magnets, recess: number): Disc {
  const thickness = mm(magnets.thickness);
  return { diameter: mm(magnets.diameter), thickness, recess, depth: Math.max(0, thickness + recess) };
}

function pocket(
  disc: Disc,
  on: Pocket["on"],
  face: Pocket["face"],
  [x, y]: readonly [number, number],
  looks: readonly [number, number],
  shows: Pole,
  pair: number,
): Pocket {
  return { ...disc, on, face, x, y, looks, shows, pair };
}

/** Cheeks where the flap is thinner than a pocket and a wall on either side of it; none on a flap that takes the pocket itself. */
function cheeksOf(pockets: readonly Pocket[], thickness: number, half: number, bottom: number): Cheek[] {
  const own = pockets.filter(({ on }) => on === "flap");
  if (own.length === 0) return [];
  const missing = own[0].diameter + 2 * POCKET_WALL - thickness;
  if (missing <= 1e-9) return [];
  const each = Math.ceil(missing / 2 - 1e-9);
  const rim = own[0].diameter / 2 + POCKET_WALL;
  const deep = own[0].depth + POCKET_WALL;
  if (own[0].face === "bottom edge") {
    return own.map(({ x }) => ({
      left: x - rim,
      right: x + rim,
      top: bottom - deep,
      bottom,
      thickness: each,
    }));
  }
  return [1, -1].flatMap((side) => {
    const rows = own.filter(({ looks }) => looks[0] === side).map(({ y }) => y);
    if (rows.length === 0) return [];
    const edges = [side * half, side * (half - deep)].sort((a, b) => a - b);
    return [
      {
        left: edges[0],
        right: edges[1],
        top: Math.min(...rows) - rim,
        bottom: Math.min(bottom, Math.max(...rows) + rim),
        thickness: each,
      },
    ];
  });
}

interface LatchPlan {
  readonly strike: StrikePlan;
  readonly bolt: BoltPlan;
  readonly notch: DoorPlan["notch"];
}

/** A bolt that points up stands in the sill under a strike on the flap; one that points down hangs on the flap above a strike on the sill. */
function latchPlan(door: Door, latch: Latch, flapBottom: number): LatchPlan {
  const up = latch.boltPoints === "up";
  const way = up ? -1 : 1;
  const stroke = mm(door.solenoid?.stroke ?? latch.tipGap + latch.engagement);
  const mouth = mm(latch.distanceFromHinge);
  const [gap, engagement, width] = [mm(latch.tipGap), mm(latch.engagement), mm(latch.boltWidth)];
  const bolt: BoltPlan = {
    on: up ? "frame" : "flap",
    points: up ? 1 : -1,
    width,
    withdrawn: mouth - way * gap,
    mouth,
    engaged: mouth + way * engagement,
    extended: mouth + way * (stroke - gap),
    stroke,
    guideBore: width + GUIDE_PLAY,
    z: up ? mm(latch.offset) : 0,
  };
  const slotDepth = Math.max(stroke - gap, engagement) + SLOT_BOTTOM_PLAY;
  const length = width + SLOT_END_PLAY + STRIKE_ENDS;
  const grip = Math.min(mouth - slotDepth - STRIKE_WEB, flapBottom - STRIKE_GRIP);
  const back = up ? Math.max(mm(door.flap.hingeOffset), grip) : mouth + slotDepth + STRIKE_WEB;
  const strike: StrikePlan = {
    on: up ? "flap" : "frame",
    mouth,
    back,
    length,
    slotLength: width + SLOT_END_PLAY,
    halfThickness: mm(latch.edgeHalfWidth),
    slotWidth: mm(latch.slotWidth),
    slotDepth,
    z: up ? 0 : mm(latch.offset),
    inFlap: up && 2 * latch.edgeHalfWidth <= door.flap.thickness + 1e-9 && mouth <= flapBottom + 1e-9,
  };
  return { strike, bolt, notch: up && !strike.inFlap ? { half: length / 2, top: back } : null };
}
