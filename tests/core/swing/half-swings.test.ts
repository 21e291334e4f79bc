import { describe, expect, test } from "vitest";
import { HalfSwings } from "../../../core/swing/half-swings.ts";

describe("half swings", () => {
  test("with dry friction and viscous damping the next way follows exactly from three", () => {
    const half = new HalfSwings();
    // Each way is the last times a constant less a constant (Thomson, Theory of Vibration, ch. 2: both dampings together).
    const next = (way: number) => 0.9 * way - 0.02;
    let way = 1;
    for (let i = 0; i < 3; i++) {
      half.add(way, 0.1 * way * way);
      way = next(way);
    }
    expect(half.nextWay()).toBeCloseTo(way, 12);
    expect(half.nextLossShare(way)).toBeCloseTo((way / (way / 0.9 + 0.02 / 0.9)) ** 2, 12);
  });

  test("without any nothing is told, and a guess never grows wild", () => {
    const half = new HalfSwings();
    expect(half.nextWay()).toBe(0);
    half.add(1, 0.1);
    expect(half.nextWay()).toBeCloseTo(0.9, 15);
    half.add(0.1, 0.001);
    half.add(3, 0.9);
    expect(half.nextWay()).toBeLessThanOrEqual(3.6);
    half.forget();
    expect(half.nextWay()).toBe(0);
  });
});
