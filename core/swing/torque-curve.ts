/** The torques on a flap at rest against its angle, each by itself: a picture of what pulls where. */
import { tableTorque } from "../parts/torque-table.ts";
import { frictionAt, type SwingSystem } from "./system.ts";
import { pressureTorque, windTorque } from "./torque.ts";

/** N m, positive towards outdoors; angles in rad from stop to stop. */
export interface TorqueCurve {
  readonly angle: Float64Array;
  readonly gravity: Float64Array;
  readonly magnets: Float64Array;
  /** Wind and pressure difference. */
  readonly air: Float64Array;
  /** k_s τ_fric ≥ 0, the dry friction that must be overcome either way. */
  readonly friction: Float64Array;
}

/**
 * `count` angles (odd, so that 0 is one), denser towards the centre, where the magnets act: θ = θ_stop (0.15 x + 0.85 x³),
 * x even from −1 to 1.
 */
export function torqueCurve(system: SwingSystem, count = 401): TorqueCurve {
  const angle = Float64Array.from(
    { length: count },
    (_, i) => spread((2 * i) / (count - 1) - 1) * system.stopAngle,
  );
  const along = (torque: (angle: number) => number) => angle.map(torque);
  const { magnets } = system;
  return {
    angle,
    gravity: along((a) => -system.weightMoment * Math.sin(a - system.plumb)),
    magnets: along((a) => (magnets === null ? 0 : tableTorque(magnets, a))),
    air: along((a) => windTorque(system.air, a) + pressureTorque(system, a)),
    friction: along((a) => system.staticRatio * frictionAt(system, a)),
  };
}

function spread(x: number): number {
  return 0.15 * x + 0.85 * x ** 3;
}
