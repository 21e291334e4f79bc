import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Magnets } from "../../../core/door/door.ts";
import {
  emptyTable,
  fillTorqueTable,
  gapRange,
  torqueFamily,
  torqueTable,
} from "../../../core/parts/magnet-family.ts";
import { magnetTorque } from "../../../core/parts/magnets.ts";
import { type TorqueTable, tableTorque } from "../../../core/parts/torque-table.ts";
import { anyMagnets, magnets } from "./magnet-doors.ts";

const STOP = (100 * Math.PI) / 180;
/** Angles crowded towards the centre, where the torque turns. */
const ANGLES = Array.from({ length: 120 }, (_, i) => STOP * ((i + 0.37) / 120) ** 3);

/** Greatest error against direct integration, as a share of the greatest torque met. */
function errorOf(table: TorqueTable, m: Magnets): number {
  const truth = ANGLES.map((angle) => magnetTorque(m, angle));
  const peak = Math.max(...truth.map(Math.abs));
  return Math.max(...truth.map((torque, i) => Math.abs(tableTorque(table, ANGLES[i]) - torque))) / peak;
}

describe("the table of a door's magnets", () => {
  test("is the direct integral to 10⁻⁷ of the peak", () => {
    fc.assert(
      fc.property(anyMagnets, (m) => {
        expect(errorOf(torqueTable(m, STOP), m)).toBeLessThan(1.1e-7);
      }),
      { numRuns: 25 },
    );
  });

  test("reaches past the stop, never past half a turn", () => {
    for (const stop of [0.2, STOP, 3.1]) {
      const t = torqueTable(magnets(), stop);
      const end = t.fineCells * t.fineWidth + t.coarseCells * t.coarseWidth;
      expect(end).toBeGreaterThan(stop);
      expect(end).toBeLessThan(Math.PI + 1e-9);
    }
  });

  test("of an ordinary door has some hundred cells", () => {
    const t = torqueTable(
      magnets({ diameter: 0.008, thickness: 0.004, gap: 0.006, distanceFromHinge: 0.35 }),
      STOP,
    );
    expect(t.fineCells + t.coarseCells).toBeLessThan(110);
  });

  test.each([
    { gap: 1e-7 },
    { gap: 1e-7, arrangement: "sill" },
    { gap: 2, thickness: 1e-4 },
    { gap: 2, thickness: 1e-4, arrangement: "sill" },
    { remanence: 1e-9 },
    { temperature: 3000 },
    { distanceFromHinge: 0.0051, arrangement: "sill" },
    { perSide: 12, pitch: 0.0249, force: "repel", polarity: "alternating" },
  ])("is numbers all through for magnets at the edge: %o", (over) => {
    const t = torqueTable(magnets(over), STOP);
    expect([...t.torque, ...t.energy].every(Number.isFinite)).toBe(true);
    expect(t.fineCells + t.coarseCells).toBeLessThan(5000);
  });

  test("is the same, bit for bit, the second time", () => {
    expect(torqueTable(magnets(), STOP)).toEqual(torqueTable(magnets(), STOP));
  });
});

describe("a family of tables", () => {
  test("gives each gap's torque to 10⁻⁶ of its peak", () => {
    fc.assert(
      fc.property(anyMagnets, fc.double({ min: 0.02, max: 0.12, noNaN: true }), (m, spread) => {
        const range = gapRange(m.gap, spread * m.gap);
        const family = torqueFamily(m, STOP, range);
        const table = emptyTable(family);
        for (const share of [0, 0.13, 0.5, 0.71, 1]) {
          const gap = range.low + share * (range.high - range.low);
          fillTorqueTable(family, gap, m.remanence, m.temperature, table);
          expect(errorOf(table, { ...m, gap } as Magnets)).toBeLessThan(6e-7);
        }
      }),
      { numRuns: 6 },
    );
  });

  test("is the full build at the nominal gap, remanence and temperature", () => {
    const m = magnets({ remanence: 1.19, temperature: 35 });
    const family = torqueFamily(m, STOP, gapRange(m.gap, 0.00025));
    const table = emptyTable(family);
    fillTorqueTable(family, m.gap, m.remanence, m.temperature, table);
    const full = torqueTable(m, STOP);
    const peak = Math.max(...ANGLES.map((angle) => Math.abs(tableTorque(full, angle))));
    for (const angle of ANGLES) {
      expect(Math.abs(tableTorque(table, angle) - tableTorque(full, angle))).toBeLessThan(6e-7 * peak);
    }
  });

  test("covers five standard deviations, down to a quarter of the gap", () => {
    expect(gapRange(0.006, 0.00025)).toEqual({ low: 0.006 - 0.00125, high: 0.006 + 0.00125 });
    expect(gapRange(0.001, 0.00025).low).toBe(0.00025);
  });

  test("integrates anew outside its range", () => {
    const m = magnets({ gap: 0.004 });
    const family = torqueFamily(m, STOP, { low: 0.0035, high: 0.0045 });
    const table = emptyTable(family);
    for (const gap of [0.0025, 0.009]) {
      fillTorqueTable(family, gap, m.remanence, 20, table);
      expect(errorOf(table, magnets({ gap }))).toBeLessThan(3e-6);
    }
  });

  test("goes with the square of the remanence at its temperature", () => {
    const family = torqueFamily(magnets(), STOP, gapRange(0.003, 0.0002));
    const [one, other] = [emptyTable(family), emptyTable(family)];
    fillTorqueTable(family, 0.0031, 1, 20, one);
    fillTorqueTable(family, 0.0031, 1.3, 45, other);
    const share = (1.3 * (1 - 0.0011 * 25)) ** 2;
    one.torque.forEach((c, i) => {
      expect(other.torque[i]).toBeCloseTo(share * c, 12);
    });
  });

  test("of one gap only is that gap's", () => {
    const m = magnets();
    const family = torqueFamily(m, STOP, { low: m.gap, high: m.gap });
    const table = emptyTable(family);
    fillTorqueTable(family, m.gap, m.remanence, m.temperature, table);
    expect(family.points.length).toBe(1);
    expect(errorOf(table, m)).toBeLessThan(6e-7);
  });
});
