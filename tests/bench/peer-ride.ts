/**
 * The study's rides of the bolt carried by another integrator: the same starts, the same ends, only the way between is the
 * peer's. Rides that the study need not follow at all are the study's own merit: the peer follows them.
 */
import { FirmRide } from "../../core/study/firm-ride.ts";
import {
  type Motion,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type Reached,
} from "../../core/swing/motion.ts";
import type { SwingSystem } from "../../core/swing/system.ts";
import { type PeerIntegrator, piece } from "./peer-swing.ts";

export class PeerRide extends FirmRide {
  private readonly integrate: PeerIntegrator;

  constructor(motion: Motion, integrate: PeerIntegrator) {
    super(motion);
    this.integrate = integrate;
  }

  protected override foreseen(): null {
    return null;
  }

  protected override carry(system: SwingSystem, end: number): Reached {
    const { motion } = this;
    const ended = piece(system, motion, motion.sign, this.integrate, end, () => {});
    motion.time = ended.time;
    motion.angle = ended.angle;
    motion.speed = ended.speed;
    if (ended.time === end) return REACHED_TIME;
    return ended.speed === 0 ? REACHED_TURN : REACHED_CUT;
  }
}
