/**
 * The magnet's kernels in its own frame, as pure functions: a uniformly magnetised disc, and a pair of equal discs
 * with parallel axes. Lengths in m, flux densities in T, forces in N, energies in J, per pair.
 *
 * Pole faces are uniformly charged discs (Furlani, *Permanent Magnet and Electromechanical Devices*, ch. 3; Vokoun
 * et al., J. Magn. Magn. Mater. 321 (2009) 3758, eqs. 5 to 8). Vokoun's integrals over q are kept in a form that is
 * quicker and as exact: J1(qR)² = (4 q R/π) ∫₀^{π/2} sin² φ cos φ J1(2 q R cos φ) dφ (from DLMF 10.9.26, by parts)
 * leaves an integral over q with a closed form and a periodic one over φ, whose midpoint rule converges
 * geometrically.
 */
import { discAxialField, ringCoupling } from "./magnet-disc.ts";

/** Magnetic constant, N/A² (4π·10⁻⁷; CODATA 2022 differs by 1.3·10⁻¹⁰ of it). */
export const MU0 = 4e-7 * Math.PI;
/** Reversible temperature coefficient of NdFeB's remanence, 1/K (IEC 60404-8-1 gives the grades' values). */
export const REMANENCE_COEFFICIENT = -0.0011;
/** Density of sintered NdFeB, kg/m³ (IEC 60404-8-1, from memory: 7400 to 7700). */
export const MAGNET_DENSITY = 7500;
/** Temperature at which a remanence is stated, °C. */
const REFERENCE_TEMPERATURE = 20;

/** Two equal discs, axes parallel, facing faces `gap` apart along the axis. */
export interface MagnetPair {
  readonly radius: number;
  readonly thickness: number;
  readonly gap: number;
}

/** Remanence at a temperature in °C, T: linear, never below 0 (the line says nothing near the Curie point). */
export function remanenceAt(remanence20: number, temperature: number): number {
  return Math.max(0, remanence20 * (1 + REMANENCE_COEFFICIENT * (temperature - REFERENCE_TEMPERATURE)));
}

/** Flux density on the axis of a disc, `height` above its pole face, T (model section 3, checks). */
export function onAxisField(remanence: number, radius: number, thickness: number, height: number): number {
  const end = (z: number) => z / Math.hypot(z, radius);
  return 0.5 * remanence * (end(height + thickness) - end(height));
}

/** Flux density normal to the pole face, at `rho` from the axis and `height` above the face, T. */
export function normalField(
  remanence: number,
  radius: number,
  thickness: number,
  rho: number,
  height: number,
): number {
  const near = discAxialField(radius, rho, height);
  const far = discAxialField(radius, rho, height + thickness);
  return (remanence * (near - far)) / (4 * Math.PI);
}

/** Midpoint points over 0…π/2 that bring the periodic integrals' error below 10⁻¹⁰ of them. */
function pointsFor(radius: number, distance: number): number {
  return Math.min(4000, 8 + Math.ceil((12 * radius) / distance));
}

/** Σ over the three distances of a pair's faces: facing once, one near and one far (−2), far and far once. */
function overFaces(pair: MagnetPair, term: (distance: number) => number): number {
  const { gap, thickness } = pair;
  return term(gap) - 2 * term(gap + thickness) + term(gap + 2 * thickness);
}

/** (2/π) ∫₀^{π/2} sin² φ f(4 R² cos² φ) dφ by the midpoint rule. */
function faceAverage(radius: number, points: number, f: (u2: number) => number): number {
  let sum = 0;
  for (let j = 0; j < points; j++) {
    const cos2 = 0.5 * (1 + Math.cos(((j + 0.5) * Math.PI) / points));
    sum += (1 - cos2) * f(4 * radius * radius * cos2);
  }
  return sum / points;
}

/** Attraction of two coaxial unlike pole discs, ∫ J1(qR)² e^(−qz)/q dq, without dimension. */
function coaxialPull(radius: number, z: number): number {
  return faceAverage(radius, pointsFor(radius, z), (u2) => {
    const rho = Math.sqrt(u2 + z * z);
    return u2 / (rho * (rho + z));
  });
}

/**
 * Axial force of a coaxial attracting pair, N, attracting positive (Vokoun eq. 8):
 * (π Br² R²/μ0) ∫ J1(qR)² (1 − e^(−qt))² e^(−q gap)/q dq. Far apart: 3 μ0 m²/(2π z⁴).
 */
export function axialPull(pair: MagnetPair, remanence: number): number {
  const scale = (Math.PI * remanence * remanence * pair.radius * pair.radius) / MU0;
  return scale * overFaces(pair, (z) => coaxialPull(pair.radius, z));
}

/** Distance that decides how fast the integral over φ converges, at a lateral offset. */
function nearest(radius: number, offset: number, z: number): number {
  return offset > 2 * radius ? Math.hypot(offset - 2 * radius, z) : z;
}

/** ∫ J1(qs) J1(qR)² e^(−qz)/(q s) dq: lateral pull over offset of two unlike pole discs, 1/m. */
function lateralPullOverOffset(radius: number, offset: number, z: number): number {
  const points = pointsFor(radius, nearest(radius, offset, z));
  let sum = 0;
  for (let j = 0; j < points; j++) {
    const cos2 = 0.5 * (1 + Math.cos(((j + 0.5) * Math.PI) / points));
    sum += (1 - cos2) * cos2 * ringCoupling(offset, 2 * radius * Math.sqrt(cos2), z);
  }
  return (4 * radius * radius * sum) / points;
}

/**
 * (dE/ds)/s of an attracting pair at lateral offset s, per Br², N/(m T²): positive where the pair is pulled back in
 * line. Finite at s = 0, where it is the lateral stiffness. (Derivative of the model's E(s).)
 */
export function lateralStiffness(pair: MagnetPair, offset: number): number {
  const scale = (Math.PI * pair.radius * pair.radius) / MU0;
  return scale * overFaces(pair, (z) => lateralPullOverOffset(pair.radius, offset, z));
}

/** ∫ J0(qs) J1(qR)² e^(−qz)/q² dq, m: the φ integral over a second periodic one, the angle between s and 2R cos φ. */
function lateralPotential(radius: number, offset: number, z: number): number {
  const points = pointsFor(radius, nearest(radius, offset, z));
  let sum = 0;
  for (let i = 0; i < 2 * points; i++) {
    const c = Math.cos(((i + 0.5) * Math.PI) / (2 * points));
    sum += faceAverage(radius, points, (u2) => {
      const u = Math.sqrt(u2);
      const w2 = offset * offset + u2 - 2 * offset * u * c;
      return (u * (u - offset * c)) / (Math.sqrt(w2 + z * z) + z);
    });
  }
  return sum / (2 * points);
}

/** Energy of an attracting pair at lateral offset s, J: the model's E(s), zero at infinity. Costly; not for tables. */
export function lateralEnergy(pair: MagnetPair, remanence: number, offset: number): number {
  const scale = (Math.PI * remanence * remanence * pair.radius * pair.radius) / MU0;
  return -scale * overFaces(pair, (z) => lateralPotential(pair.radius, offset, z));
}

/** Probe height above the pole face, m (16 CFR 1262 by ASTM F963; depth from memory). */
const PROBE_HEIGHT = 0.38e-3;
/** Steps over the radius in the search for the greatest field; the ridge by the rim is about a probe height wide. */
const SEARCH_STEPS = 400;

/** Greatest flux density normal to the pole face at the probe height, over the face, T. */
export function greatestFaceField(remanence20: number, radius: number, thickness: number): number {
  const field = (rho: number) => normalField(remanence20, radius, thickness, rho, PROBE_HEIGHT);
  let best = 0;
  for (let i = 1; i <= SEARCH_STEPS; i++) {
    if (field((i * radius) / SEARCH_STEPS) > field((best * radius) / SEARCH_STEPS)) best = i;
  }
  const low = (Math.max(0, best - 1) * radius) / SEARCH_STEPS;
  const high = (Math.min(SEARCH_STEPS, best + 1) * radius) / SEARCH_STEPS;
  return Math.max(field((best * radius) / SEARCH_STEPS), goldenMaximum(field, low, high));
}

/** Greatest value of a function with one maximum between two points, by golden section. */
function goldenMaximum(f: (x: number) => number, low: number, high: number): number {
  const golden = 0.5 * (Math.sqrt(5) - 1);
  let [a, b] = [low, high];
  for (let i = 0; i < 40; i++) {
    const [left, right] = [b - golden * (b - a), a + golden * (b - a)];
    if (f(left) > f(right)) b = right;
    else a = left;
  }
  return f(0.5 * (a + b));
}

/**
 * Flux index, kG² mm²: (greatest normal flux density 0.38 mm above the pole face, at 20 °C, kG)² × pole area, mm².
 * 50 is the limit of 16 CFR 1262, ASTM F963 and ISO 8124-1 for loose magnets. For a squat disc the greatest field
 * is a ridge near the rim, not on the axis.
 */
export function fluxIndex(remanence20: number, diameter: number, thickness: number): number {
  const kilogauss = 10 * greatestFaceField(remanence20, diameter / 2, thickness);
  const millimetres = 1000 * diameter;
  return (kilogauss * kilogauss * Math.PI * millimetres * millimetres) / 4;
}
