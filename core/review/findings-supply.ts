/** Regulator, supply, the timer's parts, and detection before the bolt: model page, sections 5 and 6. */
import { REGULATOR_CAUTION, REGULATOR_FAIL } from "../parts/supply.ts";
import { LEAST_LEAKAGE_RATIO, LONGEST_ELECTROLYTIC_HOLD } from "../parts/timer.ts";
import type { Computed } from "./compute.ts";
import { againstLimit, type Rule, type Verdict, worstCrossing } from "./findings-rule.ts";
import { timerParts } from "./suggest-timer.ts";
import type { Words } from "./words.ts";

/** Input over output that an ordinary linear regulator needs, V (common practice, no source). */
export const LINEAR_HEADROOM = 2;
/** R and C that give a hold within this part of the one set agree with it (assumption: what a stopwatch tells). */
export const MISMATCH = 0.05;

function regulatorHeat(computed: Computed, w: Words): Verdict | null {
  const { supply, door } = computed;
  if (supply === null || door.supply === null) return null;
  const temperature = supply.regulatorTemperature;
  const { regulator, logicVoltage, voltage } = door.supply;
  const drop = `making ${w.voltage(logicVoltage)} of ${w.voltage(voltage)}`;
  const says = `The ${regulator} regulator, ${drop}, turns ${w.power(supply.regulatorDissipation)} into heat and reaches ${w.temperature(temperature)}`;
  if (temperature <= REGULATOR_CAUTION)
    return { status: "ok", says: `${says}, within ${w.temperature(REGULATOR_CAUTION)}` };
  const fails = temperature > REGULATOR_FAIL;
  const limit = w.temperature(fails ? REGULATOR_FAIL : REGULATOR_CAUTION);
  return {
    status: fails ? "fail" : "caution",
    says: `${says}, above ${limit}`,
    advice: "a switching regulator or a heat sink",
  };
}

function regulates(computed: Computed, w: Words): Verdict | null {
  const { supply, door } = computed;
  if (supply === null || door.supply === null) return null;
  const { voltage, logicVoltage, regulator } = door.supply;
  const [has, makes] = w.pair(voltage, logicVoltage, "voltage");
  if (!supply.regulates) {
    return {
      status: "fail",
      says: `The supply of ${has} is not above the ${makes} the electronics need, so the regulator cannot work`,
      advice: "a higher supply voltage",
    };
  }
  if (regulator === "linear" && voltage < logicVoltage + LINEAR_HEADROOM) {
    return {
      status: "caution",
      says: `The supply of ${has} is less than ${w.voltage(LINEAR_HEADROOM)} above the ${makes} a linear regulator is to make`,
      advice: "a higher supply voltage or a low-drop regulator",
    };
  }
  return { status: "ok", says: `The supply of ${has} is high enough to make ${makes}` };
}

function supplyCurrent(computed: Computed, w: Words): Verdict | null {
  const { supply, door } = computed;
  if (supply === null || supply.current === null || door.supply === null) return null;
  const [draws, gives] = w.pair(supply.current, door.supply.currentLimit, "current");
  const status = againstLimit(supply.current, door.supply.currentLimit);
  const says = `Coil and electronics draw ${draws}`;
  if (status === "ok") return { status, says: `${says} of the ${gives} the supply gives` };
  return {
    status,
    says: `${says}, ${status === "fail" ? "more than" : "nearly all of"} the ${gives} the supply gives`,
    advice: "a stronger supply",
  };
}

function parts(computed: Computed, w: Words): Verdict | null {
  const { timer, door } = computed;
  if (timer === null || door.timer === null) return null;
  const { resistor, capacitor, holdTime } = door.timer;
  if (resistor === null || capacitor === null || timer.mismatch === null) {
    const choice = timerParts(computed);
    const built =
      choice === null ? "" : `; a one-shot of ${w.time(timer.nominal)} would be ${choice.words(w)}`;
    return {
      status: "ok",
      says: `The hold of ${w.time(timer.nominal)} stands alone, without R and C, and may be ${w.time(timer.shortest)} to ${w.time(timer.longest)}${built}`,
    };
  }
  const made = `${w.resistance(resistor)} and ${w.capacitance(capacitor)} hold for ${w.time(timer.nominal)} (${w.time(timer.shortest)} to ${w.time(timer.longest)})`;
  if (Math.abs(timer.mismatch) <= MISMATCH)
    return { status: "ok", says: `${made}, as the ${w.time(holdTime)} set` };
  return {
    status: "caution",
    says: `${made}, not the ${w.time(holdTime)} set: ${w.ratio(Math.abs(timer.mismatch))} ${timer.mismatch > 0 ? "longer" : "shorter"}, and everything here is worked out for R and C`,
    advice: "change R and C, or write down the hold they give",
  };
}

function leakage(computed: Computed, w: Words): Verdict | null {
  const check = computed.timer?.leakage;
  if (check === null || check === undefined) return null;
  const says = `At the threshold ${w.current(check.chargingCurrent)} charge the capacitor and an electrolytic leaks ${w.current(check.leakage)}`;
  const ratio = `${w.number(check.ratio)} times`;
  if (check.enough)
    return { status: "ok", says: `${says}: ${ratio}, at least ${LEAST_LEAKAGE_RATIO} are wanted` };
  const stalls = check.ratio < 1;
  return {
    status: stalls ? "fail" : "caution",
    says: `${says}: ${ratio}, at least ${LEAST_LEAKAGE_RATIO} are wanted${stalls ? ", so the hold may never end" : ", so the hold is longer than worked out and drifts"}`,
    advice: `take a film or low-leakage capacitor, or a counter: no electrolytic is sure beyond ${w.time(LONGEST_ELECTROLYTIC_HOLD)}`,
  };
}

/** The nose at the door before the bolt is out bumps on a locked flap. */
function arrival(computed: Computed, w: Words): Verdict | null {
  const pullIn = computed.solenoid?.bolt?.pullIn.time;
  const first = worstCrossing(computed, (c) => -c.passage.arrivalTime);
  const { arrivalTime } = first.passage;
  if (pullIn === null || pullIn === undefined) return null;
  const { pulseInterval } = computed.door.detection;
  const [arrives, out] = w.pair(arrivalTime, pullIn, "time");
  const says = `${first.animal.name} is at the door ${arrives} after it is noticed, the coil has pulled after ${out}`;
  if (arrivalTime < pullIn)
    return {
      status: "fail",
      says: `${says}: the flap is still locked`,
      advice: "notice the animal further off",
    };
  if (arrivalTime < pullIn + pulseInterval) {
    return {
      status: "caution",
      says: `${says}: one pulse missed, ${w.time(pulseInterval)}, and the flap is still locked`,
      advice: "notice the animal further off",
    };
  }
  return { status: "ok", says: `${says}, with a missed pulse (${w.time(pulseInterval)}) in time too` };
}

export const SUPPLY_RULES: readonly Rule[] = [
  {
    id: "supply.regulates",
    part: "supply",
    concern: "regulator has its voltage",
    results: ["regulator.dissipation"],
    judge: regulates,
    remedies: ["higher supply"],
  },
  {
    id: "supply.regulator-heat",
    part: "supply",
    concern: "heat in the regulator",
    results: ["regulator.dissipation", "regulator.temperature"],
    judge: regulatorHeat,
    remedies: ["switching regulator", "heat sink"],
  },
  {
    id: "supply.current",
    part: "supply",
    concern: "current the supply must give",
    results: ["supply.current"],
    judge: supplyCurrent,
    remedies: ["switching regulator", "stronger supply"],
  },
  {
    id: "timer.parts",
    part: "timer",
    concern: "R and C against the hold",
    results: ["timer.nominal", "timer.shortest", "timer.longest"],
    judge: parts,
    remedies: ["hold of the parts", "timing resistor"],
  },
  {
    id: "timer.leakage",
    part: "timer",
    concern: "leakage of the timing capacitor",
    results: ["timer.nominal"],
    judge: leakage,
    remedies: ["timer parts"],
  },
  {
    id: "detection.arrival",
    part: "detection",
    concern: "bolt out before the animal arrives",
    results: ["passage.arrivalTime", "solenoid.pullInTime"],
    judge: arrival,
    remedies: ["detection range"],
  },
];
