/**
 * The wind that opens an unlatched flap from rest (model, section 6). Plain SI numbers.
 */
import type { Air } from "../door/door.ts";
import { STANDARD_GRAVITY } from "./flap.ts";
import { maximum } from "./maximum.ts";
import { pressureMoment, VENT_ANGLE, ventedTorque } from "./pressure.ts";
import { dryFriction, type Resistance } from "./push.ts";

/** Torque of a wind on the closed, still flap over V², N m s²/m²: ½ ρ_a C_d W (b² − o²)/2 (model, section 2). */
export function windFactor(
  density: number,
  dragCoefficient: number,
  width: number,
  reach: number,
  offset: number,
): number {
  return (density * dragCoefficient * width * (reach * reach - offset * offset)) / 4;
}

/** Velocity pressure, Pa: q = 0.613 V² (ASCE 7). */
export function velocityPressure(speed: number): number {
  return 0.613 * speed * speed;
}

export interface GustResult {
  /** m/s; `null` where the flap opens without wind in one of the directions, or no wind opens it. */
  readonly speed: number | null;
  /** It opens without wind. */
  readonly opensByItself: boolean;
  /** The direction that gives first: +1 outwards, −1 inwards. */
  readonly direction: 1 | -1;
  /** q of that speed, Pa; `null` with it. */
  readonly pressure: number | null;
}

/**
 * V² for one direction s, m²/s²: the max over φ in 0…θ_c + s θ_off of
 * [(S g sin(φ − s δ) + |τ_mag|(φ) − s τ_Δp(φ) + k_s τ_fric(φ))/cos² φ]/(½ ρ_a C_d W (b² − o²)/2).
 * |τ_mag| is the restoring magnitude: negative where the magnets push outwards. An end at or below 0 leaves
 * φ = 0 alone; one at 90° or more is +∞ (a flap edge-on to the wind is not pushed further).
 */
export function gustSquared(
  resistance: Resistance,
  air: Air,
  captureAngle: number,
  offsetAngle: number,
  direction: 1 | -1,
): number {
  const { body, hinge, seal, outOfPlumb, magnetTorque } = resistance;
  const end = captureAngle + direction * offsetAngle;
  if (end >= Math.PI / 2) return Number.POSITIVE_INFINITY;
  const moment = pressureMoment(air.pressureDifference, body.width, body.reach, body.hingeOffset);
  const holding = (angle: number) => {
    const gravity = body.firstMoment * STANDARD_GRAVITY * Math.sin(angle - direction * outOfPlumb);
    const friction = dryFriction(hinge.frictionTorque, seal.frictionTorque, seal.contactAngle, angle);
    const vent = ventedTorque(moment, angle);
    return gravity - magnetTorque(angle) - direction * vent + hinge.staticRatio * friction;
  };
  const factor = windFactor(air.density, air.dragCoefficient, body.width, body.reach, body.hingeOffset);
  const curve = (angle: number) => holding(angle) / Math.cos(angle) ** 2;
  return maximum(curve, end, [seal.contactAngle, VENT_ANGLE]).value / factor;
}

/** The least wind that opens the unlatched flap past the latch's capture half-angle, both directions tried. */
export function gustResult(
  resistance: Resistance,
  air: Air,
  captureAngle: number,
  offsetAngle: number,
): GustResult {
  const outwards = gustSquared(resistance, air, captureAngle, offsetAngle, 1);
  const inwards = gustSquared(resistance, air, captureAngle, offsetAngle, -1);
  const direction = inwards < outwards ? -1 : 1;
  const square = Math.min(outwards, inwards);
  const opensByItself = square < 0;
  if (!(square >= 0 && square < Number.POSITIVE_INFINITY)) {
    return { speed: null, opensByItself, direction, pressure: null };
  }
  const speed = Math.sqrt(square);
  return { speed, opensByItself, direction, pressure: velocityPressure(speed) };
}
