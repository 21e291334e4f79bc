import { describe, expect, test } from "vitest";
import {
  baseCurrent,
  baseResistorFor,
  driveCircuit,
  driverResult,
  switchDissipation,
} from "../../../core/parts/driver.ts";
import { si } from "../../../core/quantity/brands.ts";
import { darlington, mosfet } from "./plain-parts.ts";

describe("a Darlington", () => {
  test("takes its drop off the supply and adds no resistance", () => {
    expect(driveCircuit(darlington, 24)).toEqual({ voltage: 22.8, resistance: 0, drop: 1.2 });
  });

  test("leaves nothing of a supply below its drop", () => {
    expect(driveCircuit(darlington, 1).voltage).toBe(0);
  });

  test("heats by drop times current", () => {
    expect(driverResult(darlington, 24, 0.114).dissipation).toBeCloseTo(0.1368, 12);
  });

  test("is overdriven by base current over I/h_FE", () => {
    const result = driverResult(darlington, 24, 0.114);
    expect(result.baseCurrent).toBeCloseTo(1.9e-3, 12);
    expect(result.neededBaseCurrent).toBeCloseTo(0.114e-3, 12);
    expect(result.overdrive).toBeCloseTo(1.9e-3 / 0.114e-3, 9);
  });

  test("gets no base current below its base-emitter voltage, and no overdrive figure without a coil current", () => {
    expect(baseCurrent(1.2, 1.4, 1000)).toBe(0);
    expect(driverResult(darlington, 1, 0).overdrive).toBeNull();
  });

  test("with the suggested base resistor has just the asked overdrive", () => {
    const baseResistor = baseResistorFor(darlington, 0.114);
    const result = driverResult({ ...darlington, baseResistor: si(baseResistor ?? 0) }, 24, 0.114);
    expect(result.overdrive).toBeCloseTo(2, 12);
    expect(baseResistorFor({ ...darlington, driveVoltage: si(1.4) }, 0.114)).toBeNull();
    expect(baseResistorFor(darlington, 0)).toBeNull();
  });
});

describe("a MOSFET", () => {
  test("puts its on-resistance in series and drops no fixed voltage", () => {
    expect(driveCircuit(mosfet, 24)).toEqual({ voltage: 24, resistance: 0.5, drop: 0 });
  });

  test("heats by I² R_on", () => {
    expect(switchDissipation(driveCircuit(mosfet, 24), 0.2)).toBeCloseTo(0.02, 12);
  });

  test("has no base to drive", () => {
    expect(driverResult(mosfet, 24, 0.1)).toMatchObject({
      baseCurrent: null,
      neededBaseCurrent: null,
      overdrive: null,
    });
    expect(baseResistorFor(mosfet, 0.1)).toBeNull();
  });
});
