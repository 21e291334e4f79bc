/** Whether a flap can stop with the bolt riding on its edge at all. */
import type { RideSystem } from "../passage/relatch.ts";
import { frictionAt, type SwingSystem } from "../swing/system.ts";
import { staticTorque } from "../swing/torque.ts";

/** Places looked at on each side of the slot; the torque is smooth on the scale of the edge's width. */
const LOOKS = 24;

/**
 * True where everywhere on the edge, on both sides, the flap is pulled towards the slot by more than friction, the riding
 * bolt's included, can hold. A riding flap then never stops for good but in the slot.
 */
export function neverSticks({ system, latch }: RideSystem): boolean {
  const { centre, capture, block } = latch;
  if (Math.abs(centre) + block >= system.stopAngle) return false;
  for (let i = 0; i <= LOOKS; i++) {
    const away = capture + ((block - capture) * i) / LOOKS;
    if (pull(system, centre + away, -1) <= 0 || pull(system, centre - away, 1) <= 0) return false;
  }
  return true;
}

/** Torque at rest in a direction, less what friction can hold, N m. */
function pull(system: SwingSystem, angle: number, direction: number): number {
  return direction * staticTorque(system, angle) - system.staticRatio * frictionAt(system, angle);
}
