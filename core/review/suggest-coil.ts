/** Changes to the coil, its driver and what it must pull. */

import { setValue } from "../door/path.ts";
import { baseResistorFor } from "../parts/driver.ts";
import { STANDARD_GRAVITY } from "../parts/flap.ts";
import { solenoidResult } from "../parts/solenoid.ts";
import { supplyResult } from "../parts/supply.ts";
import { preferredAbove, preferredBelow } from "../quantity/preferred.ts";
import type { Computed } from "./compute.ts";
import { LEAST_SPRING_RATIO } from "./findings-hold.ts";
import { narrowed } from "./findings-reserve.ts";
import type { Rule } from "./findings-rule.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { entry } from "./suggest-round.ts";
import { entryText, type Words } from "./words.ts";

/** Voltages adapters are sold in, V (common practice, no source). */
const ADAPTERS = [5, 6, 9, 12, 15, 18, 19, 24, 30, 36, 48];
/** A greased, polished bolt in its guide: no smoother is promised (handbook value, from memory). */
const LEAST_FRICTION = 0.05;
/** A small modern MOSFET, ohm (common practice, no source). */
const MOSFET_RESISTANCE = 0.1;
/** A silicon diode across the coil, V. */
const DIODE = 0.7;

type Judge = Pick<Rule, "judge">;

/** The coil and the supply with one number changed and no swing run: what their rules look at. */
function coilWith(computed: Computed, path: string, value: number): Computed | null {
  const set = setValue(computed.door, path, value);
  if (!set.ok) return null;
  const { solenoid, driver, supply, latch } = set.door;
  const hold = computed.timer?.nominal ?? null;
  const coil = solenoid === null ? null : solenoidResult(solenoid, driver, supply, latch, hold);
  const fed = supply === null ? null : supplyResult(supply, coil?.coil?.current ?? null);
  return { ...computed, door: set.door, solenoid: coil, supply: fed };
}

function passesWith(computed: Computed, words: Words, rule: Judge, path: string): (value: number) => boolean {
  return (value) => {
    const trial = coilWith(computed, path, value);
    return trial !== null && rule.judge(trial, words)?.status === "ok";
  };
}

function supplyOf(volts: number, words: Words): Candidate {
  const text = entryText("supply.voltage", volts, words.system);
  return { label: `Feed it from a supply of ${text}`, edits: [{ path: "supply.voltage", text }] };
}

export function higherSupply(computed: Computed, words: Words, rule: Judge): readonly Candidate[] {
  const present = computed.door.supply?.voltage;
  if (present === undefined) return [];
  const passes = passesWith(computed, words, rule, "supply.voltage");
  const higher = ADAPTERS.filter((volts) => volts > present && passes(volts));
  return higher.slice(0, 2).map((volts) => supplyOf(volts, words));
}

/** Whether the supply there is withdraws the bolt, cold and hot, and at its low end: less is no way out where it does not. */
function withdraws(computed: Computed): boolean {
  const bolt = computed.solenoid?.bolt ?? null;
  return bolt === null || [bolt.pullIn, bolt.pullInHot, bolt.pullInLow].every(({ pullsIn }) => pullsIn);
}

export function lowerSupply(computed: Computed, words: Words, rule: Judge): readonly Candidate[] {
  const present = computed.door.supply?.voltage;
  if (present === undefined || !withdraws(computed)) return [];
  const passes = passesWith(computed, words, rule, "supply.voltage");
  const lower = ADAPTERS.filter((volts) => volts < present && passes(volts)).reverse();
  return lower.slice(0, 2).map((volts) => supplyOf(volts, words));
}

/** The strongest spring the coil still manages, as long as it lifts the bolt. */
export function weakerSpring(computed: Computed, words: Words, rule: Judge): readonly Candidate[] {
  const { latch } = computed.door;
  if (latch === null) return [];
  const weight = latch.boltMass * STANDARD_GRAVITY;
  const least = latch.boltPoints === "up" ? LEAST_SPRING_RATIO * weight : 0;
  const passes = passesWith(computed, words, rule, "latch.springForce");
  if (latch.springForce <= least || !passes(least)) return [];
  const edit = entry("latch.springForce", narrowed(passes, least, latch.springForce), "down", words.system);
  return [{ label: `Take a weaker spring (${edit.text})`, edits: [edit] }];
}

export function smootherBolt(computed: Computed, words: Words, rule: Judge): readonly Candidate[] {
  const { latch } = computed.door;
  if (latch === null || latch.frictionCoefficient <= LEAST_FRICTION) return [];
  const passes = passesWith(computed, words, rule, "latch.frictionCoefficient");
  if (!passes(LEAST_FRICTION)) return [];
  const most = narrowed(passes, LEAST_FRICTION, latch.frictionCoefficient);
  const edit = entry("latch.frictionCoefficient", most, "down", words.system);
  return [{ label: `Polish and grease the bolt to a friction coefficient of ${edit.text}`, edits: [edit] }];
}

/** Classes above B that coils are wound in; A and E are not sought. */
const CLASSES = ["A", "E", "B", "F", "H"];

export function higherClass(computed: Computed): readonly Candidate[] {
  const { solenoid } = computed.door;
  if (solenoid === null) return [];
  return CLASSES.slice(CLASSES.indexOf(solenoid.insulationClass) + 1).map((name) => ({
    label: `Take a coil wound to class ${name}`,
    edits: [{ path: "solenoid.insulationClass", text: name }],
  }));
}

export function diodeClamp(_: Computed, words: Words): readonly Candidate[] {
  return [
    {
      label: "Put a diode across the coil",
      edits: [
        { path: "driver.clamp", text: "diode" },
        { path: "driver.clampVoltage", text: entryText("driver.clampVoltage", DIODE, words.system) },
      ],
    },
  ];
}

/** A zener at the supply's voltage, plus its diode: the current falls faster, the transistor sees twice the supply. */
export function zenerClamp(computed: Computed, words: Words): readonly Candidate[] {
  const { supply } = computed.door;
  if (supply === null) return [];
  const zener = preferredAbove(supply.voltage, "E24");
  const text = entryText("driver.clampVoltage", zener + DIODE, words.system);
  return [
    {
      label: `Clamp the coil with a zener of ${words.voltage(zener)} and a diode`,
      edits: [
        { path: "driver.clamp", text: "zener" },
        { path: "driver.clampVoltage", text },
      ],
    },
  ];
}

export function baseResistor(computed: Computed, words: Words): readonly Candidate[] {
  const { driver } = computed.door;
  const current = computed.solenoid?.coil?.current;
  if (driver === null || current === undefined) return [];
  const most = baseResistorFor(driver, current);
  if (most === null) return [];
  const text = entryText("driver.baseResistor", preferredBelow(most, "E24"), words.system);
  return [{ label: `Take a base resistor of ${text}`, edits: [{ path: "driver.baseResistor", text }] }];
}

export function mosfet(_: Computed, words: Words): readonly Candidate[] {
  const text = entryText("driver.onResistance", MOSFET_RESISTANCE, words.system);
  return [
    {
      label: `Switch with a MOSFET of ${text}`,
      edits: [
        { path: "driver.kind", text: "mosfet" },
        { path: "driver.onResistance", text },
      ],
    },
  ];
}
