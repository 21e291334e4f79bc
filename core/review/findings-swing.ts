/** Where the flap comes to rest, and what keeps it from the centre: model page, sections 2, 3 and 6. */
import { velocityPressure } from "../parts/gust.ts";
import { deadBand, nearestRestSet, type RestSet, restSets, setsOutside } from "../swing/rest.ts";
import type { SwingSystem } from "../swing/system.ts";
import { windTorque } from "../swing/torque.ts";
import type { Computed } from "./compute.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { counted, listed, side, type Words } from "./words.ts";

/** Friction this much above the stated must still let the flap rest inside: the study's default spread of the hinge, +2σ. */
export const FRICTION_SPREAD = 1.4;
/** Shift of the resting place that is worth a word, as a part of the bolt's play (assumption). */
const SHIFT_CAUTION = 0.25;
/** Wind from which an unlatched flap is no curiosity, m/s: Beaufort 3, "gentle breeze", begins here (WMO; choice of it is an assumption). */
export const GENTLE_BREEZE = 3.4;

const NO_HOLD = ["hold.required", "hold.setting"] as const;

/** Whether and where the swing ends. */
function settles(computed: Computed, w: Words): Verdict {
  const { swing } = computed.governing;
  const { latch } = computed;
  const { settleTime, restTime, restAngle } = swing;
  const passes = counted(swing.centrePasses, "pass").replace("passs", "passes");
  const end =
    restTime === null || restAngle === null
      ? "without dry friction it never quite rests"
      : `rests after ${w.time(restTime)} at ${w.angle(restAngle)}`;
  const unending = swing.status === "time limit" || swing.status === "work limit";
  const alsoNames = restTime === null ? ["swing.restTime", "swing.restAngle"] : [];
  if (latch === null) {
    if (unending)
      return {
        status: "fail",
        says: `The flap is still moving ${w.time(swing.endTime)} after let-go`,
        advice: "add damping or friction",
        alsoNames,
      };
    return {
      status: restTime === null ? "caution" : "ok",
      says: `The flap ${end}, after ${passes} through the centre`,
      alsoNames,
    };
  }
  if (settleTime !== null) {
    const says =
      `The flap is inside the bolt's play to stay ${w.time(settleTime)} after let-go, after ${passes} through the centre; it ${end}`.replace(
        "; it without",
        "; without",
      );
    return {
      status: restTime === null ? "caution" : "ok",
      says,
      advice: "real hinges rub: give the file a friction torque",
      alsoNames,
    };
  }
  const where = unending
    ? `is still moving ${w.time(swing.endTime)} after let-go`
    : restAngle === null
      ? `does not end within ${w.angle(latch.capture)} of the slot's centre`
      : `rests ${w.angle(Math.abs(restAngle - latch.centre))} off the slot's centre (${side(restAngle - latch.centre)}), outside the bolt's play of ${w.angle(latch.capture)}`;
  return {
    status: "fail",
    says: `The flap never settles: it ${where}`,
    advice: "see what holds it off the centre",
    alsoNames: ["swing.settleTime", ...alsoNames, ...NO_HOLD],
  };
}

/** The same door with all dry friction times `factor`. */
function rubbing(system: SwingSystem, factor: number): SwingSystem {
  return { ...system, friction: system.friction.map((f) => f * factor) };
}

/** How far the set nearest the slot's centre reaches with more friction than stated, rad. */
export function deadBandWith(system: SwingSystem, centre: number, friction: number): number {
  return deadBand(restSets(rubbing(system, friction)), centre);
}

/** The set of rest positions around the slot against the bolt's play. */
function deadBandRule(computed: Computed, w: Words): Verdict | null {
  const { latch } = computed;
  if (latch === null) return null;
  const [band, play] = w.pair(computed.deadBand, latch.capture, "angle");
  const outside = setsOutside([nearestRestSet(computed.restSets, latch.centre)], latch.centre, latch.capture);
  if (outside.length > 0) {
    return {
      status: "fail",
      says: `The flap can rest ${band} off the slot's centre but the bolt needs ${play}`,
      advice: "less friction, stronger centring magnets or a wider slot",
      alsoNames: NO_HOLD,
    };
  }
  const rubbed = deadBandWith(computed.system, latch.centre, FRICTION_SPREAD);
  if (rubbed > latch.capture) {
    const [more] = w.pair(rubbed, latch.capture, "angle");
    return {
      status: "caution",
      says: `The flap can rest ${band} off the slot's centre where the bolt needs ${play}, but with 40 % more friction it could rest ${more} off`,
      advice: "leave more room: less friction, stronger centring magnets or a wider slot",
    };
  }
  return {
    status: "ok",
    says: `The flap can rest at most ${band} off the slot's centre (${w.angle(rubbed)} with 40 % more friction), where the bolt needs ${play}`,
  };
}

function setWords(set: RestSet, w: Words): string {
  if (set.low === set.high) return `at ${w.angle(set.low)}`;
  const [low, high] = w.pair(set.low, set.high, "angle");
  return `between ${low} and ${high}`;
}

/** Rest positions away from the slot: behind the magnets' reach, against a stop, beside the seal. */
function restsElsewhere(computed: Computed, w: Words): Verdict | null {
  const { latch } = computed;
  if (latch === null) return null;
  const far = (sets: readonly RestSet[]) => {
    const near = nearestRestSet(sets, latch.centre);
    return setsOutside(sets, latch.centre, latch.capture).filter((set) => set !== near);
  };
  const outside = far(computed.restSets);
  if (outside.length > 0) {
    return {
      status: "fail",
      says: `The flap can also rest ${listed(outside.map((set) => setWords(set, w)))}, outside the ${w.angle(latch.capture)} the bolt needs: no hold time is sure`,
      advice: "less seal or hinge friction, or a heavier flap",
      alsoNames: NO_HOLD,
    };
  }
  const rubbed = far(restSets(rubbing(computed.system, FRICTION_SPREAD)));
  if (rubbed.length > 0) {
    return {
      status: "caution",
      says: `With 40 % more friction the flap could also rest ${listed(rubbed.map((set) => setWords(set, w)))}, outside the ${w.angle(latch.capture)} the bolt needs`,
      advice: "less seal or hinge friction, or a heavier flap",
    };
  }
  return { status: "ok", says: "The flap rests nowhere but around the slot, with 40 % more friction too" };
}

interface Influence {
  readonly name: string;
  /** What it adds to the dead band, rad; negative where it takes off. */
  readonly adds: number;
}

/** What tilt, slot offset, wind and pressure each do to the dead band: the band with it less the band without it. */
export function influences(computed: Computed, w: Words): readonly Influence[] {
  const { system, door } = computed;
  const centre = computed.latch?.centre ?? 0;
  const without = (changed: SwingSystem, about = centre) =>
    computed.deadBand - deadBand(restSets(changed), about);
  const found: Influence[] = [];
  if (system.plumb !== 0)
    found.push({
      name: `the frame's tilt of ${w.angle(system.plumb)}`,
      adds: without({ ...system, plumb: 0 }),
    });
  if (centre !== 0 && door.latch !== null)
    found.push({
      name: `the slot's offset of ${w.length(door.latch.offset)}`,
      adds: computed.deadBand - deadBand(computed.restSets, 0),
    });
  if (system.pressureMoment !== 0)
    found.push({
      name: `the pressure difference of ${w.pressure(door.air.pressureDifference)}`,
      adds: without({ ...system, pressureMoment: 0 }),
    });
  if (system.air.wind !== 0)
    found.push({
      name: `the wind of ${w.speed(system.air.wind)}`,
      adds: without({ ...system, air: { ...system.air, wind: 0 } }),
    });
  return found;
}

/** Torque per angle that brings the flap back at the centre, N m/rad. */
function centring(computed: Computed): number {
  return computed.system.weightMoment + (computed.centring?.figures.centreStiffness ?? 0);
}

function shift(computed: Computed, w: Words): Verdict | null {
  const { latch, system } = computed;
  if (latch === null) return null;
  const all = influences(computed, w);
  const play = w.angle(latch.capture);
  if (all.length === 0) return { status: "ok", says: sensitivity(computed, w) };
  const clean = deadBand(
    restSets({ ...system, plumb: 0, pressureMoment: 0, air: { ...system.air, wind: 0 } }),
    0,
  );
  const added = computed.deadBand - clean;
  const parts = all.map(({ name, adds }) =>
    adds < 0 ? `${name} takes off ${w.angle(-adds)}` : `${name} adds ${w.angle(adds)}`,
  );
  const says = `Of the ${w.angle(computed.deadBand)} the flap can rest off the slot's centre (bolt's play ${play}), ${listed(parts)}`;
  if (computed.deadBand > latch.capture && clean <= latch.capture) {
    return {
      status: "fail",
      says,
      advice: "plumb the frame, move the slot to where the flap hangs, or vent the room",
      alsoNames: NO_HOLD,
    };
  }
  const status = added > SHIFT_CAUTION * latch.capture ? "caution" : "ok";
  return { status, says, advice: "plumb the frame, move the slot to where the flap hangs, or vent the room" };
}

/** With none of them in the file: how much of each moves the resting place how far. */
function sensitivity(computed: Computed, w: Words): string {
  const stiffness = centring(computed);
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

function gust(computed: Computed, w: Words): Verdict | null {
  const { gust: result, latch } = computed;
  if (result === null || latch === null) return null;
  const way = result.direction > 0 ? "outwards" : "inwards";
  if (result.speed === null || result.pressure === null) {
    const vertical = latch.capture + Math.abs(latch.centre) >= Math.PI / 2;
    return vertical
      ? { status: "ok", says: "No wind opens the flap past the bolt's play", alsoNames: ["wind.gustSpeed"] }
      : {
          status: "caution",
          says: `The unlatched flap opens ${way} past the bolt's play without any wind`,
          advice: "see what pushes it off the centre",
          alsoNames: ["wind.gustSpeed"],
        };
  }
  const [speed, breeze] = w.pair(result.speed, GENTLE_BREEZE, "speed");
  const says = `A wind of ${speed} (${w.pressure(velocityPressure(result.speed))}) opens the unlatched flap ${way} past the bolt's play`;
  if (result.speed >= GENTLE_BREEZE) return { status: "ok", says: `${says}; a gentle breeze is ${breeze}` };
  return {
    status: "caution",
    says: `${says}, less than a gentle breeze (${breeze}): on a windy day the door stays unlatched until a lull`,
    advice: "shelter the door, or centre it with magnets",
  };
}

/** Magnets must pull back at the centre, not push away from it. */
function well(computed: Computed, w: Words): Verdict | null {
  if (computed.centring === null) return null;
  const { greatestTorque, greatestAngle, centreStiffness } = computed.centring.figures;
  const peak = `${w.torque(greatestTorque)} at ${w.angle(greatestAngle)}`;
  const perDegree = w.torque((Math.abs(centreStiffness) * Math.PI) / 180);
  if (centreStiffness > 0) {
    return {
      status: "ok",
      says: `The magnets centre the flap with ${perDegree} per degree, at most ${peak}`,
    };
  }
  const gravity = w.torque((computed.system.weightMoment * Math.PI) / 180);
  const lost = centring(computed) <= 0;
  return {
    status: lost ? "fail" : "caution",
    says: `The magnets push the flap away from the centre with ${perDegree} per degree (at most ${peak}), ${lost ? "more than gravity brings it back with" : "against gravity's"}, ${gravity}`,
    advice: "turn one of each facing pair over, so that they attract",
  };
}

export const SWING_RULES: readonly Rule[] = [
  {
    id: "swing.settles",
    part: "hinge",
    concern: "the flap settles",
    results: ["swing.settleTime", "swing.restTime", "swing.restAngle", "swing.centrePasses"],
    judge: settles,
    remedies: ["smaller gap", "wider slot", "slot offset"],
  },
  {
    id: "swing.dead-band",
    part: "latch",
    concern: "friction against the bolt's play",
    results: ["swing.deadBand", "latch.captureAngle"],
    judge: deadBandRule,
    remedies: ["smaller gap", "wider slot", "less friction"],
  },
  {
    id: "swing.rests-elsewhere",
    part: "hinge",
    concern: "no other resting place",
    results: ["latch.captureAngle"],
    judge: restsElsewhere,
    remedies: ["less seal friction", "less friction"],
  },
  {
    id: "swing.shift",
    part: "opening",
    concern: "tilt, offset, wind and pressure",
    results: ["swing.deadBand", "latch.captureAngle"],
    judge: shift,
    remedies: ["slot offset", "plumb frame", "less pressure", "smaller gap", "wider slot"],
  },
  {
    id: "wind.gust",
    part: "flap",
    concern: "gusts on the unlatched flap",
    results: ["wind.gustSpeed"],
    judge: gust,
    remedies: ["smaller gap"],
  },
  {
    id: "magnets.centring",
    part: "magnets",
    concern: "magnets pull to the centre",
    results: ["magnets.peakTorque", "magnets.peakAngle", "magnets.centreStiffness"],
    judge: well,
    remedies: ["attracting magnets"],
  },
];
