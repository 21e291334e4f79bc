/** The bolt, the hold and what becomes of them: model page, sections 4 and 6. */
import { STANDARD_GRAVITY } from "../parts/flap.ts";
import { holdStart } from "../passage/passage.ts";
import type { Computed } from "./compute.ts";
import { type Rule, type Verdict, worstCrossing } from "./findings-rule.ts";
import type { Words } from "./words.ts";

/** A spring this many times the bolt's weight lifts it surely, whatever the guide rubs (assumption). */
export const LEAST_SPRING_RATIO = 1.5;
/** Stroke to spare beyond tip gap and least engagement: what a bracket's slotted holes lose (assumption), m. */
export const STROKE_RESERVE = 0.5e-3;
/** A hold this many times what is to be set, and this much longer, leaves the door open without need (assumptions). */
export const NEEDLESS_FACTOR = 1.5;
export const NEEDLESS_TIME = 2;
/** A flap with less than this is at rest to the eye, J. */
const STILL = 1e-5;
/** A hold within this of the need is the need, s: it is worked out from the same settle time. */
const SAME_TIME = 1e-9;

function boltRises(computed: Computed, w: Words): Verdict | null {
  const { latch, door } = computed;
  if (latch === null || door.latch === null) return null;
  const { springForce, boltMass, boltPoints, tipGap, engagement } = door.latch;
  const weight = boltMass * STANDARD_GRAVITY;
  const rise = `${w.length(engagement)} into the slot ${w.time(latch.toEngagement)} after the coil lets go`;
  const through = `past a gap of ${w.length(tipGap)}`;
  if (boltPoints === "down") {
    return {
      status: "ok",
      says: `Spring and weight push the ${w.mass(boltMass)} bolt down with ${w.force(latch.boltForce)}: it is ${rise}, ${through}`,
    };
  }
  const ratio = springForce / weight;
  const says = `The spring (${w.force(springForce)}) lifts the ${w.mass(boltMass)} bolt with ${w.force(latch.boltForce)} to spare: it is ${rise}, ${through}`;
  if (ratio >= LEAST_SPRING_RATIO) return { status: "ok", says };
  return {
    status: "caution",
    says: `${says}, but the spring is only ${w.number(ratio)} times the bolt's weight and a guide that rubs may hold it down`,
    advice: "a stronger spring or a lighter bolt",
  };
}

function engagement(computed: Computed, w: Words): Verdict | null {
  const { latch, solenoid } = computed.door;
  if (latch === null || solenoid === null) return null;
  const spare = solenoid.stroke - latch.tipGap - latch.engagement;
  const depth = w.length(solenoid.stroke - latch.tipGap);
  const says = `A stroke of ${w.length(solenoid.stroke)} takes the bolt over the gap of ${w.length(latch.tipGap)} and ${depth} into the slot, where ${w.length(latch.engagement)} hold the flap`;
  if (spare >= STROKE_RESERVE - 1e-9) return { status: "ok", says };
  return {
    status: "caution",
    says: `${says}: ${w.length(Math.max(0, spare))} to spare is less than ${w.length(STROKE_RESERVE)}, what a bracket may lose`,
    advice: "a longer stroke or a smaller tip gap",
  };
}

/** What the need is made of, for a sentence. */
function needWords(computed: Computed, w: Words): string {
  const { governing, door, timer } = computed;
  const { settleTime } = governing.swing;
  const { passage } = governing;
  const retriggers = door.timer?.retriggers ?? true;
  const settle = w.time(settleTime ?? 0);
  const from = retriggers && timer !== null ? "its last counted pulse" : "detection";
  const before = passage.letGoTime - holdStart(passage, retriggers);
  const natural = (settleTime ?? 0) + before;
  if ((governing.need ?? 0) > natural + SAME_TIME)
    return `two pulse intervals of ${w.time(door.detection.pulseInterval)}`;
  return `${w.time(before)} from ${from} to let-go and ${settle} to settle`;
}

function enough(computed: Computed, w: Words): Verdict | null {
  const { hold, timer, governing, latch, door } = computed;
  if (latch === null || timer === null || hold === null) return null;
  const name = governing.animal.name;
  if (hold.need === null || hold.required === null || hold.setting === null) {
    return {
      status: "fail",
      says: `No hold is sure: the flap may never settle inside the bolt's play, whatever the timer's ${w.time(timer.nominal)}`,
      advice: "first let it rest at the centre alone",
      alsoNames: ["hold.required", "hold.setting"],
    };
  }
  const [shortest, need] = w.pair(timer.shortest, hold.need, "time");
  const why = `${name} needs ${need}, ${needWords(computed, w)}`;
  const range = `set to ${w.time(timer.nominal)} it may hold as little as ${shortest}`;
  if (hold.tooShort) {
    return {
      status: "fail",
      says: `The hold is too short: ${range}, but ${why}`,
      advice: `set it to ${w.time(hold.setting)}`,
    };
  }
  const margin = w.ratio(door.study.margin);
  if (hold.withinMargin) {
    const [, required] = w.pair(timer.shortest, hold.required, "time");
    return {
      status: "caution",
      says: `The hold is close: ${range}, ${why}, and with a margin of ${margin} it is ${required}`,
      advice: `set it to ${w.time(hold.setting)}`,
    };
  }
  return {
    status: "ok",
    says: `The hold is long enough: ${range}, ${why}; with a margin of ${margin} that is ${w.time(hold.required)}`,
  };
}

function needless(computed: Computed, w: Words): Verdict | null {
  const { hold, timer, governing, door } = computed;
  if (timer === null || hold === null || hold.setting === null) return null;
  const unlocked =
    holdStart(governing.passage, door.timer?.retriggers ?? true) +
    timer.nominal -
    governing.passage.letGoTime;
  const open = `the door stays unlocked ${w.time(Math.max(0, unlocked))} after ${governing.animal.name} is through`;
  if (timer.nominal <= NEEDLESS_FACTOR * hold.setting || timer.nominal <= hold.setting + NEEDLESS_TIME) {
    return {
      status: "ok",
      says: `With the hold at ${w.time(timer.nominal)}, ${open}; ${w.time(hold.setting)} is what to set`,
    };
  }
  return {
    status: "caution",
    says: `A hold of ${w.time(timer.nominal)} is needlessly long where ${w.time(hold.setting)} will do: ${open}`,
    advice: `set it to ${w.time(hold.setting)}`,
  };
}

function underAnimal(computed: Computed, w: Words): Verdict | null {
  const { timer, hold, door, latch } = computed;
  if (timer === null || hold === null || door.timer === null || latch === null) return null;
  const { retriggers } = door.timer;
  const late = (c: (typeof computed.crossings)[number]) =>
    c.passage.letGoTime - holdStart(c.passage, retriggers);
  const slowest = worstCrossing(computed, late);
  const [shortest, needed] = w.pair(timer.shortest, late(slowest), "time");
  const from = retriggers ? "its last counted pulse" : "detection";
  const name = slowest.animal.name;
  if (timer.shortest >= late(slowest)) {
    return {
      status: "ok",
      says: `${name} is clear of the flap ${needed} after ${from}, before the shortest hold of ${shortest} ends`,
    };
  }
  return {
    status: "fail",
    says: `The bolt can rise under ${name}: the hold may end ${shortest} after ${from}, but it is clear of the flap only after ${needed}`,
    advice: retriggers ? "a longer hold" : "a longer hold, or a timer that each pulse starts anew",
  };
}

function restart(computed: Computed, w: Words): Verdict | null {
  const { timer, door, latch } = computed;
  if (timer === null || door.timer === null || latch === null) return null;
  const pulse = w.time(door.detection.pulseInterval);
  if (door.timer.retriggers) {
    return {
      status: "ok",
      says: `Each detection pulse, ${pulse} apart, starts the hold anew, so the door stays unlocked as long as an animal is noticed`,
    };
  }
  return {
    status: "caution",
    says: `The timer takes one trigger: it runs out ${w.time(timer.nominal)} after the first and starts again at the next pulse, so an animal still in range locks and unlocks the door in turn, the coil off for up to ${pulse}`,
    advice: "take a timer that each pulse starts anew",
  };
}

function outcome(computed: Computed, w: Words): Verdict | null {
  const { relatch, timer, body, governing, latch } = computed;
  if (relatch === null || timer === null || latch === null) return null;
  const at = `At the set hold of ${w.time(timer.nominal)}`;
  if (relatch.outcome === "under the animal") {
    return {
      status: "fail",
      says: `${at} the bolt rises under ${governing.animal.name}, ${w.time(-relatch.holdEnds)} before the flap is let go`,
      advice: "a longer hold",
    };
  }
  const when = `${w.time(relatch.time)} after let-go`;
  if (relatch.outcome === "caught") {
    const drop = relatch.energy / (body.mass * STANDARD_GRAVITY);
    const impact =
      relatch.energy > STILL
        ? `, still moving with ${w.energy(relatch.energy)}, as from a drop of ${w.length(drop)}, which the bolt must take as an impact`
        : ", at rest";
    return { status: "ok", says: `${at} the bolt catches the flap ${when}${impact}` };
  }
  if (relatch.outcome === "stuck") {
    return {
      status: "fail",
      says: `${at} the bolt bears on the flap's edge and the flap stops on it ${when}: stuck, not latched`,
      advice: "a hold that lets the flap settle first",
    };
  }
  const moving = relatch.energy > STILL ? ` (the flap moves with ${w.energy(relatch.energy)})` : "";
  return {
    status: "fail",
    says: `${at} the flap is more than ${w.angle(latch.block)} off the slot when the bolt is up, ${when}${moving}: shut out, ajar and jammed`,
    advice: "a hold that lets the flap settle first",
  };
}

export const HOLD_RULES: readonly Rule[] = [
  {
    id: "latch.bolt-rises",
    part: "latch",
    concern: "the bolt rises",
    results: ["latch.boltRiseTime"],
    judge: boltRises,
    remedies: ["stronger spring"],
  },
  {
    id: "latch.engagement",
    part: "latch",
    concern: "stroke against engagement",
    results: ["latch.boltRiseTime"],
    judge: engagement,
    remedies: ["smaller tip gap", "longer stroke"],
  },
  {
    id: "hold.enough",
    part: "timer",
    concern: "hold long enough",
    results: ["hold.required", "hold.setting", "timer.shortest", "swing.settleTime", "passage.letGoTime"],
    judge: enough,
    remedies: ["hold setting", "damper", "more friction"],
  },
  {
    id: "hold.needless",
    part: "timer",
    concern: "hold not needlessly long",
    results: ["timer.nominal", "hold.setting"],
    judge: needless,
    remedies: ["hold setting"],
  },
  {
    id: "hold.under-animal",
    part: "timer",
    concern: "animal clear before the bolt",
    results: ["timer.shortest", "passage.letGoTime"],
    judge: underAnimal,
    remedies: ["retriggering", "hold setting"],
  },
  {
    id: "hold.restart",
    part: "timer",
    concern: "how the timer is triggered",
    results: ["timer.nominal"],
    judge: restart,
    remedies: ["retriggering"],
  },
  {
    id: "hold.outcome",
    part: "latch",
    concern: "outcome at the set hold",
    results: ["timer.nominal", "latch.captureAngle", "latch.blockAngle"],
    judge: outcome,
    remedies: ["hold setting", "damper"],
  },
];
