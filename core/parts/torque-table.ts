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
  const size = Math.abs(angle);
  const fineEnd = table.fineWidth * table.fineCells;
  const fine = size < fineEnd;
  const scaled = fine ? size / table.fineWidth : (size - fineEnd) / table.coarseWidth;
  const local = Math.floor(scaled);
  const cell = fine ? local : table.fineCells + local;
  if (cell >= table.fineCells + table.coarseCells) return 0;
  const u = scaled - local;
  const c = table.torque;
  const i = cell * COEFFICIENTS_PER_CELL;
  const value = c[i] + u * (c[i + 1] + u * (c[i + 2] + u * (c[i + 3] + u * (c[i + 4] + u * c[i + 5]))));
  return angle < 0 ? -value : value;
}

/** Magnetic energy at an angle less that at θ = 0, J: minus the integral of the torque. Constant beyond the table. */
export function tableEnergy(table: TorqueTable, angle: number): number {
  const size = Math.abs(angle);
  const fineEnd = table.fineWidth * table.fineCells;
  const fine = size < fineEnd;
  const width = fine ? table.fineWidth : table.coarseWidth;
  const scaled = fine ? size / width : (size - fineEnd) / width;
  const local = Math.floor(scaled);
  const cell = fine ? local : table.fineCells + local;
  const cells = table.fineCells + table.coarseCells;
  if (cell >= cells) return table.energy[cells];
  const u = scaled - local;
  const c = table.torque;
  const i = cell * COEFFICIENTS_PER_CELL;
  let integral = 0;
  for (let k = COEFFICIENTS_PER_CELL - 1; k >= 0; k--) {
    integral = integral * u + c[i + k] / (k + 1);
  }
  return table.energy[cell] - width * u * integral;
}
