/** The left half of a wiring diagram: adapter, fuse, regulator, receiver. */

import { figureText } from "../review/words.ts";
import type { SheetInput } from "./sheet-input.ts";
import { type Board, COLUMN, RAIL } from "./wiring-board.ts";
import { antenna, contact, fuse } from "./wiring-symbols.ts";
import type { WiringValues } from "./wiring-values.ts";

/** Where the receiver's output leaves its box, mm. */
export const DETECT_FROM = { x: 116, y: 94 } as const;

export function supplyStage(board: Board, { door, words: w }: SheetInput, values: WiringValues): void {
  const { supply } = door;
  board.box(0, 57, 34, 91, supply !== null);
  const given =
    supply === null
      ? ["not in the file:", "take a listed,", "limited-energy one"]
      : [`${w.voltage(supply.voltage)} DC`, w.current(supply.currentLimit), "listed,", "limited energy"];
  board.label([3, 65], ["adapter", ...given], "start", true);
  board.symbol(...contact([34, 66], board.set), ...contact([34, 82], board.set));
  board.label([37, 63.6], ["+"], "middle", true).label([37, 79.6], ["–"], "middle", true);
  board.wire([40, 66], [48, 66], [48, 54]).symbol(...fuse({ at: [48, 42], way: "down" }, board.set));
  board.wire([48, 42], [48, RAIL.supply]).wire([40, 82], [48, 82], [48, RAIL.zero]);
  const rating = values.fuse === null ? [] : [w.current(values.fuse), "time-lag"];
  board.label([51.5, 46.5], ["F1", ...rating], "start", true);
}

export function regulatorStage(board: Board, { door, computed, words: w }: SheetInput): void {
  const { supply } = door;
  board.joint([60, RAIL.supply]).wire([60, RAIL.supply], [60, RAIL.logic], [65, RAIL.logic]);
  board.box(65, 30, 91, 46, supply !== null);
  board.label([78, 36.6], supply === null ? ["regulator"] : [supply.regulator, "regulator"], "middle", true);
  board.wire([78, 46], [78, RAIL.zero]).joint([78, RAIL.zero]);
  if (supply === null) return;
  const figures = [
    `${w.voltage(supply.voltage)} to`,
    `${w.voltage(supply.logicVoltage)}, ${w.current(supply.logicCurrent)}`,
  ];
  const heat = computed.supply;
  if (heat !== null)
    figures.push(
      `heat ${figureText(heat.regulatorDissipation, "W", w)}`,
      `junction ${figureText(heat.regulatorTemperature, "degC", w)}`,
    );
  board.label([80, 52], figures);
}

export function receiverStage(board: Board, { door, words: w }: SheetInput): void {
  const { range, pulseInterval } = door.detection;
  board.box(93, 84, DETECT_FROM.x, 105);
  board.symbol(...antenna([96.5, 84]));
  board.wire([104, 84], [104, RAIL.logic]).joint([104, RAIL.logic]);
  board.wire([104, 105], [104, RAIL.zero]).joint([104, RAIL.zero]);
  board.label(
    [95, 90],
    ["receiver", `range ${w.length(range)}`, "a pulse", `every ${w.time(pulseInterval)}`],
    "start",
    true,
  );
}

/** The rails with their names; `logicTo` is where the logic rail ends. */
export function rails(board: Board, { door, words: w }: SheetInput, logicTo: number): void {
  const { supply } = door;
  board.wire([48, RAIL.supply], [COLUMN, RAIL.supply]);
  board.wire([91, RAIL.logic], [logicTo, RAIL.logic]);
  board.wire([48, RAIL.zero], [COLUMN, RAIL.zero]);
  board.label(
    [49, RAIL.supply - 1.6],
    [supply === null ? "+ supply" : `+${w.voltage(supply.voltage)}`],
    "start",
    true,
  );
  board.label(
    [93, RAIL.logic - 1.6],
    [supply === null ? "+ logic" : `+${w.voltage(supply.logicVoltage)}`],
    "start",
    true,
  );
  board.label([49, RAIL.zero + 4], ["0 V"], "start", true);
}
