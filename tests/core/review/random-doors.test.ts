/** Doors nobody has built: random entries within each key's range, the whole of the review computed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Door, readDoor } from "../../../core/door/index.ts";
import { compute } from "../../../core/review/compute.ts";
import { findings } from "../../../core/review/findings.ts";
import { resultValues } from "../../../core/review/results.ts";
import { words } from "../../../core/review/words.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 3 });

/** Lengths in metres, written by `length` in the unit under test; everything else in fixed units. */
const drawn = fc.record({
  shoulder: between(0.15, 0.8),
  chest: between(0.08, 0.3),
  body: between(0.2, 1),
  mass: between(2, 60),
  speed: between(0.2, 2),
  openingWidth: between(0.15, 0.6),
  openingHeight: between(0.2, 0.9),
  sill: between(0, 0.25),
  plumb: between(-2, 2),
  flapWidth: between(0.12, 0.6),
  flapHeight: between(0.2, 0.8),
  thickness: between(0.002, 0.02),
  hingeOffset: between(0, 0.02),
  friction: fc.oneof(fc.constant(0), between(0.1, 60)),
  viscous: between(0.5, 60),
  ratio: between(1, 2),
  stop: between(60, 120),
  restitution: between(0, 0.9),
  seal: fc.oneof(fc.constant(0), between(0.1, 60)),
  sealAngle: between(0.5, 10),
  damper: fc.oneof(fc.constant(0), between(1, 600)),
  wind: fc.oneof(fc.constant(0), between(-6, 6)),
  pressure: fc.oneof(fc.constant(0), between(-8, 8)),
  magnets: maybe(
    fc.record({
      arrangement: fc.constantFrom("jamb", "sill"),
      force: fc.constantFrom("attract", "repel"),
      diameter: between(0.005, 0.012),
      height: between(0.002, 0.006),
      gap: between(0.004, 0.012),
    }),
  ),
  latch: maybe(
    fc.record({
      slot: between(0.009, 0.024),
      offset: between(-0.004, 0.004),
      tip: between(0.001, 0.004),
      engagement: between(0.001, 0.004),
      spring: between(0.5, 3),
      points: fc.constantFrom("up", "down"),
    }),
  ),
  hold: maybe(between(0.5, 20)),
});

type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

function doorText(d: Drawn, unit: "mm" | "in"): string {
  const length = (metres: number) => (unit === "mm" ? `${metres * 1e3} mm` : `${metres / 0.0254} in`);
  const reach = d.hingeOffset + d.flapHeight;
  return JSON.stringify({
    format: "swingstill-door",
    version: 1,
    animals: [
      {
        shoulderHeight: length(d.shoulder),
        chestWidth: length(d.chest),
        bodyLength: length(d.body),
        mass: `${d.mass} kg`,
        speed: `${d.speed} m/s`,
      },
    ],
    opening: {
      width: length(d.openingWidth),
      height: length(d.openingHeight),
      sillHeight: length(d.sill),
      outOfPlumb: `${d.plumb} deg`,
    },
    flap: {
      width: length(d.flapWidth),
      height: length(d.flapHeight),
      thickness: length(d.thickness),
      hingeOffset: length(d.hingeOffset),
    },
    hinge: {
      frictionTorque: `${d.friction} mN m`,
      viscousDamping: `${d.viscous} mN m s/rad`,
      staticRatio: d.ratio,
      stopAngle: `${d.stop} deg`,
      stopRestitution: d.restitution,
    },
    seal: { frictionTorque: `${d.seal} mN m`, contactAngle: `${d.sealAngle} deg` },
    damper: { coefficient: `${d.damper} mN m s/rad`, withinAngle: "20 deg" },
    air: { windSpeed: `${d.wind} m/s`, pressureDifference: `${d.pressure} Pa` },
    ...(d.magnets && {
      magnets: {
        arrangement: d.magnets.arrangement,
        force: d.magnets.force,
        diameter: length(d.magnets.diameter),
        thickness: length(d.magnets.height),
        remanence: "1.2 T",
        gap: length(d.magnets.gap),
        distanceFromHinge: length(0.95 * reach),
      },
    }),
    ...(d.latch && {
      latch: {
        boltWidth: length(0.008),
        slotWidth: length(d.latch.slot),
        distanceFromHinge: length(reach),
        tipGap: length(d.latch.tip),
        engagement: length(d.latch.engagement),
        edgeHalfWidth: length(0.014),
        boltMass: "20 g",
        springForce: `${d.latch.spring} N`,
        offset: length(d.latch.offset),
        boltPoints: d.latch.points,
      },
    }),
    ...(d.hold && { timer: { holdTime: `${d.hold} s` } }),
  });
}

function doorOf(d: Drawn, unit: "mm" | "in"): Door {
  const read = readDoor(doorText(d, unit));
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  return read.door;
}

describe("a random door", () => {
  test("has only finite figures and whole sentences, and its ledger closes", () => {
    fc.assert(
      fc.property(drawn, (d) => {
        const computed = compute(doorOf(d, "mm"));
        for (const [name, { value }] of Object.entries(resultValues(computed))) {
          expect([name, value === null || Number.isFinite(value)]).toEqual([name, true]);
        }
        for (const { message } of findings(computed, words("inch"))) {
          expect(message).not.toMatch(/NaN|undefined|Infinity|null/);
        }
        const { initial, hinge, viscous, seal, air, stops, left } = computed.governing.swing.ledger;
        const gap = initial - (hinge + viscous + seal + air + stops + left);
        expect(Math.abs(gap)).toBeLessThanOrEqual(1e-6 * Math.max(Math.abs(initial), 1e-3));
      }),
      { seed: 4711, numRuns: 60, endOnFailure: true },
    );
  }, 300_000);

  test("is the same door in inches and in millimetres", () => {
    fc.assert(
      fc.property(drawn, (d) => {
        const metric = resultValues(compute(doorOf(d, "mm")));
        const inch = resultValues(compute(doorOf(d, "in")));
        for (const name of [
          "flap.inertia",
          "flap.firstMoment",
          "push.force",
          "latch.captureAngle",
          "fit.heightSpare",
        ]) {
          const [a, b] = [metric[name].value, inch[name].value];
          if (a === null || b === null) expect(a).toBe(b);
          else expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(a)));
        }
        const [a, b] = [metric["swing.restTime"].value, inch["swing.restTime"].value];
        if (a !== null && b !== null) expect(b).toBeCloseTo(a, 6);
      }),
      { seed: 4712, numRuns: 25, endOnFailure: true },
    );
  }, 300_000);
});
