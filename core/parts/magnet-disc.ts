/**
 * The field of a uniformly charged disc: what a uniformly magnetised disc's pole face is.
 * Unit charge density and the bare kernel r/|r|³; lengths in any one unit, results without dimension.
 * The disc (radius R) lies in the plane z = 0 around the origin; ρ is the distance from its axis.
 */

/** Below this relative size of the AGM's difference the next one is past double precision. */
const AGM_END = 1e-8;

/**
 * ∫₀^∞ J1(q s) J1(q u) e^(−q z) dq / (s u), the coupling of two coaxial rings, in 1/length³. Smooth and positive,
 * also at s = 0 or u = 0; infinite at s = u, z = 0.
 *
 * Maxwell's ring formula [(2/k − k) K − (2/k) E]/(π √(s u)), k² = 4 s u/((s + u)² + z²) (Treatise, art. 701; DLMF
 * 19.34), written with the sums of the arithmetic-geometric mean, 2 (K − E) − k² K = K Σ_{n≥1} 2ⁿ cₙ²
 * (Abramowitz & Stegun 17.6.4), so that nothing cancels for distant or small rings.
 */
export function ringCoupling(s: number, u: number, z: number): number {
  const far2 = (s + u) * (s + u) + z * z;
  const modulus = Math.sqrt(((s - u) * (s - u) + z * z) / far2); // k'
  const scale = 2 / (far2 * (1 + modulus)); // c1 = s u scale
  const first = s * u * scale;
  let a = 0.5 * (1 + modulus);
  let b = Math.sqrt(modulus);
  let ratio = 1; // cₙ/c1
  let weight = 1;
  let sum = 1;
  let c = first;
  while (c > AGM_END * a) {
    const next = 0.5 * (a + b);
    b = Math.sqrt(a * b);
    ratio *= c / (4 * next); // cₙ₊₁ = cₙ²/(4 aₙ₊₁)
    c = ratio * first;
    a = next;
    weight *= 2;
    sum += weight * ratio * ratio;
  }
  return (Math.sqrt(far2) * scale * scale * sum) / (2 * a);
}

/** Field away from the axis at (ρ, z), positive outwards. Even in z. */
export function discRadialField(radius: number, rho: number, z: number): number {
  return 2 * Math.PI * radius * radius * rho * ringCoupling(rho, radius, z);
}

/** Stands in for γ = 0 (a point straight above the rim), where the closed form is a limit. */
const RIM = 1e-30;

/**
 * Field along the axis at (ρ, z), positive away from the disc for z > 0; odd in z. At z = 0: the limit z → 0⁺.
 * Derby & Olbert, Am. J. Phys. 78 (2010) 229, eq. (5): a solenoid's end is a charged disc plus, inside its bore, the
 * uniform field. Checked in the tests against the Hankel integral.
 */
export function discAxialField(radius: number, rho: number, z: number): number {
  const sum = radius + rho;
  const difference = radius - rho;
  const height = Math.abs(z);
  const far = Math.sqrt(height * height + sum * sum);
  const modulus = Math.sqrt(height * height + difference * difference) / far;
  const gamma = Math.abs(difference) < RIM * sum ? RIM : difference / sum;
  const bore = gamma > 0 ? 2 * Math.PI : 0;
  if (height === 0) return bore;
  const size = bore - (4 * radius * height * rimIntegral(modulus, gamma)) / (sum * far);
  return z < 0 ? -size : size;
}

/**
 * C(k', γ², 1, γ) = ∫₀^{π/2} (cos² φ + γ sin² φ) dφ / [(cos² φ + γ² sin² φ) √(cos² φ + k'² sin² φ)], γ ≠ 0, k' > 0:
 * Bulirsch's general complete elliptic integral (Numer. Math. 13 (1969) 305; DLMF 19.2.11).
 */
function rimIntegral(modulus: number, gamma: number): number {
  let k = modulus;
  let p = Math.abs(gamma);
  let c = 1;
  let s = gamma > 0 ? 1 : -1;
  let em = 1;
  let kk = k;
  for (;;) {
    const f = c;
    c += s / p;
    const g = kk / p;
    s = 2 * (s + f * g);
    p += g;
    const previous = em;
    em += k;
    if (Math.abs(previous - k) <= previous * AGM_END) break;
    k = 2 * Math.sqrt(kk);
    kk = k * em;
  }
  return (0.5 * Math.PI * (s + c * em)) / (em * (em + p));
}
