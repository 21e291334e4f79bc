/** The swing as a table: columns and their order are those of the command line's `swing --csv`. */
import type { SwingColumns } from "../state/view.ts";

export function traceCsv({ time, angle, speed }: Pick<SwingColumns, "time" | "angle" | "speed">): string {
  const rows = ["time_s,angle_rad,speed_rad_per_s"];
  for (let i = 0; i < time.length; i++) rows.push(`${time[i]},${angle[i]},${speed[i]}`);
  return `${rows.join("\n")}\n`;
}
