/** The model page's integrals over q, as they stand there: panelled 16-point Gauss–Legendre, Bessel functions by stdlib. */
import besselj0 from "@stdlib/math-base-special-besselj0";
import besselj1 from "@stdlib/math-base-special-besselj1";
import type { MagnetPair } from "../../../core/parts/magnet.ts";

/** Positive nodes and weights of 16-point Gauss–Legendre (Abramowitz & Stegun table 25.4). */
const RULE = [
  [0.0950125098376374, 0.1894506104550685],
  [0.2816035507792589, 0.1826034150449236],
  [0.4580167776572274, 0.1691565193950025],
  [0.6178762444026438, 0.1495959888165767],
  [0.755404408355003, 0.1246289712555339],
  [0.8656312023878318, 0.0951585116824928],
  [0.9445750230732326, 0.0622535239386479],
  [0.9894009349916499, 0.0271524594117541],
] as const;

/** ∫ f over from…to by panels. */
export function gauss(f: (x: number) => number, from: number, to: number, panels: number): number {
  const half = (0.5 * (to - from)) / panels;
  let sum = 0;
  for (let i = 0; i < panels; i++) {
    const middle = from + (2 * i + 1) * half;
    for (const [node, weight] of RULE) sum += weight * (f(middle - half * node) + f(middle + half * node));
  }
  return half * sum;
}

/** ∫₀^∞ f(q) dq for an f that falls as e^(−q decay) and waves no faster than its lengths summed, `finer` times as fine. */
export function hankel(f: (q: number) => number, decay: number, lengths: number, finer = 1): number {
  const end = 40 / decay;
  return gauss(f, 0, end, Math.ceil(finer * Math.max(30, (end * (lengths + decay)) / Math.PI)));
}

const MU0 = 4e-7 * Math.PI;

function pairIntegral(pair: MagnetPair, offset: number, kind: (q: number) => number, power: number): number {
  const { radius, thickness, gap } = pair;
  const integrand = (q: number) =>
    kind(q) * besselj1(q * radius) ** 2 * Math.expm1(-q * thickness) ** 2 * Math.exp(-q * gap) * q ** -power;
  return ((Math.PI * radius * radius) / MU0) * hankel(integrand, gap, offset + 2 * radius);
}

/** The model's E(s), attracting, per Br². */
export function hankelEnergy(pair: MagnetPair, offset: number): number {
  return -pairIntegral(pair, offset, (q) => besselj0(q * offset), 2);
}

/** Its derivative in s. */
export function hankelLateralPull(pair: MagnetPair, offset: number): number {
  return pairIntegral(pair, offset, (q) => besselj1(q * offset), 1);
}

/** Minus its derivative in the gap at s = 0, attracting positive: −∂E/∂gap with its sign turned. */
export function hankelAxialPull(pair: MagnetPair): number {
  return pairIntegral(pair, 0, () => 1, 1);
}

export { besselj0, besselj1 };
