/** What moves the flap's resting place off the slot: the frame's tilt, the slot's offset, pressure and wind (model page, section 2). */
import { deadBand, restSets } from "../swing/rest.ts";
import { isSymmetric, type SwingSystem } from "../swing/system.ts";
import { windTorque } from "../swing/torque.ts";
import type { Computed } from "./compute.ts";
import { NO_HOLD, type Verdict } from "./findings-rule.ts";
import { listed, side, type Words } from "./words.ts";

/** Shift of the resting place that is worth a word, as a part of the bolt's play (assumption). */
export const SHIFT_CAUTION = 0.25;
/** Wind from which an unlatched flap is no curiosity, m/s: Beaufort 3, "gentle breeze", begins here (WMO; choice of it is an assumption). */
export const GENTLE_BREEZE = 3.4;

/** Least width to look for the resting place in, rad. */
const LEAST_WINDOW = 0.1;

/** The dead band with a part of what shifts it taken away, rad: looked for near the centre, where that leaves it. */
function bandOf(changed: SwingSystem, centre: number, band: number): number {
  const near = windowed(changed, Math.max(LEAST_WINDOW, 2 * band + Math.abs(centre)));
  return deadBand(restSets(near), centre);
}

/** The dead band of a plumb frame with its slot in the middle, without wind or pressure, rad. */
function calmBand(system: SwingSystem, band: number): number {
  return bandOf({ ...system, plumb: 0, pressureMoment: 0, air: { ...system.air, wind: 0 } }, 0, band);
}

/** What tilt, offset, wind and pressure together add to the dead band about `centre`, rad; looked for within a few `play`s. */
export function shiftOf(system: SwingSystem, centre: number, play: number): number {
  if (isSymmetric({ ...system, capture: { centre, half: play } })) return 0;
  return bandOf(system, centre, play) - calmBand(system, play);
}

/** The equation of motion within ±`half` alone, as if the stops stood there. */
function windowed(system: SwingSystem, half: number): SwingSystem {
  if (half >= system.stopAngle) return system;
  const { cuts } = system;
  const inner = [...cuts].filter((cut) => Math.abs(cut) < half);
  const first = cuts.findIndex((cut) => cut > -half) - 1;
  const part = (values: Float64Array) => values.slice(first, first + inner.length + 1);
  return {
    ...system,
    stopAngle: half,
    cuts: Float64Array.from([-half, ...inner, half]),
    damping: part(system.damping),
    friction: part(system.friction),
    sealFriction: part(system.sealFriction),
  };
}

interface Influence {
  readonly name: string;
  /** What would take it away. */
  readonly cure: string;
  /** What it adds to the dead band, rad; negative where it takes off. */
  readonly adds: number;
}

/** What tilt, slot offset, wind and pressure each do to the dead band: the band with it less the band without it. */
export function influences(computed: Computed, w: Words): readonly Influence[] {
  const { system, door, deadBand: band } = computed;
  const centre = computed.latch?.centre ?? 0;
  const offset = door.latch?.offset ?? 0;
  const pressure = door.air.pressureDifference;
  const { plumb, air } = system;
  const without = (changed: SwingSystem, about = centre) => band - bandOf(changed, about, band);
  const all = [
    {
      there: plumb !== 0,
      name: `the frame's tilt of ${w.angle(Math.abs(plumb))} ${side(plumb)}`,
      cure: "plumb the frame",
      adds: () => without({ ...system, plumb: 0 }),
    },
    {
      there: centre !== 0,
      name: `the slot's offset of ${w.length(Math.abs(offset))} ${side(offset)}`,
      cure: "move the slot to where the flap hangs",
      adds: () => without(system, 0),
    },
    {
      there: system.pressureMoment !== 0,
      name: `the pressure difference of ${w.pressure(Math.abs(pressure))} towards ${side(pressure)}`,
      cure: "vent the room",
      adds: () => without({ ...system, pressureMoment: 0 }),
    },
    {
      there: air.wind !== 0,
      name: `the wind of ${w.speed(Math.abs(air.wind))} towards ${side(air.wind)}`,
      cure: "shelter the door",
      adds: () => without({ ...system, air: { ...air, wind: 0 } }),
    },
  ];
  return all.flatMap(({ there, name, cure, adds }) => (there ? [{ name, cure, adds: adds() }] : []));
}

/** Torque per angle that brings the flap back at the centre, N m/rad. */
export function centringStiffness(computed: Computed): number {
  return computed.system.weightMoment + (computed.centring?.figures.centreStiffness ?? 0);
}

/** The shift of the resting place, and what each of its causes does to it. */
export function shift(computed: Computed, w: Words): Verdict | null {
  const { latch, system } = computed;
  if (latch === null) return null;
  const all = influences(computed, w);
  if (all.length === 0) return { status: "ok", says: sensitivity(computed, w) };
  const clean = calmBand(system, computed.deadBand);
  const parts = all.map(({ name, adds }) =>
    adds < 0 ? `${name} takes off ${w.angle(-adds)}` : `${name} adds ${w.angle(adds)}`,
  );
  const [band, play] = w.pair(computed.deadBand, latch.capture, "angle");
  const says = `Of the ${band} the flap can rest off the slot's centre (the bolt needs ${play}), ${listed(parts)}`;
  const advice = listed(
    all.filter(({ adds }) => adds > 0).map(({ cure }) => cure),
    "or",
  );
  if (computed.deadBand > latch.capture && clean <= latch.capture) {
    return { status: "fail", says, advice, alsoNames: NO_HOLD };
  }
  const added = computed.deadBand - clean;
  return { status: added > SHIFT_CAUTION * latch.capture ? "caution" : "ok", says, advice };
}

/** With none of them in the file: how much of each moves the resting place how far. */
function sensitivity(computed: Computed, w: Words): string {
  const stiffness = centringStiffness(computed);
  const { body, door, system } = computed;
  const none = "The file has no tilt, slot offset, wind or pressure difference";
  if (!(stiffness > 0) || door.latch === null) return none;
  const degree = Math.PI / 180;
  const perTilt = (system.weightMoment * degree) / stiffness;
  const perPascal = (body.width * (body.reach ** 2 - body.hingeOffset ** 2)) / 2 / stiffness;
  const breeze = windTorque({ ...system.air, wind: GENTLE_BREEZE }, 0) / stiffness;
  const offset = 0.001 / door.latch.distanceFromHinge;
  return `${none}; ${w.angle(degree)} of tilt would move the resting place by ${w.angle(perTilt)}, ${w.length(0.001)} of offset the slot by ${w.angle(offset)}, ${w.pressure(1)} the flap by ${w.angle(perPascal)} and a wind of ${w.speed(GENTLE_BREEZE)} by ${w.angle(breeze)}`;
}
