/** The torques of the equation of motion, and the energies of those that have one. */
import { VENT_ANGLE, ventedTorque } from "../parts/pressure.ts";
import { tableEnergy, tableTorque } from "../parts/torque-table.ts";
import type { AirLoad, SwingSystem } from "./system.ts";

/**
 * T(θ, ω) of strip theory, N m: scale · ∫ u|u| r dr over the plate, u(r) = V cos θ − ω r (model, section 2).
 * Closed form; where u changes sign inside the plate, at r = V cos θ/ω, the integral is split there.
 */
export function stripTorque(air: AirLoad, angle: number, speed: number): number {
  const v = air.wind * Math.cos(angle);
  const { inner, outer } = air;
  const atInner = v - speed * inner;
  const atOuter = v - speed * outer;
  const whole = stripPrimitive(v, speed, outer) - stripPrimitive(v, speed, inner);
  if (atInner >= 0 && atOuter >= 0) return air.scale * whole;
  if (atInner <= 0 && atOuter <= 0) return -air.scale * whole;
  const atTurn = v ** 4 / (12 * speed * speed);
  const innerPart = atTurn - stripPrimitive(v, speed, inner);
  const outerPart = stripPrimitive(v, speed, outer) - atTurn;
  return air.scale * (atInner > 0 ? innerPart - outerPart : outerPart - innerPart);
}

/** ∫ (v − ω r)² r dr from 0 to r. */
function stripPrimitive(v: number, speed: number, r: number): number {
  const r2 = r * r;
  return r2 * ((v * v) / 2 - (2 * v * speed * r) / 3 + (speed * speed * r2) / 4);
}

/** Wind on the flap at rest, N m. */
export function windTorque(air: AirLoad, angle: number): number {
  if (air.wind === 0) return 0;
  const v = air.wind * Math.cos(angle);
  return (air.scale * v * Math.abs(v) * (air.outer ** 2 - air.inner ** 2)) / 2;
}

/** What the motion adds to the wind's torque, with the swing factor κ, N m. */
export function motionDrag(air: AirLoad, angle: number, speed: number): number {
  if (air.wind === 0) return -air.stillDrag * Math.abs(speed) * speed;
  return air.swingFactor * (stripTorque(air, angle, speed) - windTorque(air, angle));
}

/** Torque of the pressure difference, N m: vents linearly over 10° (assumption). */
export function pressureTorque(system: SwingSystem, angle: number): number {
  if (system.pressureMoment === 0) return 0;
  return ventedTorque(system.pressureMoment, angle);
}

/** τ_0(θ), N m: everything that acts on a flap at rest but the dry friction. */
export function staticTorque(system: SwingSystem, angle: number): number {
  const gravity = -system.weightMoment * Math.sin(angle - system.plumb);
  const magnets = system.magnets === null ? 0 : tableTorque(system.magnets, angle);
  return gravity + magnets + windTorque(system.air, angle) + pressureTorque(system, angle);
}

/** Mechanical energy without motion, J: gravity and magnets, zero at θ = 0 (the ledger's zero). */
export function potentialEnergy(system: SwingSystem, angle: number): number {
  const { plumb } = system;
  // cos δ − cos(θ − δ), written so that small angles keep their digits
  const gravity = 2 * system.weightMoment * Math.sin(angle / 2) * Math.sin(angle / 2 - plumb);
  return gravity + (system.magnets === null ? 0 : tableEnergy(system.magnets, angle));
}

/** Minus the integral of τ_0 from 0, J: the potential with steady wind and pressure, which holds the flap in its basin. */
export function staticEnergy(system: SwingSystem, angle: number): number {
  return potentialEnergy(system, angle) - windWork(system.air, angle) - pressureWork(system, angle);
}

/** ∫ cos θ|cos θ| dθ from 0 times the wind's constants, J; valid for |θ| ≤ 180°. */
function windWork(air: AirLoad, angle: number): number {
  if (air.wind === 0) return 0;
  const half = (a: number) => a / 2 + Math.sin(2 * a) / 4;
  const quarter = Math.PI / 2;
  const size = Math.abs(angle);
  const integral = size <= quarter ? half(size) : 2 * half(quarter) - half(size);
  const moment = (air.scale * air.wind * Math.abs(air.wind) * (air.outer ** 2 - air.inner ** 2)) / 2;
  return moment * integral * Math.sign(angle);
}

/** Work of the pressure difference from 0 to θ, J. */
function pressureWork(system: SwingSystem, angle: number): number {
  const size = Math.min(Math.abs(angle), VENT_ANGLE);
  return system.pressureMoment * Math.sign(angle) * (size - (size * size) / (2 * VENT_ANGLE));
}
