/**
 * The one-shot timer that holds the door unlocked (model, section 5). Plain SI numbers.
 */
import type { Timer } from "../door/door.ts";

/** The common timer chip's capacitor charges from 0 to 2/3 of its supply: t = R C ln 3 (published as 1.1 R C). */
export const LN_3 = Math.log(3);

/** Charging current at the threshold over the capacitor's leakage: at least this (model, section 5). */
export const LEAST_LEAKAGE_RATIO = 10;

/** t = R C ln 3, s. */
export function oneShotTime(resistor: number, capacitor: number): number {
  return resistor * capacitor * LN_3;
}

/** What still flows into the capacitor at the threshold, A: a third of the supply is left, V/(3R). */
export function chargingCurrent(logicVoltage: number, resistor: number): number {
  return logicVoltage / (3 * resistor);
}

/** Leakage of an aluminium electrolytic at a voltage, A: 0.01 C V + 3 µA (common practice, no source). */
export function electrolyticLeakage(capacitor: number, voltage: number): number {
  return 0.01 * capacitor * voltage + 3e-6;
}

/** The charging current against the leakage of an aluminium electrolytic. */
export interface LeakageCheck {
  readonly chargingCurrent: number;
  readonly leakage: number;
  /** chargingCurrent over leakage. */
  readonly ratio: number;
  readonly enough: boolean;
}

/** The leakage check of an R and a C; the capacitor's voltage is taken as the logic supply's (assumption). */
export function leakageCheck(logicVoltage: number, resistor: number, capacitor: number): LeakageCheck {
  const charging = chargingCurrent(logicVoltage, resistor);
  const leakage = electrolyticLeakage(capacitor, logicVoltage);
  const ratio = charging / leakage;
  return { chargingCurrent: charging, leakage, ratio, enough: ratio >= LEAST_LEAKAGE_RATIO };
}

/**
 * No R and C of an aluminium electrolytic hold longer than this and keep the leakage ratio, s. With the 3 µA
 * left out, V/(3R) ≥ 10 · 0.01 C V says R C ≤ 10/3 s: 3.66 s. Longer holds need a film or low-leakage
 * capacitor, a counter after a faster oscillator, or a microcontroller.
 */
export const LONGEST_ELECTROLYTIC_HOLD = LN_3 / (3 * LEAST_LEAKAGE_RATIO * 0.01);

export interface TimerResult {
  /** R C ln 3 where R and C are given, else the hold the builder set, s. */
  readonly nominal: number;
  /** Both parts at their low limits, s. */
  readonly shortest: number;
  /** Both parts at their high limits, s. */
  readonly longest: number;
  /** What R and C give over the hold the builder set, less 1; `null` without R and C. */
  readonly mismatch: number | null;
  /** `null` without R and C, or without a supply. */
  readonly leakage: LeakageCheck | null;
}

/**
 * The timer of a door. The tolerances apply to a `holdTime` without R and C too (a one-shot of unnamed parts);
 * a crystal-timed hold has both at 0. `logicVoltage` is the supply's, V, `null` without a supply.
 */
export function timerResult(timer: Timer, logicVoltage: number | null): TimerResult {
  const { resistor, capacitor, resistorTolerance: r, capacitorTolerance: c } = timer;
  const parts = resistor === null || capacitor === null ? null : { resistor, capacitor };
  const nominal = parts === null ? timer.holdTime : oneShotTime(parts.resistor, parts.capacitor);
  return {
    nominal,
    shortest: nominal * (1 - r) * (1 - c),
    longest: nominal * (1 + r) * (1 + c),
    mismatch: parts === null ? null : nominal / timer.holdTime - 1,
    leakage:
      parts === null || logicVoltage === null
        ? null
        : leakageCheck(logicVoltage, parts.resistor, parts.capacitor),
  };
}
