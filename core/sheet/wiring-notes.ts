/** What stands below a wiring diagram: what to measure, what the small parts are for, and the cautions. */
import { TOUCH_CAUTION } from "../parts/solenoid.ts";
import { NONE, resultRow } from "./figures.ts";
import { fitted } from "./marks.ts";
import type { SheetInput } from "./sheet-input.ts";
import { type Board, LEADING, ROOM, SIZE } from "./wiring-board.ts";
import { holdDrawn, oneShotOf } from "./wiring-timer.ts";
import type { WiringValues } from "./wiring-values.ts";

const TOP = 143;
const LINE = 4;

/** Results a meter, a finger or a stopwatch can check on the finished board. */
const MEASURED = [
  "solenoid.current",
  "solenoid.pullInVoltage",
  "solenoid.pullInTime",
  "solenoid.releaseTime",
  "driver.dissipation",
  "regulator.temperature",
  "supply.current",
];

export function measuredNotes(board: Board, { computed, words: w }: SheetInput): void {
  const right = 84;
  board.label([0, TOP], ["What to expect"], "start", true, SIZE.head);
  MEASURED.map((name) => resultRow(computed, name, w)).forEach(([title, value], i) => {
    const y = TOP + 5.5 + i * LINE;
    const known = value === NONE ? "none" : value;
    board.label([0, y], [title]).label([right, y], [known], "end");
  });
}

export function partNotes(board: Board, input: SheetInput, values: WiringValues): void {
  const [left, width] = [92, 76];
  board.label([left, TOP], ["Notes"], "start", true, SIZE.head);
  const lines = notes(input, values).flatMap((one) => fitted(one, width, SIZE.label));
  board.label([left, TOP + 5.5], lines);
}

function notes(input: SheetInput, values: WiringValues): string[] {
  const { door, words: w } = input;
  const shot = oneShotOf(input);
  const hold = holdDrawn(input);
  const found = [
    "Dots join. A short bar at a lead's end is 0 V.",
    "Regulator: with the capacitors its data sheet asks for.",
  ];
  if (shot === null) {
    if (hold !== null) found.push(`Timer: the program beside this sheet, with a hold of ${w.time(hold)}.`);
  } else {
    found.push(
      "Timer: the common eight-pin chip. Its trigger is active low: the receiver must pull it down at a pulse.",
    );
    if (door.timer?.retriggers === true)
      found.push("Q2, a small pnp, empties C1 at a pulse: the hold starts anew.");
    if (shot.replaces) found.push(`R1, trimmer and C1 give the hold to set, not the one in the file.`);
  }
  if (values.fuseIdle) found.push("F1 carries more than the adapter gives: that limits first.");
  if (values.lampResistor === null)
    found.push(`No indicator: ${w.voltage(values.driveVoltage)} do not light one.`);
  return found;
}

/** Cautions of any circuit; a coil that gets too hot to touch is to be guarded. */
function cautions({ computed }: SheetInput): string[] {
  const end = computed.solenoid?.coil?.continuousTemperature ?? null;
  const hot = end !== null && end > TOUCH_CAUTION ? " Guard the coil, it gets too hot to touch." : "";
  return [
    "Supply it from a listed, low-voltage, limited-energy adapter. Never mains inside the door.",
    `Route the cord where neither flap nor door can pinch it.${hot}`,
    "Without power the door is locked: a person inside draws the bolt back by hand.",
    "Local electrical and building codes and licensed practice come before this sheet.",
  ];
}

export function cautionNotes(board: Board, input: SheetInput): void {
  const left = 176;
  const lines = cautions(input).flatMap((one) => fitted(one, ROOM.width - left - 6, SIZE.label));
  board.warning(left, TOP - 5.5, ROOM.width, TOP + 5.5 + lines.length * SIZE.label * LEADING);
  board.label([left + 3, TOP], ["Caution"], "start", true, SIZE.head);
  board.label([left + 3, TOP + 5.5], lines);
}
