import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fieldAt, isNumeric, numericPaths } from "../../../core/door/index.ts";
import { counted } from "../../../core/quantity/format.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { compute } from "../../../core/review/compute.ts";
import { findings } from "../../../core/review/findings.ts";
import { resultValues } from "../../../core/review/results.ts";
import { entry } from "../../../core/review/suggest-round.ts";
import { entryText, figureText, listed, side, words } from "../../../core/review/words.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { goodWith } from "./doors.ts";

const METRIC = words("metric");
const INCH = words("inch");

describe("figures", () => {
  test("in a builder's units, either system", () => {
    expect([METRIC.length(0.0031), INCH.length(0.0254)]).toEqual(["3.1 mm", "1 in"]);
    expect([METRIC.angle(Math.PI / 180), INCH.angle(Math.PI / 180)]).toEqual(["1°", "1°"]);
    expect([METRIC.temperature(130), INCH.temperature(130)]).toEqual(["130 °C", "266 °F"]);
    expect([METRIC.energy(0.0136), METRIC.energy(0.5), METRIC.energy(-0.002)]).toEqual([
      "13.6 mJ",
      "0.5 J",
      "-2 mJ",
    ]);
    expect([METRIC.power(0.137), METRIC.power(1.2e-9)]).toEqual(["0.137 W", "0 W"]);
    expect(METRIC.angle(1e-18)).toBe("0°");
  });

  test("two that differ never read the same", () => {
    expect(METRIC.pair(0.011001, 0.011002, "angle")).toEqual(["0.6303°", "0.6304°"]);
    expect(METRIC.pair(5, 5, "force")).toEqual(["5 N", "5 N"]);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 1e-6, max: 1, noNaN: true }),
        (a, part) => {
          const [one, other] = METRIC.pair(a, a * (1 + part), "force");
          expect(one).not.toBe(other);
        },
      ),
    );
  });

  test("results' own units", () => {
    expect(figureText(null, "s", METRIC)).toBe("none");
    expect(figureText(0.018126723, "kg m^2", METRIC)).toBe("0.01813 kg m²");
    expect(figureText(1140.3, "kG^2 mm^2", METRIC)).toBe("1140 kG² mm²");
    expect(figureText(31, "1", METRIC)).toBe("31");
    expect(figureText(0.5, "N m/rad", METRIC)).toBe("500 mN m/rad");
  });

  test("lists, counts and sides", () => {
    expect([listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"], "or")]).toEqual([
      "a",
      "a and b",
      "a, b or c",
    ]);
    expect([counted(1, "pulse"), counted(3, "pulse")]).toEqual(["1 pulse", "3 pulses"]);
    expect([side(-1), side(0.2)]).toEqual(["indoors", "outdoors"]);
  });
});

describe("entries", () => {
  test("inches in fractions where they are, decimals where not", () => {
    expect(entryText("magnets.gap", 0.0254 * (9 / 64), "inch")).toBe("9/64 in");
    expect(entryText("magnets.gap", 0.0031, "inch")).toBe("0.122047 in");
    expect(entryText("latch.frictionCoefficient", 0.15, "inch")).toBe("0.15");
    expect(() => entryText("driver.kind", 1, "metric")).toThrow(/driver\.kind/);
  });

  /** Temperatures are not rounded: nothing suggests one, and their scales have other noughts. */
  const paths = numericPaths().filter((path) => {
    const field = fieldAt(path);
    const pull = path.startsWith("solenoid.pull");
    return field?.kind === "quantity" && field.dimension !== "temperature" && !pull;
  });
  const read = (path: string, text: string): number => {
    const field = fieldAt(path);
    if (!isNumeric(field) || field.kind !== "quantity") throw new Error(path);
    const parsed = parseQuantity(text, field.dimension);
    if (!parsed.ok) throw new Error(`${text}: ${parsed.problem}`);
    return parsed.value;
  };

  test("what is rounded to the safe side reads back on it, within a step", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...paths),
        fc.double({ min: 0.002, max: 50, noNaN: true }),
        fc.constantFrom("metric" as const, "inch" as const),
        (path, value, system) => {
          const up = read(path, entry(path, value, "up", system).text);
          const down = read(path, entry(path, value, "down", system).text);
          // an entry has six digits: half of the last is at most five millionths of it
          const slack = 6e-6 * value;
          expect(
            up,
            `${path} ${value} ${system} ${entry(path, value, "up", system).text}`,
          ).toBeGreaterThanOrEqual(value - slack);
          expect(down).toBeLessThanOrEqual(value + slack);
          expect(up - down).toBeLessThanOrEqual(Math.max(0.25 * value, 0.55));
        },
      ),
      { numRuns: 400 },
    );
  });
});

/** Findings and the results whose figure their sentence must carry, in the very words. */
const CARRIED: readonly (readonly [string, string])[] = [
  ["swing.settles", "swing.settleTime"],
  ["swing.settles", "swing.restTime"],
  ["push.comfort", "push.limit"],
  ["swing.dead-band", "swing.deadBand"],
  ["wind.gust", "wind.gustSpeed"],
  ["latch.bolt-rises", "latch.boltRiseTime"],
  ["hold.enough", "timer.nominal"],
  ["hold.needless", "hold.setting"],
  ["coil.heat", "solenoid.continuousTemperature"],
  ["coil.touch", "solenoid.continuousTemperature"],
  ["coil.release", "solenoid.releaseTime"],
  ["driver.heat", "driver.dissipation"],
  ["supply.regulator-heat", "regulator.temperature"],
  ["supply.regulator-heat", "regulator.dissipation"],
  ["supply.current", "supply.current"],
  ["timer.parts", "timer.shortest"],
  ["timer.parts", "timer.longest"],
  ["detection.arrival", "passage.arrivalTime"],
  ["magnets.centring", "magnets.peakTorque"],
  ["magnets.hinge-load", "magnets.axialForce"],
];

const UNIT_WORDS: Readonly<
  Record<string, "time" | "force" | "angle" | "speed" | "temperature" | "current" | "torque" | "power">
> = {
  s: "time",
  N: "force",
  rad: "angle",
  "m/s": "speed",
  degC: "temperature",
  A: "current",
  "N m": "torque",
  W: "power",
};

test.each([...REFERENCE_DOORS.filter((name) => !name.startsWith("20")), "good"])(
  "sentences carry the results' own figures: %s",
  (name) => {
    const computed = compute(name === "good" ? goodWith({}) : referenceDoor(name));
    const values = resultValues(computed);
    for (const w of [METRIC, INCH]) {
      const said = new Map(findings(computed, w).map((f) => [f.id, f.message]));
      for (const [id, result] of CARRIED) {
        const message = said.get(id);
        const { value, unit } = values[result];
        if (message === undefined || value === null) continue;
        expect(message, `${id}: ${result}`).toContain(
          w[UNIT_WORDS[unit]](Math.abs(value))
            .split(" ")[0]
            .replace(/\.?\d$|°$/, ""),
        );
      }
    }
  },
);
