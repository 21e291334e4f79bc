/** What a search found, in sentences, and as edits of the door file. */
import { fieldAt, isNumeric } from "../door/schema.ts";
import { formatQuantity, type UnitSystem } from "../quantity/format.ts";
import type { BestFound } from "./best.ts";
import type { Binding, Worse } from "./best-binding.ts";

/** Digits of a value to build by, and of a hold. */
const DIGITS = 4;
const HOLD_DIGITS = 3;

/** The found inputs as edits, rounded to four digits: a place right at a finding's edge may have to give a little. */
export function bestEdits({ inputs }: BestFound, system: UnitSystem): { path: string; text: string }[] {
  return inputs.map(({ key, value }) => ({ path: key, text: valueText(key, value, system) }));
}

function valueText(key: string, value: number, system: UnitSystem): string {
  const field = fieldAt(key);
  return isNumeric(field) && field.kind === "quantity"
    ? formatQuantity(value, field.dimension, system, DIGITS)
    : String(Number(value.toPrecision(DIGITS)));
}

function seconds(hold: number): string {
  return formatQuantity(hold, "time", "metric", HOLD_DIGITS);
}

/** The result, how far to trust it, and what stops each input. */
export function bestSays(found: BestFound, system: UnitSystem): string[] {
  return [
    headline(found, system),
    trust(found),
    ...cautions(found),
    ...found.binding.map((b) => stop(b, system)),
  ];
}

function headline({ kept, inputs, hold, holdBefore, bars }: BestFound, system: UnitSystem): string {
  const at = inputs.map(({ key, value }) => `${key} ${valueText(key, value, system)}`).join(", ");
  if (!kept || hold === null) {
    const barred = bars.length > 0 ? `it fails ${bars.join(", ")}` : "no hold is sure there";
    return `No place in these ranges keeps every finding. The nearest is ${at}: ${barred}.`;
  }
  const before =
    holdBefore === null ? "no hold is sure as the door stands" : `${seconds(holdBefore)} as the door stands`;
  return `The least hold found is ${seconds(hold)} (${before}), at ${at}.`;
}

function trust({ starts, agreeing, tried }: BestFound): string {
  const counted = starts === 1 ? "one start" : `${starts} starts, ${agreeing} of which end within 1 % of it`;
  return `The best found from ${counted}, ${tried} doors tried; a better place elsewhere in the ranges is not ruled out.`;
}

function cautions({ newCautions }: BestFound): string[] {
  return newCautions.length === 0
    ? []
    : [`Cautions there that the door did not have: ${newCautions.join(", ")}.`];
}

/** What stops one input one way. */
function stop({ key, direction, at, stops, worse, hold, invalid }: Binding, system: UnitSystem): string {
  if (at === null) return `${key} ${direction}: its range ends there.`;
  const way = `${key} ${direction} to ${valueText(key, at, system)}`;
  switch (stops) {
    case "no door":
      return `${way}: ${invalid ?? "no door"}`;
    case "findings":
      return `${way}: ${worse.map(turns).join(", ")}.`;
    case "longer hold":
      return hold === null ? `${way}: no hold is sure.` : `${way}: the hold grows to ${seconds(hold)}.`;
    default:
      return `${way}: nothing gets worse.`;
  }
}

function turns({ id, from, to }: Worse): string {
  return from === null ? `${id} becomes ${to}` : `${id} turns from ${from} to ${to}`;
}
