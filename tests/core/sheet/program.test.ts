/** The timer program: compiled with warnings as errors, and run on the host against the core's timeline. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CLASS_LIMIT, TOUCH_CAUTION } from "../../../core/parts/solenoid.ts";
import { holdEnd } from "../../../core/passage/passage.ts";
import { type Computed, compute } from "../../../core/review/compute.ts";
import { timerProgram } from "../../../core/sheet/program.ts";
import { EXAMPLES, exampleDoor, referenceDoor } from "../doors.ts";
import { compileAsSketch, compilesC, compilesCpp, type Span, withProgram } from "./program/host.ts";
import { NO_C, plain, programOf, pulses } from "./program/made.ts";
import { trainOf } from "./program/trains.ts";

const NO_CPP = compilesCpp ? "" : " (skipped: g++ is not installed)";
/** The clock of a board rolls over here, ms. */
const ROLLOVER = 2 ** 32;
/** A loop a millisecond: when a change is seen, ms. */
const TICK = 2;

/** When the coil is on for triggers at these times, by the rule alone: each starts the hold anew, or only those outside it. */
function holds(triggers: readonly number[], hold: number, retriggers: boolean): Span[] {
  const spans: [number, number][] = [];
  for (const time of triggers) {
    const last = spans[spans.length - 1];
    if (last === undefined || time >= last[1]) spans.push([time, time + hold]);
    else if (retriggers) last[1] = time + hold;
  }
  return spans;
}

function expectSpans(found: readonly Span[], expected: readonly Span[], tick = TICK): void {
  expect(found, JSON.stringify({ found, expected })).toHaveLength(expected.length);
  for (const [i, [from, to]] of expected.entries()) {
    expect(Math.abs(found[i][0] - from)).toBeLessThanOrEqual(tick);
    expect(Math.abs(found[i][1] - to)).toBeLessThanOrEqual(tick);
  }
}

/** A passage's pulses, ms: from detection on, the last one at t_p. */
function passagePulses(lastPulse: number, interval: number): number[] {
  const times = [lastPulse];
  while (times[0] > interval) times.unshift(times[0] - interval);
  if (times[0] > 0) times.unshift(0);
  return times.map((time) => time * 1000);
}

function checkPassages(computed: Computed): void {
  const program = programOf(computed);
  const { holdMs, debounceMs, retriggers } = program.numbers;
  const interval = computed.door.detection.pulseInterval;
  const width = Math.floor(interval * 400);
  withProgram(program.text, ({ run }) => {
    for (const { passage } of computed.crossings) {
      const times = passagePulses(passage.lastPulse, interval);
      const { coil } = run(pulses(times, width), Math.ceil(passage.letGoTime * 1000) + 3 * holdMs + 1000);
      // After detection: the core counts the end from let-go.
      const end = (holdEnd(passage, retriggers, holdMs / 1000) + passage.letGoTime) * 1000 + debounceMs;
      const last = retriggers ? coil.length - 1 : 0;
      expect(Math.abs(coil[last][1] - end), JSON.stringify({ coil, end })).toBeLessThanOrEqual(TICK);
      expect(Math.abs(coil[0][0] - debounceMs)).toBeLessThanOrEqual(TICK);
    }
  });
}

describe("timer program on the passage's timeline", () => {
  test.skipIf(!compilesC).each(EXAMPLES)(`%s${NO_C}`, (name) => checkPassages(compute(exampleDoor(name))));
  /** One trigger; a pulse every 0.5 s and far-side credit; several animals; R and C; a hold that ends under the animal. */
  test.skipIf(!compilesC).each(["18-bolt-down", "13-wide-seal", "20-family", "15-damper", "27-hold-under"])(
    `reference door %s${NO_C}`,
    (name) => checkPassages(compute(referenceDoor(name))),
  );
  test.skipIf(!compilesCpp).each(EXAMPLES)(`%s is a sketch in C++ too${NO_CPP}`, (name) =>
    compileAsSketch(programOf(compute(exampleDoor(name))).text),
  );
});

const press = fc.record({
  gap: fc.integer({ min: 0, max: 4000 }),
  width: fc.integer({ min: 5, max: 2500 }),
  bounceOn: fc.array(fc.nat(30), { maxLength: 6 }),
  bounceOff: fc.array(fc.nat(30), { maxLength: 6 }),
});

describe("timer program for any pulses", () => {
  const doorInputs = fc.record({
    hold: fc.integer({ min: 100, max: 20_000 }),
    interval: fc.integer({ min: 50, max: 3000 }),
    retriggers: fc.boolean(),
  });
  const trains = fc.array(fc.tuple(fc.array(press, { minLength: 1, maxLength: 12 }), fc.nat(30_000)), {
    minLength: 6,
    maxLength: 6,
  });

  test.skipIf(!compilesC)(`bounce, held levels, rollover, both trigger rules${NO_C}`, () => {
    fc.assert(
      fc.property(doorInputs, trains, ({ hold, interval, retriggers }, presses) => {
        const computed = plain({
          "timer.holdTime": `${hold} ms`,
          "timer.retriggers": retriggers,
          "detection.pulseInterval": `${interval} ms`,
        });
        const { text, numbers } = programOf(computed);
        expect(numbers.holdMs).toBe(hold);
        withProgram(text, ({ run }) => {
          for (const [list, before] of presses) {
            const { edges, triggers } = trainOf(list, numbers.debounceMs, interval);
            const length = (edges.at(-1)?.[0] ?? 0) + 2 * hold + 1000;
            // A trigger at the very end of a hold may fall on either side of it.
            if (nearTie(triggers, hold, retriggers)) continue;
            expectSpans(run(edges, length, ROLLOVER - before).coil, holds(triggers, hold, retriggers));
          }
        });
      }),
      { numRuns: 8, endOnFailure: true },
    );
  });

  function nearTie(triggers: readonly number[], hold: number, retriggers: boolean): boolean {
    const ends = retriggers
      ? triggers.map((time) => time + hold)
      : holds(triggers, hold, false).map(([, to]) => to);
    return ends.some((end) => triggers.some((time) => Math.abs(time - end) <= 2 * TICK));
  }

  test.skipIf(!compilesC)(`spikes shorter than the debounce unlock nothing${NO_C}`, () => {
    const { text, numbers } = programOf(plain({}));
    const spikes = Array.from({ length: 50 }, (_, i) => 100 * i);
    withProgram(text, ({ run }) => {
      expect(run(pulses(spikes, numbers.debounceMs - 1), 10_000).coil).toEqual([]);
      expect(run(pulses(spikes, numbers.debounceMs + 1), 10_000).coil).toHaveLength(1);
    });
  });

  test.skipIf(!compilesC)(`the lamp shows the hold; the coil is off before its pin drives${NO_C}`, () => {
    withProgram(programOf(plain({})).text, ({ run }) => {
      const { coil, lamp, lines } = run(pulses([500], 100), 20_000);
      expect(coil).toHaveLength(1);
      expect(lamp).toEqual(coil);
      expect(lines.indexOf("level 0 9 0")).toBeLessThan(lines.indexOf("mode 0 9 1"));
      expect(lines.indexOf("level 0 9 0")).toBeGreaterThanOrEqual(0);
    });
  });
});

describe("what the program is made of", () => {
  test("a setting given replaces the timer's", () => {
    const computed = plain({});
    expect(programOf(computed, 11.2505)).toMatchObject({ holdFrom: "given", numbers: { holdMs: 11_251 } });
    expect(programOf(computed).text).toContain("#define HOLD_MS 8000UL");
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    "a hold of %s is refused with what was given",
    (hold) => {
      expect(() => timerProgram(plain({}), "metric", hold)).toThrow(new RegExp(`received ${hold}`));
    },
  );

  test("without a timer it holds as long as the door requires", () => {
    const computed = plain({ timer: undefined });
    const { holdFrom, numbers } = programOf(computed);
    expect(holdFrom).toBe("required");
    expect(numbers.holdMs).toBe(Math.ceil((computed.holdRequired ?? Number.NaN) * 1000));
  });

  test("no program where there is no hold at all", () => {
    const computed = plain({
      timer: undefined,
      "seal.frictionTorque": "2 N m",
      "seal.contactAngle": "60 deg",
    });
    expect(computed.holdRequired).toBeNull();
    expect(timerProgram(computed, "metric")).toBeNull();
  });

  test("without a coil in the file there is a cap", () => {
    expect(programOf(plain({ solenoid: undefined })).limit.reason).toBe("cap");
  });

  test("the touch caution comes first, the class where passages need longer", () => {
    const hot = { "solenoid.thermalResistance": "60 K/W", "solenoid.thermalTimeConstant": "60 s" };
    const short = programOf(plain({ ...hot, "timer.holdTime": "0.1 s", "detection.range": "0.1 m" }));
    expect(short.limit).toMatchObject({ reason: "touch", temperature: TOUCH_CAUTION });
    const long = programOf(plain({ ...hot, "timer.holdTime": "20 s" }));
    expect(long.limit).toMatchObject({ reason: "class", temperature: CLASS_LIMIT.B - 10 });
    expect(long.text).toContain("too hot to touch");
    const longer = programOf(plain({ ...hot, "timer.holdTime": "5 min" }));
    expect(longer.limit.shortOfPassage).toBe(true);
    expect(longer.text).toContain("ONE PASSAGE IS LONGER");
  });

  const words = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.constantFrom("a */ b", "/* x", "??/", "line\nbreak", "\\"),
  );
  test.skipIf(!compilesC)(`any name stays in its comment${NO_C}`, () => {
    fc.assert(
      fc.property(words, (name) => {
        const computed = plain({ name: `x${name}`, "animals.0.name": `y${name}` });
        withProgram(programOf(computed).text, () => undefined);
      }),
      { numRuns: 7, endOnFailure: true, examples: [["a */ int x; /*"], ["??/"], ["\\"], ["*/*"]] },
    );
  });
});
