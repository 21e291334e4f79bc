import { expect, test } from "vitest";
import { measuredCoil } from "../../../renderer/state/trial-coil.ts";

test("what the thermometer could have shown anyway changes nothing", () => {
  expect(measuredCoil({ hot: 58, measured: 60, resistance: 15.8 })).toEqual([]);
  expect(measuredCoil({ hot: 58, measured: 70, resistance: null })).toEqual([]);
});

test("else the thermal resistance is the one that was measured", () => {
  expect(measuredCoil({ hot: 58, measured: 70, resistance: 19.7234 })).toEqual([
    { path: "solenoid.thermalResistance", entry: "19.7 K/W" },
  ]);
});
