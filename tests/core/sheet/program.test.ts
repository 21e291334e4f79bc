/** The timer program: compiled with warnings as errors, and run on the host against the core's timeline and heat. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Door, readDoor } from "../../../core/door/index.ts";
import { continuousTemperature, type HeatedCoil, heatingRate } from "../../../core/parts/coil-heating.ts";
import { CLASS_LIMIT, heatedCoil, TOUCH_CAUTION } from "../../../core/parts/solenoid.ts";
import { holdEnd } from "../../../core/passage/passage.ts";
import { type Computed, compute } from "../../../core/review/compute.ts";
import { type TimerProgram, timerProgram } from "../../../core/sheet/program.ts";
import { goodWith, sampleDoor } from "../review/doors.ts";
import {
  compileAsSketch,
  compilesC,
  compilesCpp,
  type HostRun,
  type Span,
  withProgram,
} from "./program/host.ts";
import { type Edge, trainOf } from "./program/trains.ts";

const NO_C = compilesC ? "" : " (skipped: gcc is not installed)";
const NO_CPP = compilesCpp ? "" : " (skipped: g++ is not installed)";
const EXAMPLES = ["cat", "large-dog-plywood", "medium-dog", "never-latches"] as const;
/** The clock of a board rolls over here, ms. */
const ROLLOVER = 2 ** 32;
/** A loop a millisecond: when a change is seen, ms. */
const TICK = 2;

function example(name: string): Door {
  const read = readDoor(
    readFileSync(new URL(`../../../assets/examples/${name}.door.json`, import.meta.url), "utf8"),
  );
  if (!read.ok) throw new Error(name);
  return read.door;
}

function programOf(computed: Computed, hold: number | null = null): TimerProgram {
  const made = timerProgram(computed, "metric", hold);
  if (made === null) throw new Error(`no program for ${computed.door.name}`);
  return made;
}

const plain = (changes: Readonly<Record<string, unknown>>) =>
  compute(goodWith({ magnets: undefined, ...changes }));

/** Clean pulses of one width. */
const pulses = (times: readonly number[], width: number): Edge[] =>
  times.flatMap((time): Edge[] => [
    [Math.round(time), 1],
    [Math.round(time) + width, 0],
  ]);

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
  test.skipIf(!compilesC).each(EXAMPLES)(`%s${NO_C}`, (name) => checkPassages(compute(example(name))));
  /** One trigger; a pulse every 0.5 s and far-side credit; several animals; R and C; a hold that ends under the animal. */
  test.skipIf(!compilesC).each(["18-bolt-down", "13-wide-seal", "20-family", "15-damper", "27-hold-under"])(
    `reference door %s${NO_C}`,
    (name) => checkPassages(compute(sampleDoor(`${name}.door.json`))),
  );
  test.skipIf(!compilesCpp).each(EXAMPLES)(`%s is a sketch in C++ too${NO_CPP}`, (name) =>
    compileAsSketch(programOf(compute(example(name))).text),
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

function heatedOf({ door }: Computed): HeatedCoil {
  const { solenoid, driver, supply } = door;
  if (solenoid === null || driver === null || supply === null) throw new Error("no coil");
  return heatedCoil(solenoid, driver, supply.voltage);
}

/** The hottest the model's coil gets for these times on, from ambient: Euler steps of a thousandth of its time constant. */
function hottest(coil: HeatedCoil, spans: readonly Span[], length: number): number {
  const step = coil.timeConstant / 1000;
  let temperature: number = coil.ambient;
  let most: number = coil.ambient;
  const advance = (seconds: number, rate: () => number) => {
    const count = Math.ceil(seconds / step);
    for (let i = 0; i < count; i++) temperature += (seconds / count) * rate();
    most = Math.max(most, temperature);
  };
  let now = 0;
  for (const [from, to] of spans) {
    advance(from / 1000 - now, () => (coil.ambient - temperature) / coil.timeConstant);
    const end = Math.min(to, length) / 1000;
    advance(end - from / 1000, () => heatingRate(coil, temperature));
    now = end;
  }
  return most;
}

/** Every pulse there is for a time. */
const asleep = (seconds: number, interval = 1000) =>
  pulses(
    Array.from({ length: Math.floor((seconds * 1000) / interval) }, (_, i) => i * interval),
    Math.floor(interval / 3),
  );

describe("a coil that never rests", () => {
  const longest = ({ coil }: HostRun, length: number) =>
    Math.max(...coil.map(([from, to]) => Math.min(to, length) - from));
  const rests = ({ coil }: HostRun) => coil.slice(1).map(([from], i) => from - coil[i][1]);

  test.skipIf(!compilesC)(`the mud room's hot coil with an animal asleep in range${NO_C}`, () => {
    const computed = compute(example("never-latches"));
    const { text, limit, numbers } = programOf(computed);
    expect(limit.reason).toBe("touch");
    expect(continuousTemperature(heatedOf(computed))).toBeGreaterThan(TOUCH_CAUTION);
    const length = 2 * 3600;
    withProgram(text, ({ run }) => {
      const found = run(asleep(length), length * 1000, 0, 2);
      expect(longest(found, length * 1000)).toBeLessThanOrEqual(limit.maxOn * 1000 + 4);
      expect(longest(found, length * 1000)).toBeGreaterThan(limit.maxOn * 1000 - 4);
      expect(found.coil.length).toBeGreaterThan(10);
      for (const rest of rests(found)) {
        expect(rest).toBeGreaterThanOrEqual(limit.rest * 1000 - 4);
        expect(rest).toBeLessThanOrEqual(limit.rest * 1000 + numbers.pulseMs + 1000);
      }
      const most = hottest(heatedOf(computed), found.coil, length * 1000);
      expect(most).toBeLessThan(TOUCH_CAUTION);
      expect(most).toBeGreaterThan(TOUCH_CAUTION - 25);
      // It blinks while it rests.
      expect(found.lamp.length).toBeGreaterThan(found.coil.length * limit.rest);
    });
  });

  test.skipIf(!compilesC)(`a cool coil rests after the cap${NO_C}`, () => {
    const computed = compute(example("medium-dog"));
    const { text, limit } = programOf(computed);
    expect(limit).toMatchObject({ reason: "cap", maxOn: 1800, rest: 60, temperature: null });
    const length = 4000;
    withProgram(text, ({ run }) => {
      const found = run(asleep(length), length * 1000, 0, 4);
      expect(longest(found, length * 1000)).toBeLessThanOrEqual(1_800_008);
      expect(Math.min(...rests(found))).toBeGreaterThanOrEqual(59_990);
    });
  });

  const hot = fc.record({
    thermalResistance: fc.integer({ min: 15, max: 90 }),
    timeConstant: fc.integer({ min: 40, max: 300 }),
    ambient: fc.integer({ min: -10, max: 55 }),
    insulationClass: fc.constantFrom("A", "E", "B", "F", "H"),
    kind: fc.constantFrom({ kind: "darlington" }, { kind: "mosfet", onResistance: "20 ohm" }),
    hold: fc.constantFrom("100 ms", "1 s", "5 s"),
  });
  const bursts = fc.array(fc.tuple(fc.integer({ min: 1, max: 120 }), fc.integer({ min: 0, max: 200 })), {
    minLength: 10,
    maxLength: 40,
  });
  test.skipIf(!compilesC)(`no coil gets hotter than its limit, whatever pulses come${NO_C}`, () => {
    let limited = 0;
    fc.assert(
      fc.property(hot, fc.array(bursts, { minLength: 2, maxLength: 2 }), (h, lists) => {
        const computed = plain({
          "solenoid.thermalResistance": `${h.thermalResistance} K/W`,
          "solenoid.thermalTimeConstant": `${h.timeConstant} s`,
          "solenoid.ambient": `${h.ambient} degC`,
          "solenoid.insulationClass": h.insulationClass,
          "timer.holdTime": h.hold,
          driver: h.kind,
        });
        const { text, limit } = programOf(computed);
        const coil = heatedOf(computed);
        const most = limit.temperature ?? CLASS_LIMIT[h.insulationClass];
        if (limit.temperature === null) expect(continuousTemperature(coil)).toBeLessThanOrEqual(most);
        else limited++;
        withProgram(text, ({ run }) => {
          for (const list of lists) {
            let now = 0;
            const times: number[] = [];
            for (const [count, gap] of list) {
              for (let i = 0; i < count; i++) times.push(now + i * 1000);
              now += (count + gap) * 1000;
            }
            const found = run(pulses(times, 200), now + 10_000, 0, 2);
            // Ticks of 2 ms and whole milliseconds: far less than a hundredth of a kelvin.
            expect(hottest(coil, found.coil, now + 10_000)).toBeLessThanOrEqual(most + 0.01);
          }
        });
      }),
      { numRuns: 10, endOnFailure: true },
    );
    expect(limited).toBeGreaterThan(3);
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
