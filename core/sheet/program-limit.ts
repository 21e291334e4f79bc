/**
 * How long a timer program may keep the coil on, and how long it rests it then. Times in s, temperatures in °C.
 *
 * The program keeps an account: time on is added, time off is taken away at the rate m = maxOn/rest, never below nothing;
 * at maxOn it rests the coil until the account is empty. That keeps the coil below a limit whatever pulses arrive. With x
 * the coil's rise over the rise R_th P it would end at, dx/dt = (1 − x)/τ on and −x/τ off (P at ambient is the most the
 * coil takes, since warm copper takes less). Let c be the account and X(c) = 1 − e^{−c/τ}/(1 + m): while on, X obeys the
 * same equation as x; while off it falls no faster than x at X, since X ≥ X(0) = m/(1 + m); so x ≤ X(c) once is so for
 * ever, and x ≤ X(maxOn). The limit is reached where e^{−maxOn/τ}/(1 + m) = 1 − x_limit, which is solved here.
 */
import {
  coilPower,
  continuousTemperature,
  type HeatedCoil,
  resistanceAt,
  temperatureAfter,
} from "../parts/coil-heating.ts";
import { CLASS_LIMIT, heatedCoil, TOUCH_CAUTION } from "../parts/solenoid.ts";
import { holdStart } from "../passage/passage.ts";
import type { Computed } from "../review/compute.ts";
import { CLASS_RESERVE } from "../review/findings-coil.ts";

/** What ends a long time on. */
export type LimitReason = "touch" | "class" | "cap";

export interface OnTimeLimit {
  /** Longest time on, whole s. */
  readonly maxOn: number;
  /** Rest after it, whole s. */
  readonly rest: number;
  readonly reason: LimitReason;
  /** What the coil is kept below, °C; `null` for a cap. */
  readonly temperature: number | null;
  /** Driven without a break from ambient, the coil would be there after this, s; `null` for a cap. */
  readonly fromAmbient: number | null;
  /** Whether the coil stays below `temperature`: not where that would take less than the second a program counts in. */
  readonly kept: boolean;
  /** One passage of the slowest animal keeps the coil on longer than that: the coil is too hot for this door. */
  readonly shortOfPassage: boolean;
}

/** A door that stays unlocked for longer is not locking at all: a cap for a coil that could stay on for ever, s (assumption). */
export const CAP = 30 * 60;
/** What a cool coil rests after the cap: a locked door between two stays unlocked, s (assumption). */
export const CAP_REST = 60;
/** Rest of a hot coil, as a part of its thermal time constant: the animal waits this long (assumption). */
const REST_SHARE = 0.5;
/** A limit that only cautions must leave this many passages' time on, or the harder limit is taken (assumption). */
const PASSAGES = 3;

/** The limit for a door and a hold, s. */
export function onTimeLimit(computed: Computed, hold: number): OnTimeLimit {
  const retriggers = computed.door.timer?.retriggers ?? true;
  const passageOn = Math.max(...computed.crossings.map((c) => holdStart(c.passage, retriggers) + hold));
  const most = Math.max(CAP, Math.ceil(PASSAGES * passageOn));
  const coil = coilOf(computed);
  const end = coil === null ? Number.NEGATIVE_INFINITY : continuousTemperature(coil.heated);
  if (coil !== null && end > TOUCH_CAUTION) {
    const touch = hotLimit(coil.heated, TOUCH_CAUTION, "touch", most, passageOn);
    if (touch.kept && touch.maxOn >= PASSAGES * passageOn) return touch;
  }
  if (coil !== null && end > coil.limit) return hotLimit(coil.heated, coil.limit, "class", most, passageOn);
  const none = { temperature: null, fromAmbient: null, kept: true, shortOfPassage: false };
  return { maxOn: most, rest: CAP_REST, reason: "cap", ...none };
}

function coilOf({ door }: Computed): { heated: HeatedCoil; limit: number } | null {
  const { solenoid, driver, supply } = door;
  if (solenoid === null || driver === null || supply === null) return null;
  const limit = CLASS_LIMIT[solenoid.insulationClass];
  const reserved = limit - CLASS_RESERVE;
  return {
    heated: heatedCoil(solenoid, driver, supply.voltage),
    limit: reserved > solenoid.ambient ? reserved : limit,
  };
}

/** Whole seconds: time on rounded down, the rest up. A coil that may not be on for one gets one all the same, and no promise. */
function hotLimit(
  coil: HeatedCoil,
  limit: number,
  reason: "touch" | "class",
  most: number,
  passageOn: number,
): OnTimeLimit {
  const share = Math.max(0, (limit - coil.ambient) / greatestRise(coil));
  const solved = longestOn(share) * coil.timeConstant;
  const maxOn = Math.floor(Math.min(most, solved));
  const rest = Math.max(1, Math.ceil(REST_SHARE * coil.timeConstant));
  return {
    maxOn: Math.max(1, maxOn),
    rest,
    reason,
    temperature: limit,
    fromAmbient: timeTo(coil, limit),
    kept: maxOn >= 1,
    shortOfPassage: maxOn < passageOn,
  };
}

/** R_th P at its most, K: at ambient, or where coil and series resistance match if that is warmer. */
function greatestRise(coil: HeatedCoil): number {
  const { voltage, seriesResistance: series, thermalResistance } = coil;
  const cold = resistanceAt(coil.resistance20, coil.ambient);
  const power = cold >= series ? coilPower(coil, coil.ambient) : (voltage * voltage) / (4 * series);
  return thermalResistance * power;
}

/** μ = maxOn/τ of e^{−μ}/(1 + μ/REST_SHARE) = 1 − share, from below: the left side falls from 1. */
function longestOn(share: number): number {
  let [low, high] = [0, -Math.log1p(-share)];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (Math.exp(-middle) / (1 + middle / REST_SHARE) > 1 - share) low = middle;
    else high = middle;
  }
  return low;
}

/** When a coil driven from ambient reaches a temperature below its continuous one, s. */
function timeTo(coil: HeatedCoil, temperature: number): number {
  let [low, high] = [0, coil.timeConstant];
  while (temperatureAfter(coil, high) < temperature) [low, high] = [high, 2 * high];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (temperatureAfter(coil, middle) < temperature) low = middle;
    else high = middle;
  }
  return high;
}
