/** A magnet table of the medium-dog example: filled from its family, built whole, and integrated directly at as many angles. */
import {
  emptyTable,
  fillTorqueTable,
  gapRange,
  torqueFamily,
  torqueTable,
} from "../../core/parts/magnet-family.ts";
import { magnetTorque } from "../../core/parts/magnets.ts";
import { mediumDog } from "./swing-bench.ts";
import { report, timedTogether } from "./timing.ts";

export function magnetBench(): void {
  const door = mediumDog();
  const { magnets, hinge } = door;
  if (magnets === null) throw new Error("the example has no magnets");
  const family = torqueFamily(magnets, hinge.stopAngle, gapRange(magnets.gap, 0.25e-3));
  const table = emptyTable(family);
  const gap = magnets.gap * 1.01;
  const cells = table.fineCells + table.coarseCells;
  const angles = Array.from({ length: cells * 3 }, (_, i) => (i / (cells * 3)) * hinge.stopAngle);
  const [fill, build, direct] = timedTogether([
    () => fillTorqueTable(family, gap, magnets.remanence, magnets.temperature, table),
    () => torqueTable(magnets, hinge.stopAngle),
    () => {
      for (const angle of angles) magnetTorque(magnets, angle);
    },
  ]);
  report("one magnet table, rebuilt for a sample", "a table built whole", fill, build);
  report(
    "one magnet table, rebuilt for a sample",
    `direct integration at its ${angles.length} knot values`,
    fill,
    direct,
  );
}
