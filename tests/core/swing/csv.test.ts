import { expect, test } from "vitest";
import { traceCsv } from "../../../core/swing/csv.ts";
import { sampleTrace } from "../../../core/swing/trace.ts";
import { ran } from "./systems.ts";

test("every number reads back to its last bit, under the headings of the contract", () => {
  const { trace, system } = ran({ hinge: 0.004, airDensity: 1.2 }, 1.1);
  const swing = sampleTrace(trace, system, trace.endTime, 1 / 240);
  const text = traceCsv(swing);
  expect(text.endsWith("\n")).toBe(true);
  const [head, ...rows] = text.trimEnd().split("\n");
  expect(head).toBe("time_s,angle_rad,speed_rad_per_s");
  expect(rows).toHaveLength(swing.time.length);
  rows.forEach((row, i) => {
    expect(row.split(",").map(Number)).toEqual([swing.time[i], swing.angle[i], swing.speed[i]]);
  });
});

test("a swing of no samples is its headings", () => {
  const none = new Float64Array();
  expect(traceCsv({ time: none, angle: none, speed: none })).toBe("time_s,angle_rad,speed_rad_per_s\n");
});
