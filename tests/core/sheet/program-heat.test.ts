/** How hot the timer program lets a coil get: compiled and run on the host, its times on put through the model's coil. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { continuousTemperature, type HeatedCoil, heatingRate } from "../../../core/parts/coil-heating.ts";
import { CLASS_LIMIT, heatedCoil, TOUCH_CAUTION } from "../../../core/parts/solenoid.ts";
import { type Computed, compute } from "../../../core/review/compute.ts";
import type { TimerProgram } from "../../../core/sheet/program.ts";
import { exampleDoor } from "../doors.ts";
import { compilesC, type HostRun, type Span, withProgram } from "./program/host.ts";
import { NO_C, plain, programOf, pulses } from "./program/made.ts";
import type { Edge } from "./program/trains.ts";

/** A loop's time on the host, ms. */
const TICK = 2;
/** A pulse's width, ms: longer than the debounce, shorter than the shortest hold. */
const WIDTH = 40;
/** Part of the allowed rise that the worst pulses use at least: whole seconds take up to half of a short time on, warm copper the rest. */
const SPENT = 0.4;

function heatedOf({ door }: Computed): HeatedCoil {
  const { solenoid, driver, supply } = door;
  if (solenoid === null || driver === null || supply === null) throw new Error("no coil");
  return heatedCoil(solenoid, driver, supply.voltage);
}

/** The hottest the model's coil gets for these times on, from ambient: midpoint steps of a hundredth of its time constant, exact cooling. */
function hottest(coil: HeatedCoil, spans: readonly Span[], length: number): number {
  const { ambient, timeConstant } = coil;
  let temperature: number = ambient;
  let most: number = ambient;
  let now = 0;
  for (const [from, to] of spans) {
    temperature = ambient + (temperature - ambient) * Math.exp((now - from / 1000) / timeConstant);
    now = Math.min(to, length) / 1000;
    const seconds = now - from / 1000;
    const count = Math.ceil((100 * seconds) / timeConstant);
    const step = seconds / count;
    for (let i = 0; i < count; i++) {
      const middle = temperature + (step / 2) * heatingRate(coil, temperature);
      temperature += step * heatingRate(coil, middle);
    }
    most = Math.max(most, temperature);
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
    const computed = compute(exampleDoor("never-latches"));
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
    const computed = compute(exampleDoor("medium-dog"));
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
  type Hot = typeof hot extends fc.Arbitrary<infer T> ? T : never;
  const doorWith = (h: Hot) =>
    plain({
      "solenoid.thermalResistance": `${h.thermalResistance} K/W`,
      "solenoid.thermalTimeConstant": `${h.timeConstant} s`,
      "solenoid.ambient": `${h.ambient} degC`,
      "solenoid.insulationClass": h.insulationClass,
      "timer.holdTime": h.hold,
      driver: h.kind,
    });
  const bursts = fc.array(fc.tuple(fc.integer({ min: 1, max: 120 }), fc.integer({ min: 0, max: 200 })), {
    minLength: 10,
    maxLength: 40,
  });

  /** Pulses in bursts of so many and silence between them, and the time it all takes, ms. */
  function burstsOf(list: readonly (readonly [number, number])[]): { edges: Edge[]; length: number } {
    const times: number[] = [];
    let now = 0;
    for (const [count, gap] of list) {
      for (let i = 0; i < count; i++) times.push(now + i * 1000);
      now += (count + gap) * 1000;
    }
    return { edges: pulses(times, 200), length: now + 10_000 };
  }

  /** The worst there is: as much time on as is always just paid back, until the coil is warm from it; then all there is. */
  function warmedUp(
    { numbers, limit }: TimerProgram,
    timeConstant: number,
  ): { edges: Edge[]; length: number } {
    const period = Math.ceil((numbers.holdMs * (limit.maxOn + limit.rest)) / limit.maxOn) + 2 * TICK;
    const times = Array.from({ length: Math.ceil((6000 * timeConstant) / period) }, (_, i) => i * period);
    const from = times.length * period;
    const count = Math.ceil((2000 * limit.maxOn) / numbers.pulseMs);
    for (let i = 0; i < count; i++) times.push(from + i * numbers.pulseMs);
    return { edges: pulses(times, WIDTH), length: from + count * numbers.pulseMs };
  }

  test.skipIf(!compilesC)(`no coil gets hotter than its limit, whatever pulses come${NO_C}`, () => {
    fc.assert(
      fc.property(hot, fc.array(bursts, { minLength: 2, maxLength: 2 }), (h, lists) => {
        const computed = doorWith(h);
        const program = programOf(computed);
        const { temperature } = program.limit;
        // A coil that may stay on for ever is the next test's.
        fc.pre(temperature !== null);
        expect(program.limit.kept).toBe(true);
        const coil = heatedOf(computed);
        withProgram(program.text, ({ run }) => {
          const reached = ({ edges, length }: { edges: Edge[]; length: number }) =>
            hottest(coil, run(edges, length, 0, TICK).coil, length);
          for (const list of lists) expect(reached(burstsOf(list))).toBeLessThanOrEqual(temperature);
          const worst = reached(warmedUp(program, h.timeConstant));
          expect(worst).toBeLessThanOrEqual(temperature);
          // And no time is given away but what warm copper and whole seconds take.
          expect((worst - coil.ambient) / (temperature - coil.ambient)).toBeGreaterThan(SPENT);
        });
      }),
      { numRuns: 10, endOnFailure: true },
    );
  });

  test("a coil without a limit may stay on for ever", () => {
    fc.assert(
      fc.property(hot, (h) => {
        const computed = doorWith(h);
        const { limit } = programOf(computed);
        fc.pre(limit.temperature === null);
        expect(continuousTemperature(heatedOf(computed))).toBeLessThanOrEqual(CLASS_LIMIT[h.insulationClass]);
      }),
      { numRuns: 50 },
    );
  });

  test("a coil that a second makes too hot gets no promise", () => {
    const tiny = { "solenoid.thermalResistance": "400 K/W", "solenoid.thermalTimeConstant": "4 s" };
    const { limit, text } = programOf(plain({ ...tiny, "timer.holdTime": "1 s" }));
    expect(limit).toMatchObject({ reason: "class", kept: false, maxOn: 1, shortOfPassage: true });
    const said = text.replaceAll("\n * ", " ");
    expect(said).toContain("NOTHING A PROGRAM COUNTS KEEPS IT BELOW THAT");
    expect(said).not.toContain("These two keep it below");
    // Nor where the air around it is hotter than its class.
    const oven = programOf(plain({ "solenoid.ambient": "110 degC", "solenoid.insulationClass": "A" }));
    expect(oven.limit.kept).toBe(false);
  });
});
