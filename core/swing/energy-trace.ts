/**
 * Where the energy has gone by each moment of a swing, from its sampled trace: the ledger as columns, for pictures. The
 * swing's own ledger (`swing.ts`) holds the figures; this agrees with it to the sampling's error and adds up exactly.
 */
import type { SwingSystem } from "./system.ts";
import { motionDrag, potentialEnergy, pressureTorque, windTorque } from "./torque.ts";
import type { SampledTrace } from "./trace.ts";

/** J at each sample; at every moment `initial` equals the sum of the others (`air` may be negative). */
export interface EnergyTrace {
  readonly initial: number;
  readonly left: Float64Array;
  readonly hinge: Float64Array;
  readonly viscous: Float64Array;
  readonly seal: Float64Array;
  readonly air: Float64Array;
  readonly stops: Float64Array;
}

/** Works the columns out; an empty trace gives empty columns. */
export function energyTrace(system: SwingSystem, trace: SampledTrace): EnergyTrace {
  const count = trace.time.length;
  const column = () => new Float64Array(count);
  const energy = {
    left: column(),
    hinge: column(),
    viscous: column(),
    seal: column(),
    air: column(),
    stops: column(),
  };
  for (let i = 0; i < count; i++) {
    const { angle, speed } = trace;
    energy.left[i] = potentialEnergy(system, angle[i]) + 0.5 * system.inertia * speed[i] ** 2;
    if (i > 0) addInterval(system, trace, energy, i);
  }
  return { initial: count === 0 ? 0 : energy.left[0], ...energy };
}

/** What the interval before sample `i` took. What the sums miss goes to the stops where the flap bounced, else to the air. */
function addInterval(
  system: SwingSystem,
  { time, angle, speed }: SampledTrace,
  energy: Omit<EnergyTrace, "initial">,
  i: number,
): void {
  const dt = time[i] - time[i - 1];
  const hinge = system.hingeFriction * Math.abs(angle[i] - angle[i - 1]);
  const seal = overRegions(system, system.sealFriction, angle[i - 1], angle[i]);
  const viscous = viscousWork(system, angle[i - 1], angle[i], (speed[i - 1] ** 2 + speed[i] ** 2) / 2, dt);
  const gone = energy.left[i - 1] - energy.left[i] - hinge - seal - viscous;
  const drag = -(airPower(system, angle[i - 1], speed[i - 1]) + airPower(system, angle[i], speed[i])) / 2;
  const stops = bounced(system, angle, speed, i, dt) ? Math.max(0, gone - drag * dt) : 0;
  energy.hinge[i] = energy.hinge[i - 1] + hinge;
  energy.seal[i] = energy.seal[i - 1] + seal;
  energy.viscous[i] = energy.viscous[i - 1] + viscous;
  energy.stops[i] = energy.stops[i - 1] + stops;
  energy.air[i] = energy.air[i - 1] + gone - stops;
}

/** ∫ f dθ of a value per region between two angles, either way round. */
function overRegions(system: SwingSystem, values: Float64Array, from: number, to: number): number {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  let sum = 0;
  for (let r = 0; r < values.length; r++) {
    const width = Math.min(high, system.cuts[r + 1]) - Math.max(low, system.cuts[r]);
    if (width > 0) sum += values[r] * width;
  }
  return sum;
}

/** ∫ c ω² dt with the damping averaged over the angles passed. */
function viscousWork(system: SwingSystem, from: number, to: number, square: number, dt: number): number {
  const path = Math.abs(to - from);
  if (path > 0) return (overRegions(system, system.damping, from, to) / path) * square * dt;
  return overRegions(system, system.damping, from - 1e-9, from + 1e-9) * 5e8 * square * dt;
}

/** Torque of the air and the pressure times the speed, W: what they give. */
function airPower(system: SwingSystem, angle: number, speed: number): number {
  const wind = windTorque(system.air, angle);
  return (wind + motionDrag(system.air, angle, speed) + pressureTorque(system, angle)) * speed;
}

/** Whether the flap hit a stop between two samples: it moved towards one within reach and came back. */
function bounced(
  system: SwingSystem,
  angle: Float64Array,
  speed: Float64Array,
  i: number,
  dt: number,
): boolean {
  const near = system.stopAngle - Math.max(Math.abs(angle[i - 1]), Math.abs(angle[i]));
  const within = near <= Math.max(Math.abs(speed[i - 1]), Math.abs(speed[i])) * dt;
  return within && angle[i - 1] * speed[i - 1] > 0 && angle[i] * speed[i] <= 0;
}
