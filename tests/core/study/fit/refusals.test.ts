// What the data cannot tell is refused, with what to measure instead.
import { describe, expect, test } from "vitest";
import { fitSwing } from "../../../../core/study/fit/fit.ts";
import { DEGREE, done, door, every, filmed, MAGNETS, noise, TRUTH } from "./helpers.ts";

const bare = door();

describe("values that one swing cannot tell apart", () => {
  test("air and viscous damping from a small let-go; from a large one they are told", () => {
    const small = { ...TRUTH, release: 12 * DEGREE };
    const fit = done(fitSwing(bare, filmed(bare, small, every(0.02, 10), noise(1, 0.3 * DEGREE))));
    const lost = fit.refused.find(({ key }) => key === "air.swingFactor");
    expect(lost?.from).toContain("hinge.viscousDamping");
    expect(lost?.instead).toMatch(/let go from a larger angle to tell air from viscous damping/i);
    expect(lost?.keptAt).toBe(1);
    expect(fit.values.map(({ key }) => key)).not.toContain("air.swingFactor");
    const large = done(fitSwing(bare, filmed(bare, TRUTH, every(0.02, 12), noise(1, 0.3 * DEGREE))));
    expect(large.values.map(({ key }) => key)).toContain("air.swingFactor");
  });

  test("seal and hinge where the seal touches all the way: exactly one value", () => {
    const sealed = door({ seal: { frictionTorque: "1 mN m", contactAngle: "90 deg" } });
    const fit = done(
      fitSwing(
        sealed,
        filmed(sealed, { ...TRUTH, "seal.frictionTorque": 1e-3 }, every(0.02, 12), noise(2, 0.2 * DEGREE)),
      ),
    );
    const lost = fit.refused.find(({ key }) => key === "seal.frictionTorque");
    expect(lost?.from).toContain("hinge.frictionTorque");
    expect(lost?.instead).toMatch(/second swing with the seal taken off/);
    const hinge = fit.values.find(({ key }) => key === "hinge.frictionTorque");
    expect(hinge?.given).toContain("seal.frictionTorque");
    // Their sum is what the swing shows.
    expect((hinge?.value ?? 0) + 1e-3).toBeCloseTo(TRUTH["hinge.frictionTorque"] + 1e-3, 4);
  });

  test("a frame out of plumb and the camera's zero, unless the zero is true", () => {
    const tilted = { ...TRUTH, "opening.outOfPlumb": 0.02, zero: 0 };
    const measured = filmed(bare, tilted, every(0.02, 12), noise(3, 0.2 * DEGREE));
    const free = done(fitSwing(bare, measured));
    expect(free.refused.find(({ key }) => key === "opening.outOfPlumb")?.from).toEqual(["zero"]);
    const fixed = done(fitSwing(bare, measured, { zeroIsTrue: true }));
    const plumb = fixed.values.find(({ key }) => key === "opening.outOfPlumb");
    expect(plumb?.value).toBeCloseTo(0.02, 3);
  });

  test("more values than turning points", () => {
    const turns = { turn: [0, 1, 2, 3], angle: [60, -55, 50.5, -46.5].map((a) => a * DEGREE), time: null };
    const fit = fitSwing(bare, { kind: "turns", turns });
    expect(fit.ok ? fit.values.length : 0).toBeLessThanOrEqual(1);
    expect(fit.ok ? fit.refused.length : 5).toBeGreaterThanOrEqual(3);
  });

  test("a refused value stays as in the file, and every sentence ends", () => {
    const fit = done(
      fitSwing(bare, filmed(bare, { ...TRUTH, release: 8 * DEGREE }, every(0.03, 6), noise(5, 0.4 * DEGREE))),
    );
    expect(fit.refused.length).toBeGreaterThan(0);
    for (const sentence of fit.says) expect(sentence).toMatch(/[A-Z].*\.$/);
    expect(JSON.parse(JSON.stringify(fit))).toEqual(fit);
  });
});

describe("data that tell nothing", () => {
  const trace = (time: readonly number[], angle: readonly number[]) =>
    fitSwing(bare, {
      kind: "trace",
      samples: { time: Float64Array.from(time), angle: Float64Array.from(angle) },
    });

  test.each([
    [
      "a flap that hangs still",
      trace(
        every(0.1, 5),
        every(0.1, 5).map(() => 0.1),
      ),
      "hold no swing",
    ],
    [
      "a flap that is only held",
      trace(
        every(0.1, 5),
        every(0.1, 5).map((t) => (t === 0 ? 1 : 1.001)),
      ),
      "no swing|smaller",
    ],
    ["five readings", trace([0, 1, 2, 3, 4], [1, -1, 1, -1, 1]), "at least 12 readings"],
    [
      "radians called degrees",
      trace(
        every(0.02, 9),
        [...filmed(bare, TRUTH, every(0.02, 9), () => 0).samples.angle].map((a) => a * DEGREE),
      ),
      "angle_rad",
    ],
    ["nothing", trace([], []), "hold no swing"],
  ])("%s", (_, fit, says) => {
    expect(fit.ok).toBe(false);
    expect(fit.ok ? "" : fit.says).toMatch(new RegExp(says));
  });

  test("a let-go inside the magnets' well", () => {
    const caught = door({ magnets: { ...MAGNETS, gap: "2 mm" } });
    const fit = fitSwing(
      caught,
      filmed(caught, { ...TRUTH, release: 9 * DEGREE }, every(0.01, 5), noise(1, 0.05 * DEGREE)),
    );
    expect(fit.ok ? "" : fit.says).toMatch(/magnets catch the flap at once/);
  });

  test("noise alone never throws", () => {
    for (let seed = 0; seed < 5; seed++) {
      const draw = noise(seed, 0.5);
      const fit = trace(every(0.05, 6), every(0.05, 6).map(draw));
      expect(fit.ok || fit.says.length > 20).toBe(true);
    }
  });
});
