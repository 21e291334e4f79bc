/**
 * Sizes that the picture needs and a door does not state: how thick the wall is, how wide its trim. Assumptions for drawing
 * only, all in metres; nothing is computed from them.
 */
export const WALL = {
  plaster: 0.012,
  core: 0.06,
  cladding: 0.018,
  /** Least wall shown beside and above the opening. */
  margin: 0.16,
} as const;

export const WALL_DEPTH = WALL.plaster + WALL.core + WALL.cladding;
/** Indoor and outdoor face of the wall; the hinge axis is in its middle. */
export const INDOOR_FACE = -WALL_DEPTH / 2;
export const OUTDOOR_FACE = WALL_DEPTH / 2;

export const FRAME = {
  /** Thickness of the boards that line the opening. */
  liner: 0.018,
  casingWidth: 0.042,
  casingThickness: 0.01,
  /** How far the sill board stands out on either side. */
  nosing: 0.016,
  /** Depth of the rail that fills the opening above the hinge. */
  railDepth: 0.044,
} as const;

export const FLOOR = { boards: 0.02, slab: 0.035 } as const;

export const SKIRTING = { height: 0.075, thickness: 0.012 } as const;

/** Steel, for the size of a weight of given mass, kg/m³ (handbook value, from memory). */
export const STEEL_DENSITY = 7850;
