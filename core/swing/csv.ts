/** A sampled swing as comma-separated text: the one form in which command line and app write it and others read it. */
import type { SampledTrace } from "./trace.ts";

/** Columns time_s (after let-go), angle_rad (positive outwards), speed_rad_per_s; full precision, a line feed after each row. */
export function traceCsv({ time, angle, speed }: SampledTrace): string {
  const rows = ["time_s,angle_rad,speed_rad_per_s"];
  for (let i = 0; i < time.length; i++) rows.push(`${time[i]},${angle[i]},${speed[i]}`);
  return `${rows.join("\n")}\n`;
}
