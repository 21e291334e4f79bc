/** What a pressure difference between indoors and outdoors does to the flap (model, section 2). Plain SI numbers. */

/** It has vented when the flap is open this far, rad (10°; assumption). */
export const VENT_ANGLE = Math.PI / 18;

/** Torque on the closed flap, N m: Δp W (b² − o²)/2, positive towards outdoors. */
export function pressureMoment(pressure: number, width: number, reach: number, offset: number): number {
  return (pressure * width * (reach ** 2 - offset ** 2)) / 2;
}

/** What of that is left with the flap at an angle, rad, N m: it falls in a straight line to nothing. */
export function ventedTorque(moment: number, angle: number): number {
  return moment * Math.max(0, 1 - Math.abs(angle) / VENT_ANGLE);
}
