import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Air } from "../../../core/door/door.ts";
import { STANDARD_GRAVITY } from "../../../core/parts/flap.ts";
import { gustResult, gustSquared, velocityPressure, windFactor } from "../../../core/parts/gust.ts";
import { VENT_ANGLE } from "../../../core/parts/pressure.ts";
import type { Resistance } from "../../../core/parts/push.ts";
import { si } from "../../../core/quantity/brands.ts";
import { hinge, body as plainBody, seal } from "./plain-parts.ts";

const air: Air = {
  density: si(1.204),
  dragCoefficient: si(1.18),
  swingFactor: si(1),
  windSpeed: si(0),
  pressureDifference: si(0),
};
const body = { ...plainBody, hingeOffset: 0.02 };
const plain: Resistance = { body, hinge, seal, outOfPlumb: 0, magnetTorque: () => 0 };
const SG = 0.12 * STANDARD_GRAVITY;
const FACTOR = (0.5 * 1.204 * 1.18 * 0.3 * (0.16 - 0.0004)) / 2;
const CAPTURE = 0.01;

test("a wind of 10 m/s has 61.3 Pa (ASCE 7)", () => {
  expect(velocityPressure(10)).toBeCloseTo(61.3, 12);
  // and close to ½ ρ V² of the model's air
  expect(Math.abs(0.5 * 1.204 * 100 - velocityPressure(10)) / 61.3).toBeLessThan(0.02);
});

test("the torque of a wind is that of its pressure over the flap, about the hinge", () => {
  // ∫_o^b ½ ρ C_d W V² r dr in 10 000 strips
  const [n, o, b] = [10_000, 0.02, 0.4];
  const dr = (b - o) / n;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 0.5 * 1.204 * 1.18 * 0.3 * 9 * (o + (i + 0.5) * dr) * dr;
  expect(windFactor(1.204, 1.18, 0.3, b, o) * 9).toBeCloseTo(sum, 10);
  expect(windFactor(1.204, 1.18, 0.3, b, o)).toBeCloseTo(FACTOR, 14);
});

describe("the gust that opens a flap", () => {
  test("of a plain flap is the one it hangs against at the capture edge", () => {
    const one = gustResult(plain, air, CAPTURE, 0);
    const square = (SG * Math.sin(CAPTURE) + 0.015) / Math.cos(CAPTURE) ** 2 / FACTOR;
    expect(one.speed).toBeCloseTo(Math.sqrt(square), 12);
    expect(one.pressure).toBeCloseTo(0.613 * square, 12);
  });

  test("holds its own balance: at that speed wind and resistance are equal there", () => {
    const speed = gustResult(plain, air, CAPTURE, 0).speed ?? 0;
    const wind = FACTOR * (speed * Math.cos(CAPTURE)) ** 2;
    expect(wind).toBeCloseTo(SG * Math.sin(CAPTURE) + 0.015, 12);
  });

  test("is the lesser of both directions, out of plumb and offset counted", () => {
    const leaning = { ...plain, outOfPlumb: 0.004 };
    const one = gustResult(leaning, air, CAPTURE, 0.002);
    const out = (SG * Math.sin(0.012 - 0.004) + 0.015) / Math.cos(0.012) ** 2 / FACTOR;
    const inwards = (SG * Math.sin(0.008 + 0.004) + 0.015) / Math.cos(0.008) ** 2 / FACTOR;
    expect(one.speed).toBeCloseTo(Math.sqrt(Math.min(out, inwards)), 12);
    expect(one.direction).toBe(out < inwards ? 1 : -1);
    expect(gustSquared(leaning, air, CAPTURE, 0.002, -1)).toBeCloseTo(inwards, 10);
  });

  test("falls with a pressure difference that pushes the same way", () => {
    const blown = { ...air, pressureDifference: si<"Pa">(0.5) };
    const one = gustResult(plain, blown, CAPTURE, 0);
    const vent = (angle: number) => 0.5 * 0.3 * 0.0798 * (1 - angle / VENT_ANGLE);
    expect(one.direction).toBe(1);
    expect(one.speed).toBeCloseTo(
      Math.sqrt((SG * Math.sin(CAPTURE) + 0.015 - vent(CAPTURE)) / Math.cos(CAPTURE) ** 2 / FACTOR),
      12,
    );
  });

  test("does not exist where no wind is needed, nor where none is enough", () => {
    const fan = { ...air, pressureDifference: si<"Pa">(50) };
    expect(gustResult(plain, fan, CAPTURE, 0)).toEqual({
      speed: null,
      opensByItself: true,
      direction: 1,
      pressure: null,
    });
    const still = { ...air, density: si<"kg/m^3">(0) };
    expect(gustResult(plain, still, CAPTURE, 0)).toMatchObject({ speed: null, opensByItself: false });
    expect(gustResult({ ...plain, outOfPlumb: -0.1 }, air, CAPTURE, 0)).toMatchObject({
      speed: null,
      direction: -1,
    });
    expect(gustResult(plain, air, 2, 0).speed).toBeNull();
  });

  test("meets the magnets' peak and the seal's edge inside the capture angle", () => {
    const well = (t: number) => ((-0.2 * t) / 0.004) * Math.exp(0.5 - (t / 0.004) ** 2 / 2);
    const magnetic = { ...plain, body: { ...body, firstMoment: 0 }, magnetTorque: well };
    const speed = gustResult(magnetic, air, CAPTURE, 0).speed ?? 0;
    expect(speed ** 2 * FACTOR).toBeCloseTo((0.2 + 0.015) / Math.cos(0.004) ** 2, 6);
    const sealed = { ...plain, seal: { frictionTorque: si<"N m">(0.5), contactAngle: si<"rad">(0.003) } };
    expect((gustResult(sealed, air, CAPTURE, 0).speed ?? 0) ** 2 * FACTOR).toBeCloseTo(
      (SG * Math.sin(0.003) + 1.5 * 0.51) / Math.cos(0.003) ** 2,
      12,
    );
  });

  test("is weaker with magnets that push outwards", () => {
    const apart = { ...plain, magnetTorque: (t: number) => 0.5 * t };
    expect(gustResult(apart, air, CAPTURE, 0).speed).toBeLessThan(
      gustResult(plain, air, CAPTURE, 0).speed ?? 0,
    );
  });

  test("of an offset beyond the capture angle is judged at the centre alone", () => {
    expect(gustSquared(plain, air, CAPTURE, 0.02, -1)).toBeCloseTo(0.015 / FACTOR, 12);
  });
});

test("a mirrored door has the same gust from the other side, and more friction never a lesser one", () => {
  const small = fc.double({ min: -0.01, max: 0.01, noNaN: true });
  const pressure = fc.double({ min: -0.3, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(small, small, pressure, (outOfPlumb, offset, difference) => {
      const one = { ...plain, outOfPlumb };
      const blown = { ...air, pressureDifference: si<"Pa">(difference) };
      const turned = { ...air, pressureDifference: si<"Pa">(-difference) };
      const here = gustSquared(one, blown, 0.02, offset, 1);
      expect(gustSquared({ ...plain, outOfPlumb: -outOfPlumb }, turned, 0.02, -offset, -1)).toBeCloseTo(
        here,
        10,
      );
      const rougher = { ...one, hinge: { ...hinge, frictionTorque: si<"N m">(0.02) } };
      expect(gustSquared(rougher, blown, 0.02, offset, 1)).toBeGreaterThan(here);
    }),
  );
});
