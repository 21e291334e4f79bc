/** The boards that line the opening, their casing on either face, the sill and the rail that carries the hinge. */
import type { Door } from "../../../core/door/door.ts";
import { FRAME, INDOOR_FACE, OUTDOOR_FACE } from "./assumptions.ts";
import { type Box, box, grained, type Rod, rod } from "./solids.ts";

export interface FrameLayout {
  readonly boards: readonly Box[];
  readonly casing: readonly Box[];
  readonly sill: Box;
  /** Between the hinge and the top of the opening. */
  readonly rail: Box | null;
  /** One on either face of the wall: whether the coil is driven. */
  readonly lamps: readonly Rod[];
}

const LAMP = { radius: 0.0055, length: 0.009 } as const;

export function frameLayout(door: Door, top: number, hingeTop: number): FrameLayout {
  const half = door.opening.width / 2;
  const sillTop = door.opening.sillHeight;
  const { liner, casingWidth, casingThickness, nosing, railDepth } = FRAME;
  const z: [number, number] = [INDOOR_FACE, OUTDOOR_FACE];
  const boards = [
    grained(box([-half - liner, -half], [sillTop, top], z), "y"),
    grained(box([half, half + liner], [sillTop, top], z), "y"),
    grained(box([-half - liner, half + liner], [top, top + liner], z), "x"),
  ];
  const outward: [number, number][] = [
    [INDOOR_FACE - casingThickness, INDOOR_FACE],
    [OUTDOOR_FACE, OUTDOOR_FACE + casingThickness],
  ];
  const casing = outward.flatMap((face) => casingOf(half, sillTop - liner, top, casingWidth, face));
  const sillZ: [number, number] = [
    INDOOR_FACE - casingThickness - nosing,
    OUTDOOR_FACE + casingThickness + nosing,
  ];
  const sillSide = half + casingWidth + 0.008;
  return {
    boards,
    casing,
    sill: grained(box([-sillSide, sillSide], [sillTop - liner, sillTop], sillZ), "x"),
    rail:
      top - hingeTop > 0.001
        ? grained(box([-half, half], [hingeTop, top], [-railDepth / 2, railDepth / 2]), "x")
        : null,
    lamps: outward.map(([inner, outer], i) =>
      rod("z", [0, top + casingWidth / 2, i === 0 ? inner : outer], LAMP.radius, LAMP.length),
    ),
  };
}

function casingOf(half: number, bottom: number, top: number, width: number, z: [number, number]): Box[] {
  return [
    grained(box([-half - width, -half], [bottom, top], z), "y"),
    grained(box([half, half + width], [bottom, top], z), "y"),
    grained(box([-half - width, half + width], [top, top + width], z), "x"),
  ];
}
