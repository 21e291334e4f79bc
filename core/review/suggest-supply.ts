/** Changes to the regulator, the supply, the timer's parts and the detector. */

import { REGULATOR_CAUTION } from "../parts/supply.ts";
import { LN_3 } from "../parts/timer.ts";
import { nearestPreferred } from "../quantity/preferred.ts";
import type { Computed } from "./compute.ts";
import { NEAR, worstCrossing } from "./findings-rule.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { entry, REACH } from "./suggest-round.ts";
import { timerParts } from "./suggest-timer.ts";
import { entryText, type Words } from "./words.ts";

/** Currents adapters are sold in, A (common practice, no source). */
const ADAPTER_CURRENTS = [0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 8, 10];
/** Heat sinks are not asked to be better than this, K/W: another regulator is then the answer (assumption). */
const BEST_SINK = 2;

export function switchingRegulator(): readonly Candidate[] {
  return [
    {
      label: "Make the logic voltage with a switching regulator",
      edits: [{ path: "supply.regulator", text: "switching" }],
    },
  ];
}

export function heatSink(computed: Computed, words: Words): readonly Candidate[] {
  const { supply, door } = computed;
  if (supply === null || door.supply === null || !(supply.regulatorDissipation > 0)) return [];
  const most = (REGULATOR_CAUTION - door.supply.ambient) / supply.regulatorDissipation;
  if (most < BEST_SINK) return [];
  const edit = entry("supply.thermalResistance", Math.floor(most), "down", words.system);
  return [{ label: `Cool the regulator to ${edit.text}`, edits: [edit] }];
}

export function strongerSupply(computed: Computed, words: Words): readonly Candidate[] {
  const current = computed.supply?.current ?? null;
  const sold = current === null ? undefined : ADAPTER_CURRENTS.find((amps) => NEAR * amps >= current);
  if (sold === undefined) return [];
  const text = entryText("supply.currentLimit", sold, words.system);
  return [{ label: `Take a supply that gives ${text}`, edits: [{ path: "supply.currentLimit", text }] }];
}

/** Tenths of a second are what a stopwatch tells. */
const STOPWATCH = 0.1;

export function holdOfParts(computed: Computed, words: Words): readonly Candidate[] {
  if (computed.timer === null) return [];
  const edit = entry("timer.holdTime", computed.timer.nominal, "nearest", words.system, STOPWATCH);
  return [{ label: `Write down the hold they give, ${edit.text}`, edits: [edit] }];
}

export function timingResistor(computed: Computed, words: Words): readonly Candidate[] {
  const { timer } = computed.door;
  if (timer === null || timer.capacitor === null) return [];
  const text = entryText(
    "timer.resistor",
    nearestPreferred(timer.holdTime / (LN_3 * timer.capacitor), "E96"),
    words.system,
  );
  return [{ label: `Take a timing resistor of ${text}`, edits: [{ path: "timer.resistor", text }] }];
}

/** Another R and C for the same hold that leave the leakage its ratio, where an electrolytic can. */
export function timerPartsChoice(computed: Computed, words: Words): readonly Candidate[] {
  const choice = timerParts(computed);
  if (choice === null || !choice.parts.leakage.enough) return [];
  const { resistor, trimmerSetting, capacitor } = choice.parts;
  const edits = [
    { path: "timer.resistor", text: entryText("timer.resistor", resistor + trimmerSetting, words.system) },
    { path: "timer.capacitor", text: entryText("timer.capacitor", capacitor, words.system) },
  ];
  return [{ label: `Build the timer of ${choice.words(words)}`, edits }];
}

/** Far enough for one missed pulse and the pull-in of the fastest animal. */
export function detectionRange(computed: Computed, words: Words): readonly Candidate[] {
  const pullIn = computed.solenoid?.bolt?.pullIn.time ?? null;
  if (pullIn === null) return [];
  const first = worstCrossing(computed, (c) => -c.passage.arrivalTime);
  const range = first.animal.speed * (computed.door.detection.pulseInterval + pullIn);
  const edit = entry("detection.range", range, "up", words.system, REACH[words.system]);
  return [{ label: `Notice the animal from ${edit.text}`, edits: [edit] }];
}
