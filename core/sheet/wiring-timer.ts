/** The middle of a wiring diagram: a one-shot of the common timer chip with its R, trimmer and C, or a microcontroller. */
import { timerParts } from "../review/suggest-timer.ts";
import { PINS } from "./program-text.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";
import { type Board, RAIL } from "./wiring-board.ts";
import { DETECT_FROM } from "./wiring-power.ts";
import { capacitor, PNP, pnp, resistor, trimmer, zeroMark } from "./wiring-symbols.ts";
import { CONTROL_CAPACITOR, TRIGGER_PULL_UP } from "./wiring-values.ts";

/** The right edge of the timer, and the heights of its outputs, mm. */
export const TIMER_OUT = { x: 174, coil: 86, lamp: 98 } as const;

/** R and C that the hold to set is within this part of are drawn as the file has them (assumption: a stopwatch tells no finer). */
const SAME_HOLD = 0.02;

export interface OneShot {
  readonly resistor: number;
  /** End to end and where it stands, ohm; `null` without one. */
  readonly trimmer: { readonly whole: number; readonly setting: number } | null;
  readonly capacitor: number;
  /** The hold these parts give, s. */
  readonly hold: number;
  /** Drawn in place of what the file has. */
  readonly replaces: boolean;
}

/** The parts of a one-shot, where the file builds one: its own, or for another hold to set the ones suggested. */
export function oneShotOf(input: SheetInput): OneShot | null {
  const { door, computed } = input;
  const { resistor, capacitor } = door.timer ?? { resistor: null, capacitor: null };
  if (resistor === null || capacitor === null || computed.timer === null) return null;
  const own = { resistor, capacitor, trimmer: null, hold: computed.timer.nominal, replaces: false };
  const set = holdToSet(input);
  if (set === null || Math.abs(set.time / own.hold - 1) <= SAME_HOLD) return own;
  const made = timerParts(computed, set.time);
  if (made === null) return own;
  const { parts } = made;
  return {
    resistor: parts.resistor,
    trimmer: { whole: parts.trimmer, setting: parts.trimmerSetting },
    capacitor: parts.capacitor,
    hold: set.time,
    replaces: true,
  };
}

/** The hold the drawn timer is for, s; `null` without any. */
export function holdDrawn(input: SheetInput): number | null {
  return oneShotOf(input)?.hold ?? holdToSet(input)?.time ?? input.computed.timer?.nominal ?? null;
}

/** Draws the timer; returns where the logic rail ends. */
export function timerStage(board: Board, input: SheetInput): number {
  const oneShot = oneShotOf(input);
  if (oneShot !== null) return oneShotStage(board, input, oneShot);
  const hold = holdDrawn(input);
  const [left, middle] = [140, 157];
  board.box(left, 74, TIMER_OUT.x, 110, input.door.timer !== null);
  board.wire([DETECT_FROM.x, DETECT_FROM.y], [left, DETECT_FROM.y]);
  board.wire([middle, 74], [middle, RAIL.logic]);
  board.wire([middle, 110], [middle, RAIL.zero]).joint([middle, RAIL.zero]);
  board.label([middle, 79.5], ["microcontroller"], "middle", true);
  board.label(
    [middle, 107.5],
    [hold === null ? "no timer in the file" : `hold ${input.words.time(hold)}`],
    "middle",
  );
  board.label([left + 1.5, DETECT_FROM.y + 1], [PINS.detect]);
  board.label([TIMER_OUT.x - 1.5, TIMER_OUT.coil + 1], [PINS.coil], "end");
  board.label([TIMER_OUT.x - 1.5, TIMER_OUT.lamp + 1], [PINS.lamp], "end");
  return middle;
}

function oneShotStage(board: Board, input: SheetInput, parts: OneShot): number {
  const { words: w, door } = input;
  const { set } = board;
  const [left, top, bottom] = [152, 74, 110];
  const [discharge, threshold, reset, power] = [156.5, 161.5, 166.5, 171];
  const [pullUp, column, node] = [120, 136, 64];
  board.box(left, top, TIMER_OUT.x, bottom);
  // Trigger line with its pull-up.
  board
    .wire([DETECT_FROM.x, DETECT_FROM.y], [left, DETECT_FROM.y])
    .joint([pullUp, DETECT_FROM.y], [pullUp, RAIL.logic]);
  board.wire([pullUp, RAIL.logic], [pullUp, 60]).symbol(...resistor({ at: [pullUp, 60], way: "down" }, set));
  board
    .wire([pullUp, 72], [pullUp, DETECT_FROM.y])
    .label([pullUp - 2.5, 67], [w.resistance(TRIGGER_PULL_UP)], "end");
  // R, trimmer and C from the rail down.
  board.joint([column, RAIL.logic]).symbol(...resistor({ at: [column, 40], way: "down" }, set));
  board
    .wire([column, RAIL.logic], [column, 40])
    .label([column + 3, 47], ["R1", w.resistance(parts.resistor)], "start", true);
  if (parts.trimmer === null) board.wire([column, 52], [column, node]);
  else {
    board.symbol(...trimmer({ at: [column, 52], way: "down" }, set));
    const { whole, setting } = parts.trimmer;
    board.label([column + 5, 57], [w.resistance(whole), `at ${w.resistance(setting)}`]);
  }
  board.symbol(...capacitor({ at: [column, 66], way: "down" }, set, true), ...zeroMark([column, 78]));
  board
    .wire([column, node], [column, 66])
    .label([column - 3.5, 76.5], ["C1", w.capacitance(parts.capacitor)], "end", true);
  // The timing node to the chip.
  board.wire([column, node], [threshold, node], [threshold, top]).wire([discharge, node], [discharge, top]);
  board.joint([column, node], [discharge, node]);
  board
    .wire([reset, top], [reset, RAIL.logic])
    .wire([power, top], [power, RAIL.logic])
    .joint([reset, RAIL.logic]);
  if (door.timer?.retriggers === true) retrigger(board, node);
  const [ground, control] = [157, 168];
  board.wire([ground, bottom], [ground, RAIL.zero]).joint([ground, RAIL.zero]);
  board
    .wire([control, bottom], [control, 113])
    .symbol(...capacitor({ at: [control, 113], way: "down" }, set, false));
  board.wire([control, 125], [control, RAIL.zero]).joint([control, RAIL.zero]);
  board.label([control - 3.4, 120], [w.capacitance(CONTROL_CAPACITOR)], "end");
  chipNames(board, w.time(parts.hold));
  return power;
}

/** Pin numbers and names of the common eight-pin timer chip. */
function chipNames(board: Board, hold: string): void {
  const small = 2.3;
  board
    .label([156.5, 77.3], ["7"], "middle", false, small)
    .label([161.5, 77.3], ["6"], "middle", false, small);
  board.label([166.5, 77.3], ["4"], "middle", false, small).label([171, 77.3], ["8"], "middle", false, small);
  board.label([159, 80.4], ["timing"], "middle", false, small);
  board.label([153.2, DETECT_FROM.y + 0.9], ["2 trigger"], "start", false, small);
  board.label([TIMER_OUT.x - 1.2, TIMER_OUT.coil + 0.9], ["output 3"], "end", false, small);
  board.label([157, 108.8], ["1"], "middle", false, small).label([168, 108.8], ["5"], "middle", false, small);
  board.label([163, 99.5], ["timer chip", `hold ${hold}`], "middle", true);
}

/** A pnp that empties C at every pulse, so that each starts the hold anew. */
function retrigger(board: Board, node: number): void {
  const [from, base] = [140.5, 80];
  const out = from + PNP.reach;
  board.symbol(...pnp([from, base], board.set), ...zeroMark([out, base + PNP.rise]));
  board.wire([out, base - PNP.rise], [out, node]).joint([out, node]);
  board
    .wire([from, base], [from - 1.2, base], [from - 1.2, DETECT_FROM.y])
    .joint([from - 1.2, DETECT_FROM.y]);
  board.label([out - 1.5, base - 9.5], ["Q2"], "end", true);
}
