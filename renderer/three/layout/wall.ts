/** The piece of wall around the opening, in layers from indoors to outdoors, and the floor on either side. */
import type { Door } from "../../../core/door/door.ts";
import { FLOOR, FRAME, INDOOR_FACE, OUTDOOR_FACE, SKIRTING, WALL } from "./assumptions.ts";
import { type Box, box, clamp } from "./solids.ts";

/** A rectangle in x and y. */
export interface Face {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** One thickness of one stuff with the opening through it, and where it has one the latch's pocket below that. */
export interface WallLayer {
  readonly face: Face;
  readonly hole: Face;
  /** Within the hole's width, its top at the hole's bottom. */
  readonly pocket: Face | null;
  readonly z: readonly [number, number];
}

export interface WallLayout {
  readonly plaster: readonly WallLayer[];
  readonly core: readonly WallLayer[];
  readonly cladding: readonly WallLayer[];
  readonly skirting: readonly Box[];
  /** Over the latch's pocket, on the indoor face; `null` without one. */
  readonly cover: Box | null;
  /** Whole wall, without the floor. */
  readonly bounds: Box;
  readonly indoorFloor: Box;
  readonly outdoorFloor: Box;
  readonly slab: Box;
}

/** Top of the clear opening above the floor: as stated, or higher where the hinge would not go below it. */
export function openingTop(door: Door, hingeTop: number): number {
  return Math.max(door.opening.sillHeight + door.opening.height, hingeTop);
}

/** How far the floor goes on either side: room for the longest animal and for the swinging flap. */
export function floorDepth(door: Door, reach: number): number {
  const longest = Math.max(...door.animals.map((animal) => animal.bodyLength));
  return clamp(longest + reach * 0.9, 0.55, 2.2);
}

export function wallLayout(door: Door, reach: number, top: number, pocket: Box | null): WallLayout {
  const half = door.opening.width / 2;
  const side = half + Math.max(WALL.margin, 0.75 * door.opening.width);
  const height = top + Math.max(WALL.margin, 0.28 * top);
  const { liner } = FRAME;
  const face: Face = { x: [-side, side], y: [0, height] };
  const bottom = Math.max(SEAM, door.opening.sillHeight - liner);
  const hole: Face = { x: [-half - liner, half + liner], y: [bottom, top + liner] };
  const inner = INDOOR_FACE + WALL.plaster;
  const outer = OUTDOOR_FACE - WALL.cladding;
  const layer = (from: number, to: number) => layers(face, hole, [from, to], pocket);
  const depth = floorDepth(door, reach);
  return {
    plaster: layer(INDOOR_FACE, inner),
    core: layer(inner, outer),
    cladding: layer(outer, OUTDOOR_FACE),
    skirting: skirting(half + FRAME.casingWidth, side),
    cover: pocket === null || bottom <= 4 * SEAM ? null : coverOf(pocket, bottom),
    bounds: box([-side, side], [0, height], [INDOOR_FACE, OUTDOOR_FACE]),
    indoorFloor: box([-side, side], [-FLOOR.boards, 0], [INDOOR_FACE - depth, 0]),
    outdoorFloor: box([-side, side], [-FLOOR.boards, 0], [0, OUTDOOR_FACE + depth]),
    slab: box(
      [-side, side],
      [-FLOOR.boards - FLOOR.slab, -FLOOR.boards],
      [INDOOR_FACE - depth, OUTDOOR_FACE + depth],
    ),
  };
}

/** Least height of wall left at its foot, m: too thin to be seen. */
const SEAM = 0.0005;

/** One stuff of the wall: whole, or where the latch's pocket ends within it, in two thicknesses. */
function layers(face: Face, hole: Face, z: readonly [number, number], pocket: Box | null): WallLayer[] {
  const whole: WallLayer = { face, hole, pocket: null, z };
  if (pocket === null || pocket.max[2] <= z[0]) return [whole];
  const y: [number, number] = [Math.max(SEAM, pocket.min[1]), hole.y[0]];
  if (y[1] <= y[0]) return [whole];
  const cut: Face = { x: [pocket.min[0], pocket.max[0]], y };
  const end = Math.min(z[1], pocket.max[2]);
  const front: WallLayer = { ...whole, pocket: cut, z: [z[0], end] };
  return end < z[1] ? [front, { ...whole, z: [end, z[1]] }] : [front];
}

const COVER = { rim: 0.008, thickness: 0.002 } as const;

function coverOf(pocket: Box, top: number): Box {
  const { rim, thickness } = COVER;
  return box(
    [pocket.min[0] - rim, pocket.max[0] + rim],
    [Math.max(0.002, pocket.min[1] - rim), top],
    [INDOOR_FACE - thickness, INDOOR_FACE],
  );
}

function skirting(from: number, side: number): Box[] {
  const z: [number, number] = [INDOOR_FACE - SKIRTING.thickness, INDOOR_FACE];
  const y: [number, number] = [0, SKIRTING.height];
  return [box([-side, -from], y, z), box([from, side], y, z)];
}

/** The parts of a layer that a plane across the hinge goes through, as boxes of no width in x. */
export function layerBoxes({ face, hole, pocket, z }: WallLayer, x: number): Box[] {
  const within = (one: Face) => x > one.x[0] && x < one.x[1];
  if (!within(face)) return [];
  const part = (y: readonly [number, number]) => box([x, x], y, [z[0], z[1]]);
  if (!within(hole)) return [part(face.y)];
  const sill = pocket !== null && within(pocket) ? pocket.y[0] : hole.y[0];
  const above = part([hole.y[1], face.y[1]]);
  return sill > 2 * SEAM ? [part([face.y[0], sill]), above] : [above];
}
