/** The ledger over time: it closes at every moment, ends with the swing's own figures, and follows closed forms. */
import { describe, expect, test } from "vitest";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import { compute } from "../../../core/review/compute.ts";
import { type LedgerSeries, ledgerSeries } from "../../../core/swing/ledger-series.ts";
import type { Swing } from "../../../core/swing/swing.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { PLAIN, type Plain, pairTable, ran } from "./systems.ts";

const SINKS = ["hinge", "viscous", "seal", "air", "stops", "left"] as const;

function moments(end: number, interval = 1 / 240): number[] {
  return [...Array.from({ length: Math.floor(end / interval) + 1 }, (_, i) => i * interval), end];
}

function imbalances(series: LedgerSeries): number[] {
  return Array.from(
    series.left,
    (_, i) => series.initial - SINKS.reduce((sum, key) => sum + series[key][i], 0),
  );
}

/** The tolerance of the ledger itself: 10⁻⁶ of max(initial, 1 mJ) (model, section 2), and as much again for the second run. */
const allowed = (swing: Swing) => 2e-6 * Math.max(swing.ledger.initial, 1e-3);

describe("the reference doors", () => {
  test.each(REFERENCE_DOORS)("%s: closes at every moment and ends as the swing's ledger does", (name) => {
    const { system, trace, governing } = compute(referenceDoor(name));
    const { swing } = governing;
    const series = ledgerSeries(system, swing.releaseAngle, swing.releaseSpeed, moments(trace.endTime));
    expect(Math.max(...imbalances(series).map(Math.abs))).toBeLessThan(allowed(swing));
    const last = series.left.length - 1;
    for (const key of SINKS) {
      // Door 32 bounces at its stop until 10⁻⁶ rad/s: where the last bounce falls moves its shares by more.
      const within = name.startsWith("32") ? 5 : 1;
      expect(Math.abs(series[key][last] - swing.ledger[key])).toBeLessThan(within * allowed(swing));
    }
  });
});

describe("closed forms", () => {
  function seriesOf(changes: Partial<Plain>, angle: number, times: number[]): LedgerSeries {
    const { system } = ran(changes, angle);
    return ledgerSeries(system, angle, 0, times);
  }

  test("dry friction takes the torque times the way gone", () => {
    const torque = 0.01;
    const { trace, system } = ran({ hinge: torque }, 0.8);
    const series = ledgerSeries(system, 0.8, 0, moments(2));
    let way = 0;
    for (let i = 1; i < series.hinge.length - 1; i++) {
      const state = trace.at(system, (i - 1) / 240, { time: 0, angle: 0, speed: 0 });
      const before = state.angle;
      const turnsHere = state.speed * trace.at(system, i / 240, state).speed < 0;
      way += Math.abs(state.angle - before);
      // A sample's step that hides a turning point is longer than its chord by at most ω dt.
      if (turnsHere) way = series.hinge[i] / torque;
      expect(series.hinge[i] / torque).toBeCloseTo(way, 6);
    }
  });

  test("with nothing to take it, all of the energy is left", () => {
    const series = seriesOf({}, 1, moments(5));
    const initial = PLAIN.firstMoment * STANDARD_GRAVITY * (1 - Math.cos(1));
    expect(series.initial).toBeCloseTo(initial, 12);
    for (const left of series.left) expect(left).toBeCloseTo(initial, 7);
    for (const key of ["hinge", "viscous", "seal", "air", "stops"] as const) {
      expect(Math.max(...series[key])).toBe(0);
    }
  });

  test("sinks only ever fill, wind and pressure aside", () => {
    const series = seriesOf(
      { hinge: 0.003, viscous: 0.004, seal: 0.005, airDensity: 1.2, magnets: pairTable(), stop: 0.9 },
      0.9,
      moments(12),
    );
    for (const key of ["hinge", "viscous", "seal", "air", "stops"] as const) {
      for (let i = 1; i < series[key].length; i++) {
        expect(series[key][i]).toBeGreaterThanOrEqual(series[key][i - 1]);
      }
    }
  });

  test("asked at the start alone, and at nothing", () => {
    expect(seriesOf({ hinge: 0.01 }, 0.5, [0]).hinge[0]).toBe(0);
    expect(seriesOf({ hinge: 0.01 }, 0.5, []).left).toHaveLength(0);
  });
});
