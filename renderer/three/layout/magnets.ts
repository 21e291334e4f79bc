/** The centring magnets at their true places and sizes, with the pole each shows to its partner. */
import type { Door, Flap, Magnets } from "../../../core/door/door.ts";
import { facingPoles, type Pole, sillPlaces } from "../../../core/parts/magnet-places.ts";
import { magnetRows } from "../../../core/parts/magnets.ts";
import { type Axis, type Box, box, type Vec3 } from "./solids.ts";

export type { Pole };

export interface Disc {
  readonly centre: Vec3;
  readonly axis: Axis;
  readonly radius: number;
  readonly thickness: number;
  /** Along the axis, towards the partner. */
  readonly towards: 1 | -1;
  /** The pole on the face towards the partner. */
  readonly pole: Pole;
}

export interface MagnetLayout {
  /** Flap frame. */
  readonly onFlap: readonly Disc[];
  /** World frame. */
  readonly onFrame: readonly Disc[];
  /** What holds the flap's discs where they are thicker than the plate, flap frame. */
  readonly carriers: readonly Box[];
}

export function magnetLayout(door: Door, hingeHeight: number): MagnetLayout | null {
  const { magnets, flap, opening } = door;
  if (magnets === null) return null;
  return magnets.arrangement === "jamb"
    ? jambLayout(magnets, flap, opening.width, hingeHeight)
    : sillLayout(magnets, flap, hingeHeight);
}

/** Discs in the flap's side edges; the gap's middle is the middle of the room beside the flap. */
function jambLayout(magnets: Magnets, flap: Flap, openingWidth: number, hingeHeight: number): MagnetLayout {
  const between = (flap.width + openingWidth) / 4;
  const face = magnets.gap / 2;
  const { thickness, diameter } = magnets;
  const sides: (1 | -1)[] = magnets.sides === 1 ? [1] : [1, -1];
  const disc = (x: number, y: number, towards: 1 | -1, pole: Pole): Disc => ({
    centre: [x, y, 0],
    axis: "x",
    radius: diameter / 2,
    thickness,
    towards,
    pole,
  });
  const rows = magnetRows(magnets).flatMap((distance, row) =>
    sides.map((side) => ({ distance, side, poles: facingPoles(magnets, row) })),
  );
  return {
    onFlap: rows.map(({ distance, side, poles }) =>
      disc(side * (between - face - thickness / 2), -distance, side, poles.flap),
    ),
    onFrame: rows.map(({ distance, side, poles }) =>
      disc(side * (between + face + thickness / 2), hingeHeight - distance, side === 1 ? -1 : 1, poles.frame),
    ),
    carriers: sides.map((side) => jambCarrier(magnets, flap, side, between - face)),
  };
}

/** A block around one side's discs, flush with their faces. */
function jambCarrier(magnets: Magnets, flap: Flap, side: 1 | -1, face: number): Box {
  const rim = magnets.diameter / 2 + CARRIER_RIM;
  const rows = magnetRows(magnets);
  const inner = Math.min(face - magnets.thickness, flap.width / 2) - CARRIER_RIM;
  const half = Math.max(rim, flap.thickness / 2 + 0.0005);
  return box([side * inner, side * face], [-rows[0] - rim, -rows[rows.length - 1] + rim], [-half, half]);
}

const CARRIER_RIM = 0.002;

function sillLayout(magnets: Magnets, flap: Flap, hingeHeight: number): MagnetLayout {
  const { thickness, diameter, distanceFromHinge, gap } = magnets;
  const places = sillPlaces(magnets.sides, flap.width);
  const poles = facingPoles(magnets, 0);
  const disc = (x: number, y: number, towards: 1 | -1, pole: Pole): Disc => ({
    centre: [x, y, 0],
    axis: "y",
    radius: diameter / 2,
    thickness,
    towards,
    pole,
  });
  const rim = diameter / 2 + CARRIER_RIM;
  const half = Math.max(rim, flap.thickness / 2 + 0.0005);
  return {
    onFlap: places.map((x) => disc(x, -distanceFromHinge + thickness / 2, -1, poles.flap)),
    onFrame: places.map((x) =>
      disc(x, hingeHeight - distanceFromHinge - gap - thickness / 2, 1, poles.frame),
    ),
    carriers: places.map((x) =>
      box(
        [x - rim, x + rim],
        [-distanceFromHinge, -distanceFromHinge + thickness + CARRIER_RIM],
        [-half, half],
      ),
    ),
  };
}
