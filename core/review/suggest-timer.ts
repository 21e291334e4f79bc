/** R, C and a trimmer from preferred numbers for a hold: what a one-shot is built of. */
import { type OneShotParts, oneShotParts } from "../parts/one-shot-parts.ts";
import type { Computed } from "./compute.ts";
import type { Words } from "./words.ts";

/** Resistors from E24, trimmers from E3, electrolytics from E6 (IEC 60063): what shops stock (common practice, no source). */
const SHOP = { resistors: "E24", trimmers: "E3", capacitors: "E6" } as const;
/** Logic voltage of a door without a supply section, V: the file's default. */
const LOGIC_VOLTAGE = 5;

export interface TimerParts {
  readonly parts: OneShotParts;
  readonly holdTime: number;
  readonly words: (w: Words) => string;
}

/** Parts for a hold, s (by default the timer's own); `null` without a timer or where none do. */
export function timerParts(computed: Computed, hold: number | null = null): TimerParts | null {
  const { timer, supply } = computed.door;
  if (timer === null || computed.timer === null) return null;
  const holdTime = hold ?? computed.timer.nominal;
  const { resistorTolerance, capacitorTolerance } = timer;
  const logicVoltage = supply?.logicVoltage ?? LOGIC_VOLTAGE;
  const parts = oneShotParts({ holdTime, logicVoltage, resistorTolerance, capacitorTolerance }, SHOP);
  return parts === null ? null : { parts, holdTime, words: (w) => partsWords(parts, w) };
}

/** "470 kΩ with a trimmer of 220 kΩ, and 22 µF" */
export function partsName({ resistor, trimmer, capacitor }: OneShotParts, w: Words): string {
  return `${w.resistance(resistor)} with a trimmer of ${w.resistance(trimmer)}, and ${w.capacitance(capacitor)}`;
}

function partsWords(parts: OneShotParts, w: Words): string {
  const { trimmerSetting, trimsFrom, trimsTo, leakage } = parts;
  const kind = leakage.enough
    ? ""
    : " of a low-leakage kind (an ordinary electrolytic leaks too much; a counter is surer)";
  const range = `trimmed at ${w.resistance(trimmerSetting)}, which reaches ${w.time(trimsFrom)} to ${w.time(trimsTo)} whatever the parts' tolerances`;
  return `${partsName(parts, w)}${kind}, ${range}`;
}
