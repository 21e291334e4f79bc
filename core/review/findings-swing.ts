/** Where the flap comes to rest, and what keeps it from the centre: model page, sections 2, 3 and 6. */

import { velocityPressure } from "../parts/gust.ts";
import { counted } from "../quantity/format.ts";
import { nearestRestSet, type RestSet, setsOutside } from "../swing/rest.ts";
import type { Computed } from "./compute.ts";
import { edgeReserve, FRICTION_SPREAD, reserveElsewhere } from "./findings-reserve.ts";
import { NO_HOLD, type Rule, type Verdict } from "./findings-rule.ts";
import { centringStiffness, GENTLE_BREEZE, shift } from "./findings-shift.ts";
import { listed, side, type Words } from "./words.ts";

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
      : `rests after ${w.time(restTime ?? 0)}, ${w.angle(Math.abs(restAngle - latch.centre))} off the slot's centre (${side(restAngle - latch.centre)}), outside the bolt's play of ${w.angle(latch.capture)}`;
  return {
    status: "fail",
    says: `The flap never settles: it ${where}`,
    advice: unending
      ? "see its friction and dampers: too little to stop it, or so much that it only creeps"
      : "see what holds it off the centre",
    alsoNames: ["swing.settleTime", ...alsoNames, ...NO_HOLD],
  };
}

/** "friction may be 2.3 times as great" */
function reserveWords(ratio: number, w: Words): string {
  return Number.isFinite(ratio)
    ? `friction may be ${w.number(ratio)} times what it is before it rests outside`
    : "no dry friction holds it outside";
}

/** The set of rest positions around the slot against the bolt's play. */
function deadBandRule(computed: Computed, w: Words): Verdict | null {
  const { latch } = computed;
  if (latch === null) return null;
  const [band, play] = w.pair(computed.deadBand, latch.capture, "angle");
  const says = `The flap can rest ${band} off the slot's centre`;
  const outside = setsOutside([nearestRestSet(computed.restSets, latch.centre)], latch.centre, latch.capture);
  if (outside.length > 0) {
    return {
      status: "fail",
      says: `${says} but the bolt needs ${play}`,
      advice: "less friction, stronger centring magnets or a wider slot",
      alsoNames: NO_HOLD,
    };
  }
  const edge = edgeReserve(computed.system, latch.centre, latch.capture);
  if (edge < FRICTION_SPREAD) {
    return {
      status: "caution",
      says: `${says} where the bolt needs ${play}, but ${reserveWords(edge, w)}, and hinges and seals differ by 40 %`,
      advice: "less friction, stronger centring magnets or a wider slot",
    };
  }
  return { status: "ok", says: `${says} at most, where the bolt needs ${play}; ${reserveWords(edge, w)}` };
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
  const near = nearestRestSet(computed.restSets, latch.centre);
  const outside = computed.restsOutside.filter((set) => set !== near);
  const advice =
    "less seal or hinge friction, weaker magnets (beyond their reach they push away) or a heavier flap";
  if (outside.length > 0) {
    return {
      status: "fail",
      says: `The flap can also rest ${listed(outside.map((set) => setWords(set, w)))}, outside the ${w.angle(latch.capture)} the bolt needs: no hold time is sure`,
      advice,
      alsoNames: NO_HOLD,
    };
  }
  const { least: elsewhere, angle } = reserveElsewhere(computed.system, latch.centre, latch.capture, near);
  if (elsewhere < FRICTION_SPREAD) {
    return {
      status: "caution",
      says: `The flap could also rest at ${w.angle(angle)}, outside the ${w.angle(latch.capture)} the bolt needs: ${reserveWords(elsewhere, w)}, and hinges and seals differ by 40 %`,
      advice,
    };
  }
  const weakest = Number.isFinite(elsewhere)
    ? `; where it comes back most weakly, at ${w.angle(angle)}, ${reserveWords(elsewhere, w)}`
    : "";
  return { status: "ok", says: `The flap rests nowhere but around the slot${weakest}` };
}

function gust(computed: Computed, w: Words): Verdict | null {
  const { gust: result, latch } = computed;
  if (result === null || latch === null) return null;
  const way = result.direction > 0 ? "outwards" : "inwards";
  if (result.speed === null || result.pressure === null) {
    return !result.opensByItself
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
  const lost = centringStiffness(computed) <= 0;
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
    remedies: [
      "attracting magnets",
      "smaller gap",
      "wider slot",
      "slot offset",
      "plumb frame",
      "less pressure",
      "gap for return",
      "less seal friction",
      "less friction",
    ],
  },
  {
    id: "swing.dead-band",
    part: "latch",
    concern: "friction against the bolt's play",
    results: ["swing.deadBand", "latch.captureAngle"],
    judge: deadBandRule,
    remedies: ["smaller gap", "wider slot", "slot offset", "less friction"],
  },
  {
    id: "swing.rests-elsewhere",
    part: "hinge",
    concern: "no other resting place",
    results: ["latch.captureAngle"],
    judge: restsElsewhere,
    remedies: [
      "attracting magnets",
      "less pressure",
      "gap for return",
      "less seal friction",
      "less friction",
      "wider slot",
    ],
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
    remedies: ["attracting magnets", "gap against gusts"],
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
