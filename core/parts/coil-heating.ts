/**
 * How hot the coil gets on a constant voltage (model, section 5). One thermal node:
 *   dT/dt = (T_a + R_th P(T) − T)/τ_th,   P = i(T)² R(T),   i = V/(R(T) + R_s),
 * R(T) linear in T (copper). Temperatures in °C.
 *
 * Both questions are asked of the coil's resistance r = R(T) instead of T, in which the model is a ratio of
 * polynomials: with K = α R_20 R_th V² and r_a = R(T_a),
 *   τ_th dr/dt = −c(r)/(r + R_s)²,   c(r) = (r − r_a)(r + R_s)² − K r.
 * For r > r_a, (r − r_a)(r + R_s)²/r rises, so c has exactly one root there: the one fixed point, stable.
 */

/** Temperature coefficient of copper at 20 °C, 1/K (IEC 60028). */
export const COPPER_COEFFICIENT = 0.00393;

export interface HeatedCoil {
  /** Coil resistance at 20 °C, ohm. */
  readonly resistance20: number;
  /** Volts across coil and series resistance. */
  readonly voltage: number;
  /** R_s: what lies in series with the coil but does not heat it, ohm. */
  readonly seriesResistance: number;
  /** °C. */
  readonly ambient: number;
  /** Coil to ambient, K/W. */
  readonly thermalResistance: number;
  /** τ_th, s. */
  readonly timeConstant: number;
}

/** R(T) = R_20 (1 + 0.00393 (T − 20 °C)), ohm (IEC 60028). */
export function resistanceAt(resistance20: number, temperature: number): number {
  return resistance20 * (1 + COPPER_COEFFICIENT * (temperature - 20));
}

/** The inverse of `resistanceAt`, °C. */
export function temperatureOf(resistance20: number, resistance: number): number {
  return 20 + (resistance / resistance20 - 1) / COPPER_COEFFICIENT;
}

/** Heat in the coil at a temperature, W: i² R. */
export function coilPower(coil: HeatedCoil, temperature: number): number {
  const resistance = resistanceAt(coil.resistance20, temperature);
  const current = coil.voltage / (resistance + coil.seriesResistance);
  return current * current * resistance;
}

/** The model's right-hand side, K/s. */
export function heatingRate(coil: HeatedCoil, temperature: number): number {
  const target = coil.ambient + coil.thermalResistance * coilPower(coil, temperature);
  return (target - temperature) / coil.timeConstant;
}

/** Where the coil ends if it is never switched off, °C: T = T_a + R_th P(T). */
export function continuousTemperature(coil: HeatedCoil): number {
  return temperatureOf(coil.resistance20, continuousResistance(coil));
}

function heatingConstant(coil: HeatedCoil): number {
  return COPPER_COEFFICIENT * coil.resistance20 * coil.thermalResistance * coil.voltage * coil.voltage;
}

/**
 * The root of c(r) above r_a. The start is the root for R_s = 0, which heats most at the same r and so lies
 * at or above; c is convex there, so Newton's steps come down on the root without passing it.
 */
function continuousResistance(coil: HeatedCoil): number {
  const cold = resistanceAt(coil.resistance20, coil.ambient);
  const series = coil.seriesResistance;
  const constant = heatingConstant(coil);
  let r = cold / 2 + Math.sqrt((cold * cold) / 4 + constant);
  for (;;) {
    const sum = r + series;
    const value = (r - cold) * sum * sum - constant * r;
    const slope = sum * sum + 2 * (r - cold) * sum - constant;
    const next = r - value / slope;
    if (!(next < r)) return r;
    r = next;
  }
}

/**
 * Steps per thermal time constant over the first slope of s, which is the steepest: the error is then below
 * 10⁻⁹ of the rise, also for a coil that would reach nine times its resistance; 10⁻¹² for ordinary ones.
 */
const STEPS_PER_TIME_CONSTANT = 256;
/** e^−45: what is left to the fixed point is below rounding. */
const ARRIVED = 45;

/**
 * Coil temperature after `time` seconds on, from ambient, °C.
 *
 * With s = −ln((r_∞ − r)/(r_∞ − r_a)) and c(r) = (r − r_∞) q(r), the model reads τ_th ds/dt = q(r)/(r + R_s)²,
 * a slope near 1 that hardly changes: classical Runge-Kutta (Hairer, Nørsett, Wanner, *Solving Ordinary
 * Differential Equations I*, §II.1) follows it exactly enough, however long the hold is.
 */
export function temperatureAfter(coil: HeatedCoil, time: number): number {
  const cold = resistanceAt(coil.resistance20, coil.ambient);
  const hot = continuousResistance(coil);
  const rate = approachRate(coil, cold, hot);
  const total = time / coil.timeConstant;
  const steps = Math.ceil(total * STEPS_PER_TIME_CONSTANT * Math.max(1, rate(0)));
  const h = total / steps;
  let s = 0;
  for (let i = 0; i < steps && s < ARRIVED; i++) {
    const k1 = rate(s);
    const k2 = rate(s + (h / 2) * k1);
    const k3 = rate(s + (h / 2) * k2);
    const k4 = rate(s + h * k3);
    s += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  const rise = (hot - cold) * -Math.expm1(-s);
  return coil.ambient + rise / (COPPER_COEFFICIENT * coil.resistance20);
}

/** ds/d(t/τ_th) as a function of s; q(r) by dividing c(r) by (r − r_∞). */
function approachRate(coil: HeatedCoil, cold: number, hot: number): (s: number) => number {
  const series = coil.seriesResistance;
  const square = 2 * series - cold;
  const linear = series * series - 2 * series * cold - heatingConstant(coil);
  const q1 = square + hot;
  const q0 = linear + q1 * hot;
  return (s) => {
    const r = hot - (hot - cold) * Math.exp(-s);
    const sum = r + series;
    return ((r + q1) * r + q0) / (sum * sum);
  };
}
