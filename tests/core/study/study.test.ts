import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { si } from "../../../core/quantity/brands.ts";
import { compute, relatchAt } from "../../../core/review/compute.ts";
import { lowerBound } from "../../../core/study/binomial.ts";
import { requestFaults } from "../../../core/study/request.ts";
import { runStudy } from "../../../core/study/study.ts";
import { whyNone } from "../../../core/study/study-words.ts";
import { referenceDoor } from "../doors.ts";
import { changed, withoutSpread, withTolerances } from "./doors.ts";

const NO_CAUSES = {
  "cannot work": 0,
  "rests outside": 0,
  "under the animal": 0,
  stuck: 0,
  "shut out": 0,
};

function withReliability(door: Door, reliability: number): Door {
  return { ...door, study: { ...door.study, reliability: si(reliability) } };
}

const PLAIN = withReliability(referenceDoor("01-plain"), 0.9);

describe("a study in which nothing spreads", () => {
  test.each(["01-plain", "28-ride-out", "08-sill-two", "20-family"])(
    "is the relatch of the door at every hold: %s",
    (name) => {
      const reference = referenceDoor(name);
      const door = withoutSpread({ ...reference, animals: reference.animals.slice(-1) });
      const study = runStudy({ door, samples: 20, seed: 3 });
      const computed = compute(door);
      let compared = 0;
      for (const [setting, probability] of study.curve) {
        const around = [-2e-3, 0, 2e-3].map((by) => {
          const at = relatchAt(
            door,
            computed,
            computed.governing,
            computed.trace,
            setting + by,
            computed.solenoid,
          );
          return at?.outcome === "caught" ? 1 : 0;
        });
        if (new Set(around).size > 1) continue;
        expect(probability, `at ${setting} s`).toBe(around[0]);
        compared++;
      }
      expect(compared).toBeGreaterThan(3);
    },
  );

  test("names the cause of the relatch at the timer's nominal", () => {
    for (const [name, cause] of [
      ["25-hold-stuck", "stuck"],
      ["26-hold-shut-out", "shut out"],
      ["27-hold-under", "under the animal"],
    ] as const) {
      const door = withoutSpread(referenceDoor(name));
      const study = runStudy({ door, samples: 10, seed: 1 });
      expect(study.recommended).toBeNull();
      expect(study.causes[cause], name).toBe(1);
    }
  });

  test("settles when the door does, in every quantile", () => {
    const door = withoutSpread(PLAIN);
    const settle = compute(door).governing.swing.settleTime ?? Number.NaN;
    const study = runStudy({ door, samples: 20, seed: 3 });
    for (const time of Object.values(study.settle)) expect(time).toBeCloseTo(settle, 3);
  });
});

describe("a study of a door that settles", () => {
  const study = runStudy({ door: PLAIN, samples: 1200, seed: 1 });

  test("recommends a hold whose bound is at the target, there and on to the curve's end", () => {
    const { recommended, probability, lowerBound: bound, curve } = study;
    if (recommended === null || probability === null || bound === null) throw new Error(`${study.whyNone}`);
    expect(bound).toBeGreaterThanOrEqual(0.9);
    expect(bound).toBeCloseTo(lowerBound(Math.round(probability * 1200), 1200), 12);
    for (const [setting, , lower] of curve)
      if (setting >= recommended) expect(lower).toBeGreaterThanOrEqual(0.9);
    const before = curve.filter(([setting]) => setting < recommended - 0.06);
    expect(before.some(([, , lower]) => lower < 0.9)).toBe(true);
  });

  test("counts every sample that is not caught once", () => {
    const sum = Object.values(study.causes).reduce((total, share) => total + share, 0);
    expect(sum).toBeCloseTo(1 - (study.probability ?? Number.NaN), 12);
    expect(study.causesAt).toBe(study.recommended);
    expect(study.whyNone).toBeNull();
  });

  test("starts at nothing, under the animal, and ends where all have come to rest", () => {
    expect(study.curve[0]).toEqual([0, 0, 0]);
    const [, last] = study.curve.at(-1) ?? [0, 0];
    expect(last).toBeCloseTo(1 - study.causes["rests outside"], 2);
  });

  test("is the same again from the same seed, and another from another", () => {
    expect(runStudy({ door: PLAIN, samples: 1200, seed: 1 })).toEqual(study);
    const other = runStudy({ door: PLAIN, samples: 1200, seed: 2 });
    expect(other.curve).not.toEqual(study.curve);
  });

  test("survives doubling its samples within its own bound", () => {
    const double = runStudy({ door: PLAIN, samples: 2400, seed: 77 });
    const at = study.recommended ?? Number.NaN;
    const there = double.curve.filter(([setting]) => setting <= at).at(-1);
    expect(there?.[1]).toBeGreaterThanOrEqual(study.lowerBound ?? 1);
    expect(Math.abs((double.recommended ?? Number.NaN) - at)).toBeLessThan(1);
  });

  test("names friction as what drives the settle time, and errors small against it", () => {
    const [first] = study.drivers;
    expect(first.key).toBe("hinge.frictionTorque");
    expect(first.measure).toMatch(
      /^total Sobol' index of .*448 scrambled Sobol' points and 28 pairs per input$/,
    );
    expect(first.value).toBeGreaterThan(0.2);
    expect(first.error).toBeGreaterThan(0);
    expect(first.error).toBeLessThan(0.2);
    const { alone } = first;
    if (alone === null || alone.error === null) throw new Error("no first-order index");
    expect(alone.measure).toMatch(/^first-order Sobol' index/);
    expect(alone.value).toBeGreaterThan(0.2);
    expect(alone.value - 2 * alone.error).toBeLessThanOrEqual(first.value);
    expect(alone.error).toBeLessThan(0.1);
    // No input accounts for more than all there is, nor for less than nothing by more than its error.
    for (const { value, error } of study.drivers) {
      expect(value).toBeLessThanOrEqual(1);
      expect(value).toBeGreaterThanOrEqual(-4 * (error ?? 0));
    }
    expect(study.holdDrivers.map(({ key }) => key).slice(0, 5)).toContain("timer.capacitor");
  });

  test("says beside the number what it mixes", () => {
    expect(study.notes[0]).toContain("from door to door");
  });
});

test("two directions that differ are drawn evenly", () => {
  const leaning = withTolerances(changed(withoutSpread(PLAIN), { "opening.outOfPlumb": 0.01 }), {
    ...Object.fromEntries(withoutSpread(PLAIN).study.tolerances),
    "opening.outOfPlumb": { shape: "normal", twoSigma: 0, relative: true },
    "latch.offset": { shape: "normal", twoSigma: 0, relative: true },
  });
  const study = runStudy({ door: leaning, samples: 400, seed: 5 });
  const times = new Set([study.settle["5"], study.settle["95"]]);
  expect(times.size).toBe(2);
  expect(study.drivers[0].key).toBe("passage.direction");
});

describe("too few samples", () => {
  test("recommend nothing and say how many are needed", () => {
    const study = runStudy({ door: withReliability(PLAIN, 0.999), samples: 200, seed: 1 });
    expect(study.recommended).toBeNull();
    expect(study.samplesNeeded).toBe(2995);
    expect(study.whyNone).toContain("2995");
    expect(study.causesAt).toBe(12);
  });

  test("that catch more than the target but prove less say how many more", () => {
    const none = { reliability: 0.95, samples: 1200, causes: NO_CAUSES, causesAt: 12 };
    const words = whyNone({ ...none, caughtAtEnd: 1148 });
    const asked = Number(/about (\d+) are needed/.exec(words)?.[1]);
    const share = 1148 / 1200;
    expect(lowerBound(share * asked, asked)).toBeGreaterThanOrEqual(0.95);
    expect(lowerBound(0.9 * share * asked, 0.9 * asked)).toBeLessThan(0.95);
    expect(whyNone({ ...none, caughtAtEnd: 1100 })).toMatch(/^No hold will do/);
  });
});

describe("a door for which no hold will do", () => {
  test("says why, with the causes at the timer's nominal", () => {
    const study = runStudy({
      door: withReliability(referenceDoor("14-strong-seal"), 0.9),
      samples: 100,
      seed: 1,
    });
    expect(study.recommended).toBeNull();
    expect(study.probability).toBeNull();
    expect(study.causes["rests outside"]).toBeGreaterThan(0.5);
    expect(study.whyNone).toContain("No hold will do");
    expect(study.whyNone).toContain("rests outside");
    expect(study.settle["99"]).toBeNull();
  });

  test("counts a latch that cannot work as made", () => {
    const door = withTolerances(PLAIN, {
      "latch.slotWidth": { shape: "uniform", low: -10e-3, high: 0, relative: false },
    });
    const study = runStudy({ door, samples: 200, seed: 1 });
    const { boltWidth, slotWidth } = door.latch ?? { boltWidth: 0, slotWidth: 0 };
    const share = (boltWidth - (slotWidth - 10e-3)) / 10e-3;
    expect(Math.abs(study.causes["cannot work"] - share)).toBeLessThan(5 * Math.sqrt(0.25 / 200));
  });
});

describe("several animals", () => {
  const study = runStudy({ door: referenceDoor("20-family"), samples: 900, seed: 1 });

  test("are drawn evenly and answered for one by one", () => {
    expect(study.animals.map(({ name }) => name)).toEqual(["Thimble", "Biscuit", "Mossy"]);
    for (const { samples } of study.animals) expect(Math.abs(samples - 300)).toBeLessThan(80);
    expect(study.animals.reduce((sum, { samples }) => sum + samples, 0)).toBe(900);
  });

  test("name the worst, which needs no shorter hold than the mixture", () => {
    const worst = study.animals[study.worst ?? 0];
    expect(worst.recommended ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(study.recommended ?? 0);
    expect(study.notes.some((note) => note.includes(worst.name))).toBe(true);
  });
});

describe("what a study refuses", () => {
  test("is a door without a latch, no samples, half a seed, each with what would be right", () => {
    const faults = requestFaults({ door: referenceDoor("02-bare"), samples: 0, seed: 0.5 });
    expect(faults.map(({ path }) => path)).toEqual(["samples", "seed", "latch"]);
    expect(requestFaults({ door: PLAIN, samples: 20_000, seed: 1 })).toEqual([]);
  });
});
