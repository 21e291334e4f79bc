/** The solenoid and its driver: model page, section 5. */
import { LEAST_OVERDRIVE } from "../parts/driver.ts";
import { CLASS_LIMIT, type PullIn, TOUCH_CAUTION } from "../parts/solenoid.ts";
import type { Computed } from "./compute.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { listed, type Words } from "./words.ts";

/** Heat a small transistor package gets rid of without a heat sink, W (common practice, no source). */
export const BARE_PACKAGE = 1;
/** A coil this near its class's limit is cautioned, K (assumption). */
export const CLASS_RESERVE = 10;
/** A release this long is a noticeable part of a swing, s (assumption). */
export const SLOW_RELEASE = 0.1;

function pullsIn(computed: Computed, w: Words): Verdict | null {
  const bolt = computed.solenoid?.bolt;
  if (bolt === null || bolt === undefined) return null;
  const { pullIn, pullInHot, pullInLow, pullInHotLow } = bolt;
  const cases: readonly (readonly [string, PullIn])[] = [
    ["cold on the full supply", pullIn],
    [`hot (${w.temperature(pullInHot.temperature)})`, pullInHot],
    ["at the supply's low end", pullInLow],
    ["hot at the supply's low end", pullInHotLow],
  ];
  const failing = cases.filter(([, one]) => !one.pullsIn);
  const volts = (one: PullIn) => {
    if (one.pullInVoltage === null) return "no voltage will do";
    const [needs, has] = w.pair(one.pullInVoltage, one.supplyVoltage, "voltage");
    return `needs ${needs} of ${has}`;
  };
  const figures = (list: typeof cases) => listed(list.map(([name, one]) => `${name} it ${volts(one)}`));
  if (failing.length === 0) {
    return {
      status: "ok",
      says: `The coil withdraws the bolt in ${w.time(pullIn.time ?? 0)}: ${figures([cases[0], cases[3]])}`,
    };
  }
  const advice = "a higher supply voltage, a weaker spring or a stronger solenoid";
  const [first] = failing[0];
  if (failing.length === 1 && first === cases[3][0]) {
    return {
      status: "caution",
      says: `The coil withdraws the bolt, but not when both are at their worst: ${figures(failing)}`,
      advice,
    };
  }
  const alsoNames = pullIn.pullsIn ? [] : ["solenoid.pullInTime", "solenoid.pullInVoltage"];
  return {
    status: "fail",
    says: `The coil does not withdraw the bolt: ${figures(failing)}, pulling ${w.force(failing[0][1].force)} where ${w.force(pullIn.needed)} is needed`,
    advice,
    alsoNames,
  };
}

/** What an animal leaning with its comfortable push puts on the bolt, N: push.limit × (z_h − h_push)/r_l. */
function leaning(computed: Computed): { name: string; load: number } | null {
  const { latch, animals } = computed.door;
  if (latch === null) return null;
  const loads = animals.map((a) => ({
    name: a.name,
    load: (a.comfortablePush * Math.max(0, computed.hingeHeight - a.pushHeight)) / latch.distanceFromHinge,
  }));
  return loads.reduce((most, one) => (one.load > most.load ? one : most));
}

function sideLoad(computed: Computed, w: Words): Verdict | null {
  const bolt = computed.solenoid?.bolt;
  const lean = leaning(computed);
  const { latch } = computed.door;
  if (bolt === null || bolt === undefined || lean === null || latch === null) return null;
  const limit = bolt.sideLoadLimit;
  if (limit === null)
    return {
      status: "ok",
      says: "The file's bolt has no friction, so no side load holds it",
      alsoNames: ["solenoid.sideLoadLimit"],
    };
  const advice = "a weaker spring, a smoother bolt or a higher supply voltage";
  if (limit < latch.sideLoad || limit < 0) {
    const [most, has] = w.pair(limit, latch.sideLoad, "force");
    const says =
      limit < 0
        ? `The hot coil does not withdraw the bolt even unloaded (side load limit ${most})`
        : `The hot coil withdraws the bolt against at most ${most} from the side, but ${has} lean on it`;
    return { status: "fail", says, advice };
  }
  const [most, leans] = w.pair(limit, lean.load, "force");
  if (lean.load <= limit)
    return {
      status: "ok",
      says: `The hot coil withdraws the bolt against up to ${most} from the side; ${lean.name}, leaning on the latched flap, puts ${leans} on it`,
    };
  return {
    status: "caution",
    says: `${lean.name}, leaning on the latched flap with the push it is content with, puts ${leans} on the bolt, but the hot coil withdraws it against ${most} only: the bolt comes free when the animal steps back`,
    advice,
  };
}

function heat(computed: Computed, w: Words): Verdict | null {
  const coil = computed.solenoid?.coil;
  const solenoid = computed.door.solenoid;
  if (coil === null || coil === undefined || solenoid === null) return null;
  const limit = CLASS_LIMIT[solenoid.insulationClass];
  const [hot, most] = w.pair(coil.continuousTemperature, limit, "temperature");
  const once =
    coil.holdTemperature === null ? "" : `after one hold it is at ${w.temperature(coil.holdTemperature)}, `;
  const asleep = "if an animal asleep in range keeps it on";
  const ofClass = `class ${solenoid.insulationClass} (IEC 60085) allows ${most}`;
  const alsoNames = coil.holdTemperature === null ? ["solenoid.holdTemperature"] : [];
  const reached = Math.max(coil.continuousTemperature, coil.holdTemperature ?? -Infinity);
  if (reached > limit) {
    return {
      status: "fail",
      says: `The coil gets too hot: ${once}${asleep} it reaches ${hot}, and ${ofClass}`,
      advice: "a lower supply voltage, or a coil rated for it",
      alsoNames,
    };
  }
  if (reached > limit - CLASS_RESERVE) {
    return {
      status: "caution",
      says: `The coil is close to its limit: ${once}${asleep} it reaches ${hot}, and ${ofClass}`,
      advice: "a lower supply voltage, or a coil of a higher class",
      alsoNames,
    };
  }
  return {
    status: "ok",
    says: `The coil stays within its class: ${once}${asleep} it reaches ${hot}, and ${ofClass}`,
    alsoNames,
  };
}

function touch(computed: Computed, w: Words): Verdict | null {
  const coil = computed.solenoid?.coil;
  if (coil === null || coil === undefined) return null;
  const [hot, limit] = w.pair(coil.continuousTemperature, TOUCH_CAUTION, "temperature");
  if (coil.continuousTemperature <= TOUCH_CAUTION)
    return { status: "ok", says: `Kept on, the coil reaches ${hot}: below ${limit} it may be touched` };
  return {
    status: "caution",
    says: `Kept on, the coil reaches ${hot}, above the ${limit} of a surface that may be touched`,
    advice: "guard it from hands and fur, or feed it less",
  };
}

function clamp(computed: Computed, w: Words): Verdict | null {
  const coil = computed.solenoid?.coil;
  const { driver, solenoid } = computed.door;
  if (coil === null || coil === undefined || driver === null || solenoid === null) return null;
  const stored = w.energy((solenoid.inductance * coil.current ** 2) / 2);
  if (driver.clamp === "none") {
    return {
      status: "fail",
      says: `Nothing clamps the coil: each time it is switched off, its ½ L i² of ${stored} goes into the transistor as a voltage spike`,
      advice: "put a diode across the coil",
      alsoNames: ["solenoid.releaseTime"],
    };
  }
  return {
    status: "ok",
    says: `A ${driver.clamp} takes the coil's ½ L i² of ${stored} at ${w.voltage(driver.clampVoltage)} when it is switched off`,
  };
}

function release(computed: Computed, w: Words): Verdict | null {
  const time = computed.solenoid?.bolt?.releaseTime;
  if (time === null || time === undefined) return null;
  const says = `The coil lets the bolt go ${w.time(time)} after it is switched off`;
  if (time <= SLOW_RELEASE) return { status: "ok", says };
  return {
    status: "caution",
    says: `${says}, longer than ${w.time(SLOW_RELEASE)}: every hold is that much longer`,
    advice: "clamp it at a higher voltage, with a zener",
  };
}

function base(computed: Computed, w: Words): Verdict | null {
  const { driver } = computed;
  if (driver === null) return null;
  const { baseCurrent, neededBaseCurrent, overdrive } = driver;
  if (baseCurrent === null || neededBaseCurrent === null)
    return {
      status: "ok",
      says: "The MOSFET's gate takes no current: see that its threshold is well below the drive voltage",
    };
  if (overdrive === null)
    return { status: "ok", says: "No current flows in the coil, so the transistor needs none" };
  const [has, needs] = w.pair(baseCurrent, neededBaseCurrent, "current");
  const says = `The base gets ${has} where the coil's current needs ${needs}`;
  const times = `${w.number(overdrive)} times`;
  if (overdrive >= LEAST_OVERDRIVE)
    return { status: "ok", says: `${says}: ${times} as much, at least ${LEAST_OVERDRIVE} is wanted` };
  return {
    status: overdrive < 1 ? "fail" : "caution",
    says: `${says}: ${times}, but at least ${LEAST_OVERDRIVE} times is wanted to switch it fully on`,
    advice: "a smaller base resistor or a higher drive voltage",
  };
}

function switchHeat(computed: Computed, w: Words): Verdict | null {
  if (computed.driver === null) return null;
  const [turns, limit] = [w.power(computed.driver.dissipation), w.power(BARE_PACKAGE)];
  const says = `The transistor turns ${turns} into heat while the coil is on`;
  if (computed.driver.dissipation <= BARE_PACKAGE)
    return { status: "ok", says: `${says}; without a heat sink it stands ${limit}` };
  return {
    status: "caution",
    says: `${says}, more than the ${limit} it stands without a heat sink`,
    advice: "give it a heat sink, or take a MOSFET",
  };
}

export const COIL_RULES: readonly Rule[] = [
  {
    id: "coil.pull-in",
    part: "solenoid",
    concern: "solenoid pulls the bolt in",
    results: [
      "solenoid.pullInVoltage",
      "solenoid.pullInTime",
      "solenoid.current",
      "solenoid.resistance",
      "solenoid.continuousTemperature",
    ],
    judge: pullsIn,
    remedies: ["higher supply", "weaker spring"],
  },
  {
    id: "coil.side-load",
    part: "latch",
    concern: "bolt under a side load",
    results: ["solenoid.sideLoadLimit", "push.limit"],
    judge: sideLoad,
    remedies: ["smoother bolt", "weaker spring", "higher supply"],
  },
  {
    id: "coil.heat",
    part: "solenoid",
    concern: "coil against its insulation class",
    results: ["solenoid.holdTemperature", "solenoid.continuousTemperature"],
    judge: heat,
    remedies: ["lower supply", "insulation class"],
  },
  {
    id: "coil.touch",
    part: "solenoid",
    concern: "coil hot to the touch",
    results: ["solenoid.continuousTemperature"],
    judge: touch,
    remedies: ["lower supply"],
  },
  {
    id: "coil.clamp",
    part: "driver",
    concern: "flyback clamp",
    results: ["solenoid.releaseTime", "solenoid.current"],
    judge: clamp,
    remedies: ["diode clamp", "zener clamp"],
  },
  {
    id: "coil.release",
    part: "driver",
    concern: "coil's release",
    results: ["solenoid.releaseTime"],
    judge: release,
    remedies: ["zener clamp"],
  },
  {
    id: "driver.base",
    part: "driver",
    concern: "transistor driven fully on",
    results: ["solenoid.current"],
    judge: base,
    remedies: ["base resistor"],
  },
  {
    id: "driver.heat",
    part: "driver",
    concern: "heat in the transistor",
    results: ["driver.dissipation"],
    judge: switchHeat,
    remedies: ["smaller drop"],
  },
];
