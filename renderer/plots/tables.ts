/** The figures' numbers as comma-separated text in SI units, for the clipboard. */
import { traceCsv } from "../../core/swing/csv.ts";
import type { DoorView } from "../state/view.ts";

export type TableName = "angle" | "phase" | "energy" | "torque";

/** Header and rows, full precision, a line feed at each end. */
export function csv(columns: Readonly<Record<string, ArrayLike<number>>>): string {
  const names = Object.keys(columns);
  const values = Object.values(columns);
  const rows = [names.join(",")];
  for (let i = 0; i < (values[0]?.length ?? 0); i++) rows.push(values.map((column) => column[i]).join(","));
  return `${rows.join("\n")}\n`;
}

/** What a figure shows, as numbers. */
export function figureTable({ swing, torques }: DoorView, name: TableName): string {
  const { time, energy } = swing;
  if (name === "energy") {
    const { left, hinge, viscous, seal, air, stops } = energy;
    return csv({
      time_s: time,
      left_J: left,
      hinge_J: hinge,
      viscous_J: viscous,
      seal_J: seal,
      air_J: air,
      stops_J: stops,
    });
  }
  if (name === "torque") {
    return csv({
      angle_rad: torques.angle,
      gravity_Nm: torques.gravity,
      magnets_Nm: torques.magnets,
      air_Nm: torques.air,
      friction_Nm: torques.friction,
    });
  }
  return traceCsv(swing);
}
