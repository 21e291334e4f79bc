import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { PointRun } from "../../../core/study/point-run.ts";
import { countRange, SampleRun } from "../../../core/study/sample-run.ts";
import { SampledDoor } from "../../../core/study/sampled-door.ts";
import { SOBOL_DIMENSIONS } from "../../../core/study/sobol.ts";
import { movedPlace, pointPlan, pointsBefore, StudyPoints } from "../../../core/study/study-points.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { SwingRun } from "../../../core/swing/swing.ts";
import { Trace } from "../../../core/swing/trace.ts";
import { referenceDoor } from "../doors.ts";

const REQUEST = { door: referenceDoor("20-family"), samples: 1000, seed: 3 };

describe("the plan", () => {
  const sizes = [1, 200, 3000, 20_000, 40_000, 10_000_000];

  test("has about a tenth as many points as samples, within bounds, in powers of two", () => {
    expect(sizes.map((samples) => pointPlan({ ...REQUEST, samples }).size)).toEqual([
      64, 64, 64, 256, 512, 1024,
    ]);
  });

  test("costs the default study little: no more swings than an eighth of its samples", () => {
    expect(pointPlan({ ...REQUEST, samples: 20_000 }).count).toBeLessThan(20_000 / 8);
  });

  test("gives every point to one sample, however these are cut into ranges", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e7 }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true })),
        (samples, cuts) => {
          const plan = pointPlan({ ...REQUEST, samples });
          const at = [0, ...cuts.map((cut) => Math.floor(cut * samples)).sort((a, b) => a - b), samples];
          const places = at.map((sample) => pointsBefore(plan, samples, sample));
          expect(places[0]).toBe(0);
          expect(places.at(-1)).toBe(plan.count);
          for (let i = 1; i < places.length; i++) expect(places[i]).toBeGreaterThanOrEqual(places[i - 1]);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe("the points", () => {
  const points = new StudyPoints(REQUEST);
  const { plan } = points;
  const drawn = (place: number) => {
    const out = new Float64Array(plan.draws);
    points.draw(place, out);
    return out;
  };

  test("are the same again, whoever asks, and others for another seed", () => {
    const again = new StudyPoints(REQUEST);
    const out = new Float64Array(plan.draws);
    again.draw(plan.count - 1, out);
    expect(out).toEqual(drawn(plan.count - 1));
    new StudyPoints({ ...REQUEST, seed: 4 }).draw(plan.count - 1, out);
    expect(out).not.toEqual(drawn(plan.count - 1));
  });

  test("with an input moved differ from their point in that input alone", () => {
    for (let key = 0; key < plan.keys.length; key++) {
      const before = drawn(2 * plan.size + 1);
      const after = drawn(movedPlace(plan, 2, 1, key));
      const differ = [...before.keys()].filter((i) => before[i] !== after[i]);
      expect(differ).toEqual([plan.keys[key].draw]);
    }
  });

  test("of one replicate fill every input's range evenly", () => {
    for (let draw = 0; draw < plan.draws; draw++) {
      const cells = Array.from({ length: plan.size }, (_, i) =>
        Math.floor(drawn(plan.size + i)[draw] * plan.size),
      );
      expect(new Set(cells).size).toBe(plan.size);
    }
  });

  test("have plain random numbers beyond the sequence's dimensions", () => {
    const [animal] = REQUEST.door.animals;
    const animals = Array.from({ length: SOBOL_DIMENSIONS }, () => animal);
    const door: Door = { ...REQUEST.door, animals };
    const many = new StudyPoints({ ...REQUEST, door });
    const out = new Float64Array(many.plan.draws);
    expect(out.length).toBeGreaterThan(SOBOL_DIMENSIONS);
    const last = Array.from({ length: 200 }, (_, place) => {
      many.draw(place, out);
      return out[out.length - 1];
    });
    expect(new Set(last).size).toBe(200);
    expect(Math.abs(last.reduce((sum, u) => sum + u, 0) / 200 - 0.5)).toBeLessThan(4 / Math.sqrt(12 * 200));
  });
});

test("leave the plain samples alone: with and without points between them the counts are the same", () => {
  const [whole, run] = [new SampleRun(REQUEST), new SampleRun(REQUEST)];
  const together = countRange(whole, REQUEST, 0, 60);
  const apart = countRange(run, REQUEST, 0, 60);
  for (let i = 0; i < 60; i += 20) countRange(run, REQUEST, i, i + 20);
  expect(countRange(run, REQUEST, 0, 60)).toEqual(together);
  expect(apart).toEqual(together);
});

test("swing as a door of their own does", () => {
  const inputs = new SampleRun(REQUEST).inputs;
  const own = new PointRun(
    REQUEST,
    new SampledDoor(REQUEST.door, inputs),
    new SwingRun(new Motion(), new Trace()),
  );
  const { points } = countRange(new SampleRun(REQUEST), REQUEST, 300, 330);
  expect(own.row(300, 330)).toEqual(points);
  expect(points.settle.length).toBeGreaterThan(20);
});
