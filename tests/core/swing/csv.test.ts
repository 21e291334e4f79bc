import { expect, test } from "vitest";
import { traceCsv } from "../../../core/swing/csv.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";
import { exampleText } from "../example.ts";

test("every number reads back to its last bit, under the command line's headings", () => {
  const made = prepare(exampleText("cat"), "metric");
  if (!made.ok) throw new Error("the example does not read");
  const { swing } = viewAt(made.prepared, null, 1);
  const [head, ...rows] = traceCsv(swing).trimEnd().split("\n");
  expect(head).toBe("time_s,angle_rad,speed_rad_per_s");
  expect(rows).toHaveLength(swing.time.length);
  rows.forEach((row, i) => {
    expect(row.split(",").map(Number)).toEqual([swing.time[i], swing.angle[i], swing.speed[i]]);
  });
});
