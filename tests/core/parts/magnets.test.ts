import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axialPull, lateralEnergy } from "../../../core/parts/magnet.ts";
import { torqueTable } from "../../../core/parts/magnet-family.ts";
import {
  leastGap,
  magnetMasses,
  magnetPair,
  magnetResults,
  magnetRows,
  magnetTorque,
  torquePerRemanence2,
} from "../../../core/parts/magnets.ts";
import reference from "../../reference/magnets/magnets.json" with { type: "json" };
import { anyMagnets, magnets } from "./magnet-doors.ts";

const STOP = (100 * Math.PI) / 180;

function resultsOf(over: Record<string, number | string>, stop = STOP) {
  const m = magnets(over);
  return magnetResults(m, torqueTable(m, stop), stop);
}

// tests/reference/magnets/magnets.py: another library's field, face charges integrated; its own error is 1e-13 N m.
describe.each(Object.entries(reference.cases))(
  "against an outside field integrated over the faces: %s",
  (_, truth) => {
    const m = magnets(truth.magnets);
    const peak = Math.max(...truth.torque.map(([, torque]) => Math.abs(torque)));

    test("the torque is the same at every angle", () => {
      for (const [angle, torque] of truth.torque) {
        expect(Math.abs(magnetTorque(m, angle) - torque)).toBeLessThan(1e-10 * peak);
      }
    });

    test("so are the axial force and the flux index", () => {
      const results = magnetResults(m, torqueTable(m, STOP), STOP);
      expect(results.axialForce / truth.axialForce).toBeCloseTo(1, 10);
      expect(results.fluxIndex / truth.fluxIndex).toBeCloseTo(1, 9);
    });
  },
);

describe("the torque of an arrangement", () => {
  test("is minus the slope of the energy summed over the pairs", () => {
    const m = magnets({ perSide: 3, pitch: 0.012, polarity: "alternating" });
    const rows = magnetRows(m);
    const energy = (angle: number) => {
      let sum = 0;
      rows.forEach((flap, i) => {
        rows.forEach((jamb, j) => {
          const offset = Math.sqrt(flap ** 2 + jamb ** 2 - 2 * flap * jamb * Math.cos(angle));
          sum += (-1) ** (i + j) * lateralEnergy(magnetPair(m), m.remanence, offset);
        });
      });
      return m.sides * sum;
    };
    const h = 2e-5;
    for (const angle of [0.005, 0.02, 0.05, 0.3]) {
      const near = energy(angle + h) - energy(angle - h);
      const far = energy(angle + 2 * h) - energy(angle - 2 * h);
      expect(magnetTorque(m, angle)).toBeCloseTo(-(8 * near - far) / (12 * h), 6);
    }
  });

  test("is odd in the angle, goes with the sides, turns round for repulsion", () => {
    fc.assert(
      fc.property(anyMagnets, fc.double({ min: 0.001, max: 1.5, noNaN: true }), (m, angle) => {
        const torque = magnetTorque(m, angle);
        const size = Math.abs(torque) + 1e-9 * Math.abs(magnetTorque(m, 0.02));
        expect(Math.abs(magnetTorque(m, -angle) + torque)).toBeLessThan(1e-9 * size);
        const single = magnetTorque({ ...m, sides: 1 }, angle);
        expect(Math.abs(m.sides * single - torque)).toBeLessThan(1e-12 * size);
        const turned = m.force === "attract" ? "repel" : "attract";
        expect(magnetTorque({ ...m, force: turned }, angle)).toBe(-torque);
      }),
      { numRuns: 30 },
    );
  });

  test("does not know a polarity where there is one magnet a side", () => {
    expect(magnetTorque(magnets({ polarity: "alternating" }), 0.02)).toBe(magnetTorque(magnets(), 0.02));
  });

  test("of rows alike and of rows alternating have the facing pairs as their mean", () => {
    const over = { perSide: 2, pitch: 0.015 };
    const mean = (angle: number) =>
      0.5 *
      (magnetTorque(magnets(over), angle) +
        magnetTorque(magnets({ ...over, polarity: "alternating" }), angle));
    for (const angle of [0.01, 0.05, 0.2]) {
      const lower = magnetTorque(magnets(), angle);
      const upper = magnetTorque(magnets({ distanceFromHinge: 0.285 }), angle);
      expect(mean(angle)).toBeCloseTo(lower + upper, 12);
    }
  });

  test("goes with the cube of size, being energy per angle", () => {
    const m = magnets({ perSide: 2 });
    const twice = magnets({
      perSide: 2,
      pitch: 0.05,
      diameter: 0.02,
      thickness: 0.01,
      gap: 0.006,
      distanceFromHinge: 0.6,
    });
    for (const angle of [0.01, 0.1, 1]) {
      expect(magnetTorque(twice, angle) / magnetTorque(m, angle)).toBeCloseTo(8, 9);
    }
  });

  test("is that of the narrowest gap it follows below that", () => {
    for (const arrangement of ["jamb", "sill"]) {
      const m = magnets({ arrangement });
      const least = leastGap(m);
      expect(torquePerRemanence2(m, 0.1 * least)(0.01)).toBe(torquePerRemanence2(m, least)(0.01));
    }
  });
});

describe("the figures reported", () => {
  test("name the greatest torque within the stops, at a turning point or at the stop", () => {
    const { peakTorque, peakAngle, greatestTorque } = resultsOf({});
    expect(greatestTorque).toBe(peakTorque);
    const size = (angle: number) => -magnetTorque(magnets(), angle);
    expect(peakTorque / size(peakAngle)).toBeCloseTo(1, 7);
    expect(size(peakAngle)).toBeGreaterThan(size(peakAngle + 2e-4));
    expect(size(peakAngle)).toBeGreaterThan(size(peakAngle - 2e-4));
    const short = resultsOf({}, 0.01);
    expect(short.peakAngle).toBeCloseTo(0.01, 12);
    expect(short.peakTorque / size(0.01)).toBeCloseTo(1, 7);
  });

  test("of repelling magnets: pushed from the centre, pulled back only further out", () => {
    const [pulled, pushed] = [resultsOf({}), resultsOf({ force: "repel" })];
    expect(pushed.centreStiffness).toBeCloseTo(-pulled.centreStiffness, 9);
    expect(pushed.axialForce).toBe(-pulled.axialForce);
    expect(pushed.greatestTorque).toBeCloseTo(pulled.greatestTorque, 9);
    expect(pushed.greatestAngle).toBeCloseTo(pulled.greatestAngle, 9);
    expect(pushed.peakAngle).toBeGreaterThan(pushed.greatestAngle);
    expect(pushed.peakTorque).toBeLessThan(0.1 * pushed.greatestTorque);
    expect(magnetTorque(magnets({ force: "repel" }), pushed.peakAngle)).toBeCloseTo(-pushed.peakTorque, 8);
  });

  test("are a peak of 0 at 0 where nothing within the stops pulls back", () => {
    const none = resultsOf({ force: "repel" }, 0.03);
    expect([none.peakTorque, none.peakAngle]).toEqual([0, 0]);
    expect(none.greatestTorque).toBeGreaterThan(1);
  });

  test("take the remanence at the magnets' temperature, the flux index at 20 °C", () => {
    const [cold, warm] = [resultsOf({}), resultsOf({ temperature: 70 })];
    const share = (1 - 0.0011 * 50) ** 2;
    expect(warm.peakTorque / cold.peakTorque).toBeCloseTo(share, 10);
    expect(warm.axialForce / cold.axialForce).toBeCloseTo(share, 10);
    expect(warm.fluxIndex).toBe(cold.fluxIndex);
  });

  test("give the force of one facing pair, however many there are", () => {
    expect(resultsOf({ perSide: 3 }).axialForce).toBe(axialPull(magnetPair(magnets()), 1.32));
  });
});

describe("the flap's own magnets", () => {
  test("weigh 7500 kg/m³ each, at their centres", () => {
    const each = 7500 * Math.PI * 0.005 ** 2 * 0.005;
    const jamb = magnetMasses(magnets({ perSide: 2 }));
    expect(jamb.map(({ distance }) => distance)).toEqual([0.3, 0.3, 0.3 - 0.025, 0.3 - 0.025]);
    for (const { mass } of jamb) expect(mass).toBeCloseTo(each, 12);
    const sill = magnetMasses(magnets({ arrangement: "sill" }));
    expect(sill.map(({ distance }) => distance)).toEqual([0.2975, 0.2975]);
  });
});
