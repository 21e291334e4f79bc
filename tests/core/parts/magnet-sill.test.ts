import { describe, expect, test } from "vitest";
import { edgeDip } from "../../../core/door/swept.ts";
import { lateralStiffness, type MagnetPair, MU0 } from "../../../core/parts/magnet.ts";
import { discAxialField, discRadialField } from "../../../core/parts/magnet-disc.ts";
import { sillTorque } from "../../../core/parts/magnet-sill.ts";
import { gauss } from "./hankel.ts";

const PAIR: MagnetPair = { radius: 0.005, thickness: 0.005, gap: 0.003 };
const DEPTH = 0.3;

/**
 * Torque about the hinge on the sill's magnet, from the flap's discs: the same pair seen from the other side. The
 * sill's faces are integrated by panelled Gauss–Legendre, the field taken in the flap's own frame.
 */
function torqueOnSill(pair: MagnetPair, depth: number, angle: number): number {
  const { radius, thickness, gap } = pair;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const flaps = [
    [depth, 1],
    [depth - thickness, -1],
  ];
  const faces = [
    [depth + gap, -1],
    [depth + gap + thickness, 1],
  ];
  const at = (below: number, r: number, psi: number) => {
    const [x, y, across] = [r * Math.cos(psi), -below, r * Math.sin(psi)];
    const along = x * cos + y * sin; // in the flap's frame: along the swing, and down the flap
    const down = x * sin - y * cos;
    const rho = Math.hypot(along, across);
    let torque = 0;
    for (const [flap, charge] of flaps) {
      const pull = (charge * discRadialField(radius, rho, down - flap) * along) / rho;
      const push = charge * discAxialField(radius, rho, down - flap);
      const [fx, fy] = [pull * cos + push * sin, pull * sin - push * cos];
      torque += x * fy - y * fx;
    }
    return torque;
  };
  let sum = 0;
  for (const [below, charge] of faces) {
    const ring = (r: number) => 2 * r * gauss((psi) => at(below, r, psi), 0, Math.PI, 4);
    sum += charge * gauss(ring, 0, radius, 3);
  }
  return sum / (4 * Math.PI * MU0);
}

describe("a sill pair", () => {
  test("turns the frame as hard as it turns the flap", () => {
    for (const depth of [0.05, 0.3]) {
      const onFlap = sillTorque(PAIR, depth);
      const peak = Math.abs(onFlap(0.005 / depth));
      for (const slide of [0.001, 0.005, 0.01, 0.03]) {
        const angle = slide / depth;
        expect(Math.abs(onFlap(angle) + torqueOnSill(PAIR, depth, angle))).toBeLessThan(1e-10 * peak);
      }
    }
  });

  // Far from the hinge the flap's magnet only slides: its torque is the lever times the jamb pair's sideways pull.
  test("is a jamb pair at the end of a long lever, the nearer the longer", () => {
    const errors = [10, 100, 1000].map((depth) =>
      Math.max(
        ...[0.001, 0.004, 0.008, 0.015].map((slide) => {
          const torque = sillTorque(PAIR, depth)(Math.asin(slide / depth));
          const jamb = -slide * lateralStiffness(PAIR, slide);
          return Math.abs(torque / depth - jamb) / Math.abs(0.005 * lateralStiffness(PAIR, 0.005));
        }),
      ),
    );
    expect(errors[2]).toBeLessThan(2e-5);
    expect(errors[0] / errors[1]).toBeCloseTo(10, 0);
    expect(errors[1] / errors[2]).toBeCloseTo(10, 0);
  });

  // Two dipoles, E = μ0 m²/(4π r³) (m1·m2 − 3 (m1·r)(m2·r)/r²) (Jackson, Classical Electrodynamics, eq. 5.56 with the
  // first dipole's field put in), the flap's at the magnet's centre and turning with it.
  test("turns like two dipoles when far apart", () => {
    const depth = 0.05;
    const errors = [0.2, 0.4].map((gap) => {
      const moment = (Math.PI * PAIR.radius ** 2 * PAIR.thickness) / MU0;
      const flap = depth - PAIR.thickness / 2;
      const below = depth + gap + PAIR.thickness / 2;
      const energy = (angle: number) => {
        const [x, y] = [flap * Math.sin(angle), below - flap * Math.cos(angle)];
        const r2 = x * x + y * y;
        const alongFlap = x * Math.sin(angle) - y * Math.cos(angle);
        const bracket = Math.cos(angle) - (3 * alongFlap * -y) / r2;
        return (MU0 * moment ** 2 * bracket) / (4 * Math.PI * r2 ** 1.5);
      };
      const h = 1e-3;
      const dipoles = -(energy(0.5 + h) - energy(0.5 - h)) / (2 * h);
      return Math.abs(sillTorque({ ...PAIR, gap }, depth)(0.5) / dipoles - 1);
    });
    expect(errors[0]).toBeLessThan(3e-3);
    expect(errors[1]).toBeLessThan(0.35 * errors[0]);
  });

  test("has converged: a slightly wider gap, with fewer points, joins on smoothly", () => {
    for (const closeness of [0.5, 2, 8, 20]) {
      const at = (gap: number) =>
        sillTorque({ ...PAIR, gap: gap + edgeDip(PAIR.radius, DEPTH) }, DEPTH)(0.02);
      const gap = PAIR.radius / closeness;
      const h = 0.005 * gap;
      const sixth = at(gap - 3 * h) - 6 * at(gap - 2 * h) + 15 * at(gap - h) - 20 * at(gap);
      const rest = 15 * at(gap + h) - 6 * at(gap + 2 * h) + at(gap + 3 * h);
      expect(Math.abs((sixth + rest) / at(gap))).toBeLessThan(5e-9);
    }
  });

  test("pulls nowhere when closed", () => {
    expect(Math.abs(sillTorque(PAIR, DEPTH)(0))).toBeLessThan(1e-15);
  });
});
