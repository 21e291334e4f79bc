import { describe, expect, test } from "vitest";
import { MouthOutcomes } from "../../../core/study/mouth-outcomes.ts";
import { RestBound } from "../../../core/study/rest-bound.ts";
import { countRange, SampleRun } from "../../../core/study/sample-run.ts";
import { sampleStream } from "../../../core/study/stream.ts";
import type { Stretches } from "../../../core/study/stretches.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { SwingRun } from "../../../core/swing/swing.ts";
import { Trace } from "../../../core/swing/trace.ts";
import { EXAMPLES, exampleDoor, REFERENCE_DOORS, referenceDoor } from "../doors.ts";

const SAMPLES = 60;
const newRun = () => new SwingRun(new Motion(), new Trace());
const withLatch = REFERENCE_DOORS.filter((name) => referenceDoor(name).latch !== null);
const doors = [
  ...EXAMPLES.map((name) => [name, exampleDoor(name)] as const),
  ...withLatch.map((name) => [name, referenceDoor(name)] as const),
];

const listed = (s: Stretches) => Array.from({ length: s.count }, (_, i) => [s.from[i], s.to[i], s.code[i]]);

describe("a swing that is followed only until it is settled", () => {
  test.each(doors)(
    "%s: settles, ends and latches as the whole swing, and rests within the bound",
    (_, door) => {
      const request = { door, samples: SAMPLES, seed: 3 };
      const sampler = new SampleRun(request);
      const { sampled } = sampler;
      const [whole, part, bound] = [newRun(), newRun(), new RestBound()];
      const wholeOutcomes = new MouthOutcomes(whole.trace, new Motion());
      const partOutcomes = new MouthOutcomes(part.trace, new Motion());
      const latest = door.animals.map(() => 0);
      for (let index = 0; index < SAMPLES; index++) {
        sampled.draw(sampleStream(3, index));
        if (!sampled.works) continue;
        const { system, ride, angle, speed } = sampled;
        const all = whole.run(system, angle, speed);
        const cut = part.runUntilSettled(system, angle, speed);
        expect(cut.settleTime).toBe(all.settleTime);
        expect(cut.centrePasses).toBe(all.centrePasses);
        const stretches = listed(partOutcomes.find(system, ride, 1e-3));
        expect(stretches).toEqual(listed(wholeOutcomes.find(system, ride, 1e-3)));
        if (cut.status === "settled") {
          expect(all.endTime - cut.endTime).toBeLessThanOrEqual(bound.find(system, part.motion.angle));
          expect(part.goOn(system)).toBe(all.endTime);
        } else expect(cut).toEqual(all);
        latest[sampled.animal] = Math.max(latest[sampled.animal], sampled.lag + all.endTime + sampled.delay);
      }
      const { animals } = countRange(sampler, request, 0, SAMPLES);
      expect(animals.map((animal) => animal.latest)).toEqual(latest);
    },
  );

  test("the bound is near enough that few flaps of an ordinary door are followed", () => {
    const sampler = new SampleRun({ door: exampleDoor("medium-dog"), samples: 200, seed: 1 });
    const { sampled } = sampler;
    const [run, bound] = [newRun(), new RestBound()];
    let near = 0;
    for (let index = 0; index < 200; index++) {
      sampled.draw(sampleStream(1, index));
      const { status, endTime } = run.runUntilSettled(sampled.system, sampled.angle, sampled.speed);
      if (status !== "settled") continue;
      const most = bound.find(sampled.system, run.motion.angle);
      if (most < 4 * (run.goOn(sampled.system) - endTime)) near++;
    }
    expect(near).toBeGreaterThan(180);
  });
});
