/** The pictures in sentences, for those who do not see them. */
import type { DoorView, EnergyColumns } from "../state/view.ts";
import type { TableName } from "./tables.ts";

const SINKS: readonly (readonly [keyof EnergyColumns, string])[] = [
  ["hinge", "the hinge's dry friction"],
  ["viscous", "viscous damping"],
  ["seal", "the seal"],
  ["air", "the air"],
  ["stops", "the stops"],
];

export function summaryOf(view: DoorView, name: TableName): string {
  if (name === "energy") return energySummary(view.swing.energy);
  if (name === "torque") return torqueSummary(view);
  return swingSummary(view);
}

function swingSummary({ replay, results, swing }: DoorView): string {
  const { settled, rest, letGo } = replay.marks;
  const passes = results["swing.centrePasses"]?.value ?? null;
  const from = Math.abs(((swing.angle[0] ?? 0) * 180) / Math.PI).toFixed(0);
  return [
    `Let go at ${from} degrees`,
    passes === null ? "" : `, the flap passes the slot ${passes} times`,
    settled === null ? ", and never settles inside it" : `, settles after ${(settled - letGo).toFixed(1)} s`,
    rest === null ? "." : ` and rests after ${(rest - letGo).toFixed(1)} s.`,
  ].join("");
}

/** The sinks, greatest first. */
function energySummary(energy: EnergyColumns): string {
  const last = energy.left.length - 1;
  if (last < 0 || energy.initial === 0) return "The flap has no energy to lose.";
  const shares = SINKS.map(([key, word]) => {
    const column = energy[key] as Float64Array;
    return { word, share: column[last] / energy.initial };
  });
  const words = shares
    .filter(({ share }) => Math.abs(share) >= 0.005)
    .sort((a, b) => b.share - a.share)
    .map(({ word, share }) => `${word} ${Math.round(share * 100)} %`);
  const start = `Of ${(energy.initial * 1000).toFixed(0)} mJ at let-go`;
  return words.length === 0 ? `${start} nothing is lost.` : `${start}, these take: ${words.join(", ")}.`;
}

function torqueSummary({ results, torques }: DoorView): string {
  const peak = results["magnets.peakTorque"]?.value ?? null;
  const friction = Math.max(0, ...torques.friction);
  const magnets =
    peak === null
      ? "There are no magnets."
      : `The magnets pull back with ${(peak * 1000).toFixed(1)} mN m at most.`;
  return `${magnets} Dry friction can hold ${(friction * 1000).toFixed(1)} mN m.`;
}
