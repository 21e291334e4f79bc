import { expect, test } from "vitest";
import type { Timer } from "../../../core/door/door.ts";
import { oneShotTime } from "../../../core/parts/timer.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { measuredHold } from "../../../renderer/state/trial-hold.ts";

const TIMER = { holdTime: 10, retriggers: true, resistorTolerance: 0.01, capacitorTolerance: 0.05 };
const bare = { ...TIMER, resistor: null, capacitor: null } as unknown as Timer;
const parts = { ...TIMER, resistor: 910e3, capacitor: 10e-6 } as unknown as Timer;

test("within the stopwatch's error nothing is changed", () => {
  expect(measuredHold(bare, 10, 10.25)).toEqual([]);
  expect(measuredHold(bare, 10, 9.75)).toEqual([]);
});

test("another hold is written as measured; with R and C the capacitor gives just that hold", () => {
  expect(measuredHold(bare, 10, 11.4)).toEqual([{ path: "timer.holdTime", entry: "11.4 s" }]);
  const [hold, capacitor] = measuredHold(parts, 10, 11.4);
  expect(hold).toEqual({ path: "timer.holdTime", entry: "11.4 s" });
  expect(capacitor.path).toBe("timer.capacitor");
  const read = parseQuantity(String(capacitor.entry), "capacitance");
  expect(read.ok && oneShotTime(910e3, read.value)).toBeCloseTo(11.4, 2);
});
