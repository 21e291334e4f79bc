/** What a new hold time changes in the file: the hold itself, and the resistor of a one-shot that is to hold that long. */
import type { Timer } from "../../core/door/door.ts";
import { formatQuantity } from "../../core/quantity/format.ts";
import type { EntryChange } from "./entries.ts";

/** One-shot: t = R C ln 3 (model, section 5). */
const LN_3 = Math.log(3);

export interface HoldChange {
  readonly name: string;
  readonly changes: readonly EntryChange[];
}

/** @param hold s; written to a hundredth */
export function holdChanges(timer: Timer, hold: number): HoldChange {
  const seconds = Math.max(0.01, Math.round(hold * 100) / 100);
  const text = `${seconds} s`;
  const changes: EntryChange[] = [{ path: "timer.holdTime", entry: text }];
  if (timer.resistor !== null && timer.capacitor !== null) {
    const resistance = seconds / (timer.capacitor * LN_3);
    changes.push({ path: "timer.resistor", entry: formatQuantity(resistance, "resistance", "metric", 5) });
  }
  return { name: `Set the hold to ${text}`, changes };
}
