/**
 * The wiring diagram: what stands between the adapter and the bolt, with the values of the computed door on it. A page lying
 * down, A4 or Letter; symbols after IEC 60617 or IEEE 315.
 */
import type { Drawing } from "./drawing.ts";
import { fitted } from "./marks.ts";
import type { Paper } from "./paper.ts";
import type { SheetInput } from "./sheet-input.ts";
import { Board, ROOM, SIZE } from "./wiring-board.ts";
import { clampStage, coilStage, driverStage, lampStage } from "./wiring-coil.ts";
import { cautionNotes, measuredNotes, partNotes } from "./wiring-notes.ts";
import { rails, receiverStage, regulatorStage, supplyStage } from "./wiring-power.ts";
import { SYMBOL_SETS, type SymbolSet } from "./wiring-symbols.ts";
import { timerStage } from "./wiring-timer.ts";
import { wiringValues } from "./wiring-values.ts";

export type { SymbolSet } from "./wiring-symbols.ts";

/** Draws the circuit of a door. Sections the file leaves out are drawn dashed and say so. */
export function wiringDiagram(input: SheetInput, paper: Paper, set: SymbolSet): Drawing {
  const [width, height] = [paper.heightMm, paper.widthMm];
  const board = new Board(set, [(width - ROOM.width) / 2, (height - ROOM.height) / 2]);
  const values = wiringValues(input.computed);
  const title = `Wiring diagram: ${input.door.name}`;
  const [heading] = fitted(title, ROOM.width, SIZE.title, true);
  board.label([0, 5], [heading === title ? title : `${heading} …`], "start", true, SIZE.title);
  board.label(
    [0, 11],
    [`symbols after ${SYMBOL_SETS[set]}; values from the computed door, coil at its ambient`],
  );
  supplyStage(board, input, values);
  regulatorStage(board, input);
  receiverStage(board, input);
  rails(board, input, timerStage(board, input));
  driverStage(board, input);
  lampStage(board, input, values);
  coilStage(board, input);
  clampStage(board, input);
  measuredNotes(board, input);
  partNotes(board, input, values);
  cautionNotes(board, input);
  return board.sketch.drawing(title, width, height);
}
