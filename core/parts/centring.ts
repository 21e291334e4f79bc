/** The centring magnets as the rest of the door sees them: a torque table for the swing and the figures for people. */
import type { Magnets } from "../door/door.ts";
import { torqueTable } from "./magnet-family.ts";
import { type MagnetResults, magnetResults } from "./magnets.ts";
import type { TorqueTable } from "./torque-table.ts";

export interface Centring {
  readonly table: TorqueTable;
  readonly figures: MagnetResults;
}

/** Table and figures of an arrangement, for a flap that swings to ±`stopAngle`, rad. */
export function centring(magnets: Magnets, stopAngle: number): Centring {
  const table = torqueTable(magnets, stopAngle);
  return { table, figures: magnetResults(magnets, table, stopAngle) };
}
