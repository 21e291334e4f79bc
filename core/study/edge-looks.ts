/**
 * What acts on a resting flap at places across the edge the bolt rides on, and inside the slot: looked up once per door for all
 * that is concluded from it. In flat arrays that are used again by the next door.
 */
import type { RideSystem } from "../passage/relatch.ts";
import { lookUpWell } from "../swing/fields.ts";
import { frictionAt, type SwingSystem } from "../swing/system.ts";
import { staticEnergy, staticTorque } from "../swing/torque.ts";
import { INSIDE, RIDING } from "./marks.ts";

/** Places across the edge on each side, and inside the slot, less one; the torque is smooth on that scale. */
export const LOOKS = 24;
const SLOT_LOOKS = 8;
const PER_SIDE = LOOKS + 1;
const SLOT = 2 * PER_SIDE;

export class EdgeLooks {
  /** Distance between two places on the edge, rad. */
  width = 0;
  /** Least static energy over edge and slot, and least and greatest in the slot, J. */
  low = 0;
  slotLow = 0;
  slotHigh = 0;
  /** Greatest dry friction in the slot and on the edge, and the least on the edge, N m. */
  slotFriction = 0;
  edgeFriction = 0;
  leastEdgeFriction = 0;
  /** Static energies, J, and torques, N m: side by side from the slot outwards, negative angles first; then the slot. */
  private readonly energies = new Float64Array(SLOT + SLOT_LOOKS + 1);
  private readonly torques = {
    torque: new Float64Array(SLOT + SLOT_LOOKS + 1),
    slope: new Float64Array(SLOT + SLOT_LOOKS + 1),
  };
  private readonly angles = new Float64Array(SLOT + SLOT_LOOKS + 1);
  private system: SwingSystem | null = null;

  look(ride: RideSystem): void {
    const { system, latch } = ride;
    this.system = system;
    this.width = (latch.block - latch.capture) / LOOKS;
    this.place(ride);
    this.lookUp(system);
    this.findExtremes();
    this.findFrictions(ride);
  }

  /** Static energy at a place on a side, 0 for negative angles and 1 for positive, J. */
  energy(side: number, place: number): number {
    return this.energies[side * PER_SIDE + place];
  }

  /** Torque towards the slot on a flap at rest there, N m. */
  pull(side: number, place: number): number {
    const torque = this.torques.torque[side * PER_SIDE + place];
    return side === 0 ? torque : -torque;
  }

  /** Dry friction there, N m. */
  friction(side: number, place: number): number {
    if (this.edgeFriction === this.leastEdgeFriction) return this.edgeFriction;
    return frictionAt(this.system as SwingSystem, this.angles[side * PER_SIDE + place]);
  }

  /** Greatest static energy on a side, J. */
  hill(side: number): number {
    let most = Number.NEGATIVE_INFINITY;
    for (let i = side * PER_SIDE; i < (side + 1) * PER_SIDE; i++) most = Math.max(most, this.energies[i]);
    return most;
  }

  private place({ latch }: RideSystem): void {
    const { angles, width } = this;
    const { centre, capture } = latch;
    for (let i = 0; i <= LOOKS; i++) {
      const away = capture + width * i;
      angles[i] = centre - away;
      angles[PER_SIDE + i] = centre + away;
    }
    for (let i = 0; i <= SLOT_LOOKS; i++) angles[SLOT + i] = centre + capture * ((2 * i) / SLOT_LOOKS - 1);
  }

  private lookUp(system: SwingSystem): void {
    const { angles, energies, torques } = this;
    lookUpWell(system, angles, energies, torques);
    if (system.air.wind !== 0 || system.pressureMoment !== 0) {
      for (let i = 0; i < angles.length; i++) {
        energies[i] = staticEnergy(system, angles[i]);
        torques.torque[i] = staticTorque(system, angles[i]);
      }
      return;
    }
    const zero = staticEnergy(system, angles[SLOT]) - energies[SLOT];
    for (let i = 0; i < energies.length; i++) energies[i] += zero;
  }

  private findExtremes(): void {
    const { energies } = this;
    this.slotLow = Number.POSITIVE_INFINITY;
    this.slotHigh = Number.NEGATIVE_INFINITY;
    for (let i = SLOT; i < energies.length; i++) {
      if (energies[i] < this.slotLow) this.slotLow = energies[i];
      if (energies[i] > this.slotHigh) this.slotHigh = energies[i];
    }
    this.low = this.slotLow;
    for (let i = 0; i < SLOT; i++) if (energies[i] < this.low) this.low = energies[i];
  }

  private findFrictions({ system, place }: RideSystem): void {
    this.slotFriction = 0;
    this.edgeFriction = 0;
    this.leastEdgeFriction = Number.POSITIVE_INFINITY;
    for (let region = 0; region < place.length; region++) {
      const friction = system.friction[region];
      if (place[region] === INSIDE) this.slotFriction = Math.max(this.slotFriction, friction);
      else if (place[region] === RIDING) {
        this.edgeFriction = Math.max(this.edgeFriction, friction);
        this.leastEdgeFriction = Math.min(this.leastEdgeFriction, friction);
      }
    }
  }
}
