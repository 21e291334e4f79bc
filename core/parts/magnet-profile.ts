/**
 * A costly smooth function of the flap's angle, kept as Chebyshev panels: close to rounding, with derivatives.
 * The torque table's cells are laid out and filled from this.
 */

/** Points per panel. */
const POINTS = 16;
/** A panel is good when its last coefficients are below this share of the function's greatest value. */
const TAIL = 1e-10;
/** Panels widen by this much after each good one, and halve when the function turns too quickly. */
const GROWTH = 1.6;
interface Panel {
  readonly start: number;
  readonly width: number;
  /** Chebyshev coefficients over the panel of the function and its 1st to 6th derivatives. */
  readonly derivatives: readonly Float64Array[];
}

export interface Profile {
  readonly end: number;
  readonly panels: readonly Panel[];
  /** Greatest magnitude met at the points of the panels. */
  readonly peak: number;
}

const ORDER = 6;

/** Chebyshev coefficients of the interpolant at the POINTS Chebyshev points of the first kind, and its greatest value. */
function sample(f: (angle: number) => number, start: number, width: number) {
  const values = Array.from({ length: POINTS }, (_, i) =>
    f(start + 0.5 * width * (1 + Math.cos(((i + 0.5) * Math.PI) / POINTS))),
  );
  const coefficients = new Float64Array(POINTS);
  for (let k = 0; k < POINTS; k++) {
    let sum = 0;
    for (let i = 0; i < POINTS; i++) sum += values[i] * Math.cos((k * (i + 0.5) * Math.PI) / POINTS);
    coefficients[k] = ((k === 0 ? 1 : 2) * sum) / POINTS;
  }
  return { coefficients, greatest: Math.max(...values.map(Math.abs)) };
}

/** Coefficients of the derivative (Mason & Handscomb, Chebyshev Polynomials, eq. 2.52), per unit of angle. */
function differentiate(c: Float64Array, width: number): Float64Array {
  const d = new Float64Array(c.length);
  for (let k = c.length - 2; k >= 0; k--) d[k] = (k + 2 < c.length ? d[k + 2] : 0) + 2 * (k + 1) * c[k + 1];
  d[0] *= 0.5;
  return d.map((value) => (2 * value) / width);
}

function panelOf(coefficients: Float64Array, start: number, width: number): Panel {
  const derivatives = [coefficients];
  for (let k = 0; k < ORDER; k++) derivatives.push(differentiate(derivatives[k], width));
  return { start, width, derivatives };
}

/**
 * Panels over 0…end. `widths`: of the first panel tried, and below which none is halved again (where the function's
 * own rounding is past the tail, halving would never end). `peak` is a value near the function's greatest, against
 * which its error is judged (the panels' own greatest takes over where larger).
 */
export function profile(
  f: (angle: number) => number,
  end: number,
  widths: { readonly first: number; readonly least: number },
  peak: number,
): Profile {
  const panels: Panel[] = [];
  let greatest = peak;
  let start = 0;
  let width = Math.min(widths.first, end);
  while (start < end) {
    const left = end - start;
    const tried = left < 1.3 * width ? left : width;
    const { coefficients: c, greatest: here } = sample(f, start, tried);
    greatest = Math.max(greatest, here);
    const tail = Math.abs(c[POINTS - 1]) + Math.abs(c[POINTS - 2]) + Math.abs(c[POINTS - 3]);
    if (tail <= TAIL * greatest || tried <= widths.least) {
      panels.push(panelOf(c, start, tried));
      start = tried === left ? end : start + tried;
      width = tried * GROWTH;
    } else width = 0.5 * tried;
  }
  return { end, panels, peak: greatest };
}

function panelAt(of: Profile, angle: number): Panel {
  let low = 0;
  let high = of.panels.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (of.panels[middle].start <= angle) low = middle;
    else high = middle - 1;
  }
  return of.panels[low];
}

/** Sum of a Chebyshev series at x in −1…1 (Clenshaw). */
function clenshaw(c: Float64Array, x: number): number {
  let b1 = 0;
  let b2 = 0;
  for (let k = c.length - 1; k > 0; k--) {
    const b = c[k] + 2 * x * b1 - b2;
    b2 = b1;
    b1 = b;
  }
  return c[0] + x * b1 - b2;
}

/** The function's derivative of an order 0…6 at an angle within 0…end. */
export function profileAt(of: Profile, angle: number, order = 0): number {
  const panel = panelAt(of, angle);
  return clenshaw(panel.derivatives[order], (2 * (angle - panel.start)) / panel.width - 1);
}
