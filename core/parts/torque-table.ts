/**
 * The magnets' torque on the flap as data: piecewise quintics with continuous first and second derivative,
 * on |θ| from 0 to the end of the coarse zone. The torque is odd in θ and the energy even, so one side is kept.
 * The swing's inner loop reads the arrays directly; everyone else calls the functions here.
 */

/** Coefficients per cell: torque = Σ c[k] u^k, k = 0…5, u from 0 to 1 across the cell. */
export const COEFFICIENTS_PER_CELL = 6;

export interface TorqueTable {
  /** Cell width of the fine zone (next to the centre), rad. */
  readonly fineWidth: number;
  readonly fineCells: number;
  /** Cell width of the coarse zone that follows it, rad. */
  readonly coarseWidth: number;
  readonly coarseCells: number;
  /** Torque in N m, positive towards outdoors, for θ ≥ 0: (fine + coarse) × 6 coefficients. */
  readonly torque: Float64Array;
  /** Energy at the start of each cell less the energy at θ = 0, J; one more entry for the end of the last cell. */
  readonly energy: Float64Array;
}

/** Torque of the magnets at an angle, N m; 0 beyond the table. Sign: negative at θ > 0 pulls back to the centre. */
export function tableTorque(table: TorqueTable, angle: number): number {
  const place = placeOf(table, Math.abs(angle));
  if (!(place < table.fineCells + table.coarseCells)) return 0;
  const cell = Math.trunc(place);
  const value = cellValue(table.torque, cell * COEFFICIENTS_PER_CELL, place - cell);
  return angle < 0 ? -value : value;
}

/** Magnetic energy at an angle less that at θ = 0, J: minus the integral of the torque. Constant beyond the table. */
export function tableEnergy(table: TorqueTable, angle: number): number {
  const place = placeOf(table, Math.abs(angle));
  const cells = table.fineCells + table.coarseCells;
  if (!(place < cells)) return table.energy[cells];
  const cell = Math.trunc(place);
  const width = cell < table.fineCells ? table.fineWidth : table.coarseWidth;
  return table.energy[cell] - width * cellIntegral(table.torque, cell * COEFFICIENTS_PER_CELL, place - cell);
}

/** Slope of the torque at an angle, N m/rad (even in θ); 0 beyond the table. */
export function tableSlope(table: TorqueTable, angle: number): number {
  const place = placeOf(table, Math.abs(angle));
  if (!(place < table.fineCells + table.coarseCells)) return 0;
  const cell = Math.trunc(place);
  const width = cell < table.fineCells ? table.fineWidth : table.coarseWidth;
  return cellSlope(table.torque, cell * COEFFICIENTS_PER_CELL, place - cell) / width;
}

/** Torques and their slopes that go with energies at the same angles. */
export interface TorquesToFill {
  readonly torque: Float64Array;
  readonly slope: Float64Array;
}

/** What `tableEnergy` and, where asked for, `tableTorque` and `tableSlope` give at many angles, in one go. */
export function lookUpTable(
  table: TorqueTable,
  angles: Float64Array,
  energies: Float64Array,
  torques: TorquesToFill | null,
): void {
  const { torque: c, energy, fineCells, fineWidth, coarseWidth } = table;
  const cells = fineCells + table.coarseCells;
  for (let k = 0; k < angles.length; k++) {
    const angle = angles[k];
    const place = placeOf(table, Math.abs(angle));
    const inside = place < cells;
    const cell = inside ? Math.trunc(place) : cells - 1;
    const width = cell < fineCells ? fineWidth : coarseWidth;
    const i = cell * COEFFICIENTS_PER_CELL;
    const u = inside ? place - cell : 1;
    energies[k] = energy[cell] - width * cellIntegral(c, i, u);
    if (torques === null) continue;
    const torque = inside ? cellValue(c, i, u) : 0;
    torques.torque[k] = angle < 0 ? -torque : torque;
    torques.slope[k] = inside ? cellSlope(c, i, u) / width : 0;
  }
}

/** The cell an angle ≥ 0 is in, and as its fraction how far across. */
function placeOf(table: TorqueTable, size: number): number {
  const fine = size / table.fineWidth;
  if (fine < table.fineCells) return fine;
  return table.fineCells + (size - table.fineWidth * table.fineCells) / table.coarseWidth;
}

/** Value of the quintic whose coefficients start at `i`. */
function cellValue(c: Float64Array, i: number, u: number): number {
  return c[i] + u * (c[i + 1] + u * (c[i + 2] + u * (c[i + 3] + u * (c[i + 4] + u * c[i + 5]))));
}

/** Its derivative with respect to u. */
function cellSlope(c: Float64Array, i: number, u: number): number {
  return c[i + 1] + u * (2 * c[i + 2] + u * (3 * c[i + 3] + u * (4 * c[i + 4] + u * 5 * c[i + 5])));
}

/** Its integral from 0 to u. */
function cellIntegral(c: Float64Array, i: number, u: number): number {
  const inner = c[i + 2] * (1 / 3) + u * (0.25 * c[i + 3] + u * (0.2 * c[i + 4] + u * c[i + 5] * (1 / 6)));
  return u * (c[i] + u * (0.5 * c[i + 1] + u * inner));
}

/** Values per knot that `fillCells` takes: torque, slope, curvature. */
export const KNOT_VALUES = 3;

/** A table of zeros with the given cells. */
export function newTorqueTable(
  cells: Pick<TorqueTable, "fineWidth" | "fineCells" | "coarseWidth" | "coarseCells">,
): TorqueTable {
  const { fineWidth, fineCells, coarseWidth, coarseCells } = cells;
  const count = fineCells + coarseCells;
  return {
    fineWidth,
    fineCells,
    coarseWidth,
    coarseCells,
    torque: new Float64Array(count * COEFFICIENTS_PER_CELL),
    energy: new Float64Array(count + 1),
  };
}

/**
 * Fills a table's arrays with the quintics through the knots' torques, slopes and curvatures (each times `scale`),
 * and with the energies that are exactly minus their integrals.
 */
export function fillCells(table: TorqueTable, knots: Float64Array, scale: number): void {
  const cells = table.fineCells + table.coarseCells;
  const { torque: c, energy } = table;
  energy[0] = 0;
  for (let cell = 0; cell < cells; cell++) {
    const h = cell < table.fineCells ? table.fineWidth : table.coarseWidth;
    const k = cell * KNOT_VALUES;
    const c0 = scale * knots[k];
    const c1 = scale * h * knots[k + 1];
    const c2 = 0.5 * scale * h * h * knots[k + 2];
    // What the cubic and higher terms must add at u = 1: to value, slope and curvature.
    const value = scale * knots[k + 3] - c0 - c1 - c2;
    const slope = scale * h * knots[k + 4] - c1 - 2 * c2;
    const curvature = scale * h * h * knots[k + 5] - 2 * c2;
    const i = cell * COEFFICIENTS_PER_CELL;
    c[i] = c0;
    c[i + 1] = c1;
    c[i + 2] = c2;
    c[i + 3] = 10 * value - 4 * slope + 0.5 * curvature;
    c[i + 4] = -15 * value + 7 * slope - curvature;
    c[i + 5] = 6 * value - 3 * slope + 0.5 * curvature;
    energy[cell + 1] = energy[cell] - h * cellIntegral(c, i, 1);
  }
}

export interface TorqueExtreme {
  /** N m, at least 0. */
  readonly magnitude: number;
  /** rad, at least 0; 0 where no torque has the asked sign. */
  readonly angle: number;
}

/** Parts of a cell looked at for a turning point: its quintic has at most four. */
const PARTS = 4;

/** Place in u where the derivative goes through 0 between two places where its signs differ, by bisection. */
function turningPoint(c: Float64Array, i: number, from: number, to: number): number {
  const rising = cellSlope(c, i, from) > 0;
  let [low, high] = [from, to];
  for (let step = 0; step < 52; step++) {
    const middle = 0.5 * (low + high);
    if (cellSlope(c, i, middle) > 0 === rising) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/**
 * The greatest torque of one sign at angles from 0 to `limit`: sign −1 the greatest that pulls back to the centre,
 * +1 the greatest that pushes away from it. At a turning point of the table's own quintics, or at the limit.
 */
export function tableExtreme(table: TorqueTable, sign: 1 | -1, limit: number): TorqueExtreme {
  const c = table.torque;
  let best: TorqueExtreme = { magnitude: 0, angle: 0 };
  const offer = (i: number, u: number, angle: number) => {
    const magnitude = sign * cellValue(c, i, u);
    if (magnitude > best.magnitude) best = { magnitude, angle };
  };
  const cells = table.fineCells + table.coarseCells;
  for (let cell = 0; cell < cells; cell++) {
    const past = cell - table.fineCells;
    const width = past < 0 ? table.fineWidth : table.coarseWidth;
    const start = past < 0 ? cell * width : table.fineCells * table.fineWidth + past * width;
    const end = Math.min(1, (limit - start) / width);
    if (end <= 0) break;
    const i = cell * COEFFICIENTS_PER_CELL;
    for (let part = 0; part < PARTS; part++) {
      const [from, to] = [(end * part) / PARTS, (end * (part + 1)) / PARTS];
      if (cellSlope(c, i, from) > 0 !== cellSlope(c, i, to) > 0) {
        const u = turningPoint(c, i, from, to);
        offer(i, u, start + u * width);
      }
    }
    offer(i, end, start + end * width);
  }
  return best;
}
