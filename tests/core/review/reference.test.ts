/**
 * Every result and the relatch of 38 doors against a second implementation of the model, written in Python from the model
 * page alone (tests/reference/model). The tolerances are those its README gives, each with its reason there.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import { RESULTS, resultValues } from "../../../core/review/results.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";

interface Expected {
  readonly results: Readonly<Record<string, number | null>>;
  readonly relatch: { holdEnds: number; outcome: string; time: number; energy: number } | null;
  readonly restSets: readonly (readonly [number, number])[];
}

const EXPECTED: Readonly<Record<string, Expected>> = JSON.parse(
  readFileSync(new URL("../../reference/model/expected.json", import.meta.url), "utf8"),
);

/** Largest allowed difference from a reference value. */
function allowed(name: string, value: number, { results }: Expected): number {
  const relative = (share: number, least = 1e-12) => Math.max(share * Math.abs(value), least);
  const magnets = results["magnets.peakTorque"] !== null;
  if (name.startsWith("energy.")) return 1e-5 * Math.max(Math.abs(results["energy.initial"] ?? 0), 1e-3);
  if (/^(swing\.(settle|rest)Time|hold\.)/.test(name)) return relative(magnets ? 1e-4 : 2e-6, 1e-6);
  if (name === "swing.restAngle") return magnets ? 1e-5 : 1e-7;
  if (name === "swing.deadBand") return relative(2e-4, 1e-8);
  if (name === "magnets.peakAngle") return relative(2e-3);
  if (/^magnets\.|^push\.force|^wind\./.test(name)) return relative(2e-4);
  if (name === "solenoid.holdTemperature") return relative(1e-6);
  return relative(1e-9);
}

describe("every result of a door against the second implementation", () => {
  test.each(REFERENCE_DOORS)("%s", (file) => {
    const expected = EXPECTED[`${file}.door.json`];
    const computed = compute(referenceDoor(file));
    const values = resultValues(computed);
    expect(Object.keys(expected.results).sort()).toEqual(RESULTS.map((r) => r.name).sort());
    for (const [name, reference] of Object.entries(expected.results)) {
      const { value } = values[name];
      if (reference === null || value === null) expect([name, value]).toEqual([name, reference]);
      else {
        const far = Math.abs(value - reference) / allowed(name, reference, expected);
        expect([name, value, far <= 1 ? "near" : reference]).toEqual([name, value, "near"]);
      }
    }
    for (const name of ["swing.releaseAngle", "swing.centrePasses"]) {
      expect(values[name].value).toBeCloseTo(expected.results[name] ?? Number.NaN, 9);
    }
    compareRelatch(expected, computed.relatch);
    compareSets(expected, computed.restSets);
  });
});

function compareRelatch(expected: Expected, relatch: ReturnType<typeof compute>["relatch"]): void {
  if (expected.relatch === null || relatch === null) {
    expect(relatch).toEqual(expected.relatch);
    return;
  }
  expect(relatch.outcome).toBe(expected.relatch.outcome);
  expect(relatch.holdEnds).toBeCloseTo(expected.relatch.holdEnds, 9);
  expect(Math.abs(relatch.time - expected.relatch.time)).toBeLessThan(1e-4);
  const initial = Math.abs(expected.results["energy.initial"] ?? 0);
  expect(Math.abs(relatch.energy - expected.relatch.energy)).toBeLessThan(1e-4 * initial + 1e-12);
}

function compareSets(expected: Expected, sets: readonly { low: number; high: number }[]): void {
  expect(sets).toHaveLength(expected.restSets.length);
  sets.forEach((set, i) => {
    expect(Math.abs(set.low - expected.restSets[i][0])).toBeLessThan(1e-6);
    expect(Math.abs(set.high - expected.restSets[i][1])).toBeLessThan(1e-6);
  });
}
