/**
 * The equation of motion in the three variables a swing is stepped in. Between two turning points the dry friction has one sign
 * and the angle is monotonic, so the running variable may be chosen by what lies ahead:
 *
 * - `TIME`: (θ, ω) over t. Always works; the only one that starts from rest.
 * - `ANGLE`: (energy, t) over θ. The energy changes only by what takes energy out: a steep magnet well, which in time
 *   forces tiny steps, is exact here, and a cut of the θ axis is met without any search. Needs a moving flap.
 * - `SPEED`: (θ, t) over ω. Ends at ω = 0 exactly: a turning point without a search (Hénon, Physica D 5 (1982) 412,
 *   for this exchange of the running variable). Needs an acceleration that keeps its sign.
 */
import { lookUpTable, type TorquesToFill, tableEnergy, tableTorque } from "../parts/torque-table.ts";
import type { Field } from "./dormand-prince.ts";
import type { Forces, SwingSystem } from "./system.ts";
import { motionDrag, pressureTorque, windTorque } from "./torque.ts";

/** Torque of moving air, wind and pressure together, N m. */
export function airTorque(system: SwingSystem, angle: number, speed: number): number {
  const { air } = system;
  let torque = -air.stillDrag * Math.abs(speed) * speed;
  if (air.wind !== 0) torque = windTorque(air, angle) + motionDrag(air, angle, speed);
  return system.pressureMoment === 0 ? torque : torque + pressureTorque(system, angle);
}

/** Torque of gravity and magnets, N m. */
export function wellTorque(system: SwingSystem, angle: number): number {
  const gravity = -system.weightMoment * Math.sin(angle - system.plumb);
  return system.magnets === null ? gravity : gravity + tableTorque(system.magnets, angle);
}

/** Energy of gravity and magnets, J, from any fixed zero: here gravity's lowest point and the magnets' centre. */
export function wellEnergy(system: SwingSystem, angle: number): number {
  const half = Math.sin((angle - system.plumb) / 2);
  const gravity = 2 * system.weightMoment * half * half;
  return system.magnets === null ? gravity : gravity + tableEnergy(system.magnets, angle);
}

/** What `wellEnergy` and, where asked for, `wellTorque` and its slope (N m/rad) give at many angles, in one go. */
export function lookUpWell(
  system: SwingSystem,
  angles: Float64Array,
  energies: Float64Array,
  torques: TorquesToFill | null,
): void {
  const { magnets, weightMoment, plumb } = system;
  if (magnets === null) fillZero(energies, torques);
  else lookUpTable(magnets, angles, energies, torques);
  for (let i = 0; i < angles.length; i++) {
    const half = (angles[i] - plumb) / 2;
    const sine = Math.sin(half);
    energies[i] += 2 * weightMoment * sine * sine;
    if (torques === null) continue;
    torques.torque[i] -= 2 * weightMoment * sine * Math.cos(half);
    torques.slope[i] += weightMoment * (2 * sine * sine - 1);
  }
}

function fillZero(energies: Float64Array, torques: TorquesToFill | null): void {
  energies.fill(0);
  torques?.torque.fill(0);
  torques?.slope.fill(0);
}

/** Angular acceleration, rad/s². */
export function acceleration(system: SwingSystem, forces: Forces, angle: number, speed: number): number {
  const torque =
    wellTorque(system, angle) + airTorque(system, angle, speed) - forces.damping * speed + forces.friction;
  return torque / system.inertia;
}

/** (θ, ω) over time. Sums: damping's and air's energies, J. */
export const TIME: Field = (system, forces, io) => {
  const angle = io[1];
  const speed = io[2];
  const air = airTorque(system, angle, speed);
  const drag = forces.damping * speed;
  io[0] = speed;
  io[1] = (wellTorque(system, angle) + air - drag + forces.friction) / system.inertia;
  io[2] = drag * speed;
  io[3] = -air * speed;
};

/** (energy, t) over θ; the direction of motion is `forces.sign`. */
export const ANGLE: Field = (system, forces, io) => {
  const angle = io[0];
  const kinetic = io[1] - wellEnergy(system, angle);
  const speed = forces.sign * Math.sqrt((2 * kinetic) / system.inertia);
  const air = airTorque(system, angle, speed);
  const drag = forces.damping * speed;
  io[0] = air - drag + forces.friction;
  io[1] = 1 / speed;
  io[2] = drag;
  io[3] = -air;
};

/** (θ, t) over ω. */
export const SPEED: Field = (system, forces, io) => {
  const speed = io[0];
  const angle = io[1];
  const air = airTorque(system, angle, speed);
  const drag = forces.damping * speed;
  const torque = wellTorque(system, angle) + air - drag + forces.friction;
  const slowness = system.inertia / torque;
  io[0] = speed * slowness;
  io[1] = slowness;
  io[2] = drag * speed * slowness;
  io[3] = -air * speed * slowness;
};
