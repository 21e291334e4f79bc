/** The right half of a wiring diagram: driver, indicator, solenoid and what clamps it. */
import { figureText } from "../review/words.ts";
import { line, polyline, rectangle } from "./drawing.ts";
import type { SheetInput } from "./sheet-input.ts";
import { type Board, COLUMN, RAIL } from "./wiring-board.ts";
import {
  COIL,
  coil,
  DRIVER,
  darlington,
  diode,
  diodeReversed,
  mosfet,
  PART,
  resistor,
} from "./wiring-symbols.ts";
import { oneShotOf, TIMER_OUT } from "./wiring-timer.ts";
import { GATE_PULL_DOWN, type WiringValues } from "./wiring-values.ts";

/** The transistor's base or gate, and the clamp beside the coil. */
const BASE = COLUMN - DRIVER.reach;
const CLAMP = 226;
const COIL_TOP = 36;
const UPPER = 30;
const LOWER = 64;
const { coil: DRIVE } = TIMER_OUT;

export function driverStage(board: Board, input: SheetInput): void {
  const { door, computed, words: w } = input;
  const { driver } = door;
  board.wire([COLUMN, DRIVE + DRIVER.fall], [COLUMN, RAIL.zero]);
  board.wire([COLUMN, LOWER], [COLUMN, DRIVE - DRIVER.rise]);
  if (driver === null) {
    board
      .wire([TIMER_OUT.x, DRIVE], [BASE, DRIVE])
      .box(BASE, DRIVE - DRIVER.rise, COLUMN + 8, DRIVE + DRIVER.fall, false);
    board.label([BASE + 2, DRIVE], ["no driver", "in the file"]);
    return;
  }
  const heat = computed.driver === null ? [] : [`heat ${figureText(computed.driver.dissipation, "W", w)}`];
  const at = [COLUMN + 6, DRIVE - 3] as const;
  if (driver.kind === "mosfet") {
    const on = driver.onResistance === null ? [] : [`${w.resistance(driver.onResistance)} when on`];
    board.wire([TIMER_OUT.x, DRIVE], [BASE, DRIVE]).symbol(...mosfet([BASE, DRIVE], board.set));
    board.label(
      at,
      ["Q1", "n-channel MOSFET", ...on, `driven with ${w.voltage(driver.driveVoltage)}`, ...heat],
      "start",
      true,
    );
    pullDown(board, w.resistance(GATE_PULL_DOWN));
    return;
  }
  const from = BASE - PART - 1;
  board
    .wire([TIMER_OUT.x, DRIVE], [from, DRIVE])
    .symbol(...resistor({ at: [from, DRIVE], way: "right" }, board.set));
  board.wire([from + PART, DRIVE], [BASE, DRIVE]).symbol(...darlington([BASE, DRIVE], board.set));
  board.label([from + PART / 2, DRIVE - 3], [w.resistance(driver.baseResistor)], "middle");
  const figures = [`gain at least ${w.number(driver.currentGain)}`, `drop ${w.voltage(driver.dropVoltage)}`];
  board.label(
    at,
    ["Q1", "npn Darlington", ...figures, `driven with ${w.voltage(driver.driveVoltage)}`, ...heat],
    "start",
    true,
  );
}

function pullDown(board: Board, value: string): void {
  const x = BASE - 2;
  board.joint([x, DRIVE], [x, RAIL.zero]).wire([x, DRIVE], [x, 106]);
  board.symbol(...resistor({ at: [x, 106], way: "down" }, board.set)).wire([x, 106 + PART], [x, RAIL.zero]);
  board.label([x + 2.6, 113], [value]);
}

/** Lit while the door is unlocked: at an output of its own, or beside the driver on the one-shot's. */
export function lampStage(board: Board, input: SheetInput, values: WiringValues): void {
  const { words: w } = input;
  if (values.lampResistor === null) return;
  const x = 177.5;
  if (oneShotOf(input) === null) board.wire([TIMER_OUT.x, TIMER_OUT.lamp], [x, TIMER_OUT.lamp], [x, 102]);
  else board.joint([x, DRIVE]).wire([x, DRIVE], [x, 102]);
  board.symbol(
    ...resistor({ at: [x, 102], way: "down" }, board.set),
    ...diodeReversed({ at: [x, 117], way: "down" }, board.set, "led"),
  );
  board.wire([x, 114], [x, 117]).wire([x, 129], [x, RAIL.zero]).joint([x, RAIL.zero]);
  board.label([x + 2.6, 106], [w.resistance(values.lampResistor)]).label([x - 3.2, 124], ["LED"], "end");
}

export function coilStage(board: Board, { door, computed, words: w }: SheetInput): void {
  const { solenoid } = door;
  board.wire([COLUMN, RAIL.supply], [COLUMN, COIL_TOP]).wire([COLUMN, COIL_TOP + COIL], [COLUMN, LOWER]);
  if (solenoid === null) {
    board.box(COLUMN - 4.5, COIL_TOP, COLUMN + 4.5, COIL_TOP + COIL, false);
    board.label([COLUMN - 7, COIL_TOP + 10], ["no solenoid", "in the file"], "end");
    return;
  }
  board.symbol(...coil([COLUMN, COIL_TOP], board.set));
  const middle = COIL_TOP + COIL / 2;
  board
    .dashed(line([COLUMN + 4.5, middle], [COLUMN + 9, middle]))
    .symbol(rectangle(COLUMN + 9, middle - 2, COLUMN + 16, middle + 2));
  board.label([COLUMN + 12.5, middle + 5.2], ["bolt"], "middle");
  const current = computed.solenoid?.coil?.current;
  board.label(
    [COLUMN - 7, COIL_TOP + 7],
    [
      "solenoid",
      `${w.voltage(solenoid.ratedVoltage)}, ${w.current(solenoid.ratedCurrent)}`,
      `${w.resistance(computed.solenoid?.resistance ?? 0)} at ${w.temperature(20)}`,
      w.of(solenoid.inductance, "inductance"),
      ...(current === undefined ? [] : [`takes ${figureText(current, "A", w)}`]),
    ],
    "end",
    true,
  );
}

export function clampStage(board: Board, { door, words: w }: SheetInput): void {
  const { driver, solenoid } = door;
  if (driver === null || solenoid === null) return;
  if (driver.clamp === "none") {
    noClamp(board);
    return;
  }
  const top = (UPPER + LOWER) / 2;
  board.joint([COLUMN, UPPER], [COLUMN, LOWER]);
  if (driver.clamp === "diode") {
    board.symbol(...diode({ at: [CLAMP, top - PART / 2], way: "down" }, board.set, "diode"));
    board
      .wire([COLUMN, UPPER], [CLAMP, UPPER], [CLAMP, top - PART / 2])
      .wire([CLAMP, top + PART / 2], [CLAMP, LOWER], [COLUMN, LOWER]);
    board.label([CLAMP + 4, top - 1], ["D1, diode", w.voltage(driver.clampVoltage)], "start", true);
    return;
  }
  board.symbol(
    ...diodeReversed({ at: [CLAMP, top - PART - 1], way: "down" }, board.set, "zener"),
    ...diode({ at: [CLAMP, top + 1], way: "down" }, board.set, "diode"),
  );
  board
    .wire([COLUMN, UPPER], [CLAMP, UPPER], [CLAMP, top - PART - 1])
    .wire([CLAMP, top - 1], [CLAMP, top + 1]);
  board.wire([CLAMP, top + 1 + PART], [CLAMP, LOWER], [COLUMN, LOWER]);
  board.label(
    [CLAMP + 4, top - 6],
    ["D2, zener", "and D1, diode:", `together ${w.voltage(driver.clampVoltage)}`],
    "start",
    true,
  );
}

/** Where the diode belongs, dashed: the one fault that breaks the transistor the first time it is switched off. */
function noClamp(board: Board): void {
  const top = (UPPER + LOWER) / 2;
  board.faint(...diode({ at: [CLAMP, top - PART / 2], way: "down" }, board.set, "diode"));
  board.dashed(
    polyline([
      [COLUMN, UPPER],
      [CLAMP, UPPER],
      [CLAMP, top - PART / 2],
    ]),
    polyline([
      [COLUMN, LOWER],
      [CLAMP, LOWER],
      [CLAMP, top + PART / 2],
    ]),
  );
  board.warning(CLAMP + 3.5, top - 6, 255, top + 4.5);
  board
    .label([CLAMP + 5.5, top - 1.6], ["NO CLAMP –"], "start", true, 3)
    .label([CLAMP + 5.5, top + 2.6], ["add one"], "start", true, 3);
}
