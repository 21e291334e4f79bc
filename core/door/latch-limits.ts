/** The latch's formulas that decide whether it can work at all (model, section 4): the reader checks them, the parts build on them. */
import { STANDARD_GRAVITY } from "../quantity/constants.ts";

/** sin θ_c = (w_s − w_b)/(2 r_l). */
export function captureSine(slotWidth: number, boltWidth: number, distance: number): number {
  return (slotWidth - boltWidth) / (2 * distance);
}

/** sin θ_b = (h + w_b/2)/r_l. */
export function blockSine(edgeHalfWidth: number, boltWidth: number, distance: number): number {
  return (edgeHalfWidth + boltWidth / 2) / distance;
}

/** F = F_s − m_b g for a bolt that points up, + for one that points down, N. Above 0 in every valid door. */
export function netBoltForce(springForce: number, boltMass: number, points: "up" | "down"): number {
  const weight = boltMass * STANDARD_GRAVITY;
  return points === "up" ? springForce - weight : springForce + weight;
}
