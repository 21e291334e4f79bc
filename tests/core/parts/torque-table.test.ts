import { describe, expect, test } from "vitest";
import { torqueTable } from "../../../core/parts/magnet-family.ts";
import {
  COEFFICIENTS_PER_CELL,
  fillCells,
  lookUpTable,
  newTorqueTable,
  type TorqueTable,
  tableEnergy,
  tableExtreme,
  tableSlope,
  tableTorque,
} from "../../../core/parts/torque-table.ts";
import { gauss } from "./hankel.ts";
import { magnets } from "./magnet-doors.ts";

/** An odd quintic, which the table must hold exactly: −(x − 2 x³ + x⁵) on 0…1.4. Turning points at x² = 1/5 and 1. */
const torque = (x: number) => -(x - 2 * x ** 3 + x ** 5);
const slope = (x: number) => -(1 - 6 * x ** 2 + 5 * x ** 4);
const curvature = (x: number) => -(-12 * x + 20 * x ** 3);
const energy = (x: number) => x ** 2 / 2 - x ** 4 / 2 + x ** 6 / 6;

function quinticTable(scale = 1): TorqueTable {
  const table = newTorqueTable({ fineWidth: 0.2, fineCells: 3, coarseWidth: 0.4, coarseCells: 2 });
  const knots = [0, 0.2, 0.4, 0.6, 1, 1.4].flatMap((x) => [torque(x), slope(x), curvature(x)]);
  fillCells(table, Float64Array.from(knots), scale);
  return table;
}

describe("a torque table", () => {
  test("holds a quintic exactly, odd, with its slope and its energy", () => {
    const table = quinticTable(3);
    for (let x = -1.39; x < 1.4; x += 0.0173) {
      expect(tableTorque(table, x)).toBeCloseTo(3 * torque(x), 13);
      expect(tableSlope(table, x)).toBeCloseTo(3 * slope(x), 12);
      expect(tableEnergy(table, x)).toBeCloseTo(3 * energy(x), 13);
    }
  });

  test("looked up at many angles in one go it says the same, with torques or without", () => {
    const table = quinticTable(3);
    const angles = Float64Array.from({ length: 61 }, (_, i) => (i - 30) * 0.0531);
    const [energies, alone] = [new Float64Array(61), new Float64Array(61)];
    const torques = { torque: new Float64Array(61), slope: new Float64Array(61) };
    lookUpTable(table, angles, energies, torques);
    lookUpTable(table, angles, alone, null);
    angles.forEach((angle, i) => {
      expect(energies[i]).toBeCloseTo(tableEnergy(table, angle), 15);
      expect(alone[i]).toBe(energies[i]);
      expect(torques.torque[i]).toBeCloseTo(tableTorque(table, angle), 15);
      expect(torques.slope[i]).toBeCloseTo(tableSlope(table, angle), 14);
    });
  });

  test("is 0 beyond its end, its energy constant", () => {
    const table = quinticTable();
    expect(tableTorque(table, 1.5)).toBe(0);
    expect(tableTorque(table, -1.5)).toBeCloseTo(0, 15);
    expect(tableSlope(table, 1.5)).toBe(0);
    expect(tableEnergy(table, -1.5)).toBeCloseTo(energy(1.4), 13);
    expect(tableEnergy(table, 1e9)).toBe(tableEnergy(table, 1.5));
  });

  test("names the greatest torque of each sign", () => {
    const table = quinticTable();
    const back = tableExtreme(table, -1, 1.05);
    expect(back.angle).toBeCloseTo(Math.sqrt(0.2), 7);
    expect(back.magnitude).toBeCloseTo(-torque(Math.sqrt(0.2)), 14);
    expect(tableExtreme(table, -1, 0.3)).toEqual({ magnitude: expect.closeTo(-torque(0.3), 14), angle: 0.3 });
    expect(tableExtreme(table, -1, 1.3).angle).toBeCloseTo(1.3, 12);
    expect(tableExtreme(table, 1, 0.9)).toEqual({ magnitude: 0, angle: 0 });
  });
});

describe("a magnets' table", () => {
  const table = torqueTable(magnets({ perSide: 2, polarity: "alternating" }), 1.7);
  const cells = table.fineCells + table.coarseCells;
  const widthOf = (cell: number) => (cell < table.fineCells ? table.fineWidth : table.coarseWidth);

  /** Value, slope and curvature of a cell at one of its ends. */
  function atEnd(cell: number, u: number): number[] {
    const c = table.torque.subarray(cell * COEFFICIENTS_PER_CELL, (cell + 1) * COEFFICIENTS_PER_CELL);
    const power = (k: number) => (k === 0 ? 1 : u ** k);
    const sum = (factor: (k: number) => number, down: number) =>
      c.reduce((total, value, k) => total + (k < down ? 0 : factor(k) * value * power(k - down)), 0);
    const h = widthOf(cell);
    return [sum(() => 1, 0), sum((k) => k, 1) / h, sum((k) => k * (k - 1), 2) / (h * h)];
  }

  test("has continuous torque, slope and curvature from cell to cell", () => {
    const greatest = [0, 1, 2].map((k) =>
      Math.max(...Array.from({ length: cells }, (_, cell) => Math.abs(atEnd(cell, 0)[k]))),
    );
    for (let cell = 1; cell < cells; cell++) {
      const [before, after] = [atEnd(cell - 1, 1), atEnd(cell, 0)];
      before.forEach((value, k) => {
        expect(Math.abs(value - after[k])).toBeLessThan(1e-11 * greatest[k]);
      });
    }
  });

  test("is odd through the centre: no torque, no curvature there", () => {
    expect(atEnd(0, 0)[0]).toBe(0);
    expect(atEnd(0, 0)[2]).toBe(0);
  });

  test("has as energy exactly minus the integral of its torque", () => {
    const scale = Math.max(...Array.from(table.energy, Math.abs));
    let [angle, work] = [0, 0];
    for (let cell = 0; cell < cells; cell++) {
      const end = angle + widthOf(cell) * (1 - 1e-12);
      work -= gauss((x) => tableTorque(table, x), angle, end, 1);
      angle += widthOf(cell);
      expect(Math.abs(table.energy[cell + 1] - work)).toBeLessThan(1e-11 * scale);
      expect(Math.abs(tableEnergy(table, end) - work)).toBeLessThan(1e-11 * scale);
    }
  });
});
