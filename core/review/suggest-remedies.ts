/** Every way out a rule may name, and where it is worked out. */
import type { Computed } from "./compute.ts";
import type { DoorEdit } from "./finding.ts";
import type { Rule } from "./findings-rule.ts";
import * as clearance from "./suggest-clearance.ts";
import * as coil from "./suggest-coil.ts";
import * as fit from "./suggest-fit.ts";
import * as hold from "./suggest-hold.ts";
import * as supply from "./suggest-supply.ts";
import * as swing from "./suggest-swing.ts";
import type { Words } from "./words.ts";

/** A change to try, not tried yet. */
export interface Candidate {
  readonly label: string;
  readonly edits: readonly DoorEdit[];
}

/** Changes to try for a rule's concern, likeliest first; empty where there is nothing to change. */
export type Remedy = (computed: Computed, words: Words, rule: Pick<Rule, "judge">) => readonly Candidate[];

export const REMEDIES = {
  "opening height": fit.higherOpening,
  "opening width": fit.widerOpening,
  "sill height": fit.lowerSill,
  "hinge height": fit.higherHinge,
  "stop angle": fit.laterStop,
  "thinner flap": fit.thinnerFlap,
  "latch nearer": clearance.latchNearer,
  "bottom clearance": clearance.bottomClearance,
  "larger tip gap": clearance.largerTipGap,
  "thinner strike": clearance.thinnerStrike,
  "wider gap": swing.widerGap,
  "smaller gap": swing.smallerGap,
  "gap against gusts": swing.gapAgainstGusts,
  "gap for return": swing.gapForReturn,
  "lighter pull": swing.lighterPull,
  "attracting magnets": swing.attracting,
  "wider slot": swing.widerSlot,
  "slot offset": swing.slotOffset,
  "plumb frame": swing.plumbFrame,
  "less pressure": swing.lessPressure,
  "less friction": swing.lessFriction,
  "less seal friction": swing.lessSealFriction,
  "hold setting": hold.holdSetting,
  damper: hold.damper,
  "more friction": hold.moreFriction,
  retriggering: hold.retriggering,
  "stronger spring": hold.strongerSpring,
  "smaller tip gap": hold.smallerTipGap,
  "longer stroke": hold.longerStroke,
  "higher supply": coil.higherSupply,
  "lower supply": coil.lowerSupply,
  "weaker spring": coil.weakerSpring,
  "smoother bolt": coil.smootherBolt,
  "insulation class": coil.higherClass,
  "diode clamp": coil.diodeClamp,
  "zener clamp": coil.zenerClamp,
  "base resistor": coil.baseResistor,
  "smaller drop": coil.mosfet,
  "switching regulator": supply.switchingRegulator,
  "heat sink": supply.heatSink,
  "stronger supply": supply.strongerSupply,
  "hold of the parts": supply.holdOfParts,
  "timing resistor": supply.timingResistor,
  "timer parts": supply.timerPartsChoice,
  "detection range": supply.detectionRange,
} satisfies Record<string, Remedy>;

export type RemedyName = keyof typeof REMEDIES;
