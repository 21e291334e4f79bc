/** The computed door as tables and data for other programs: SI units, each in its column's head or beside its value. */
import { RESULTS, resultValues } from "../review/results.ts";
import { holdJson } from "../study/hold-json.ts";
import type { HoldStudy } from "../study/hold-study.ts";
import { sampleTrace } from "../swing/trace.ts";
import type { SheetInput } from "./sheet-input.ts";

/** Time between two rows of a trace, s. */
const INTERVAL = 0.005;

/** A cell of comma-separated text (RFC 4180). */
function cell(value: string | number | null): string {
  if (value === null) return "";
  const text = String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function csv(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return `${[head, ...rows].map((row) => row.map(cell).join(",")).join("\n")}\n`;
}

/** The governing swing: the columns of `swing --csv`. */
export function swingCsv({ computed }: SheetInput): string {
  const { time, angle, speed } = sampled(computed);
  const rows = Array.from(time, (t, i) => [t, angle[i], speed[i]]);
  return csv(["time_s", "angle_rad", "speed_rad_per_s"], rows);
}

function sampled(computed: SheetInput["computed"]) {
  return sampleTrace(computed.trace, computed.system, computed.governing.swing.endTime, INTERVAL);
}

/** Every result; an empty value does not exist for the door. */
export function resultsCsv({ computed }: SheetInput): string {
  const rows = RESULTS.map((r) => [r.name, r.value(computed), r.unit, r.title]);
  return csv(["name", "value", "unit", "what it is"], rows);
}

/** Results, findings, relatch and trace in one: what `review --json`, `swing --json` and `hold --json` give. */
export function dataJson(input: SheetInput): string {
  const { computed, findings, study, door } = input;
  const { relatch } = computed;
  const { time, angle, speed } = sampled(computed);
  const report = {
    door: door.name,
    results: resultValues(computed),
    findings,
    relatch:
      relatch === null
        ? null
        : {
            holdEnds: relatch.holdEnds,
            outcome: relatch.outcome,
            time: relatch.time,
            energy: relatch.energy,
          },
    trace: { time_s: [...time], angle_rad: [...angle], speed_rad_per_s: [...speed] },
    study: study === null ? null : holdJson(study),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** The study's curve: the share of doors caught at a nominal setting, and its lower bound. */
export function studyCsv(study: HoldStudy): string {
  return csv(["setting_s", "probability_1", "lower95_1"], study.curve as unknown as number[][]);
}
