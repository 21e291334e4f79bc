/** `swing`: one swing of the governing animal, its trace and results, and the relatch at a hold. */
import { parseQuantity } from "../quantity/quantity.ts";
import { type Computed, compute, type HoldRelatch, relatchAt } from "../review/compute.ts";
import { RESULTS, resultValues } from "../review/results.ts";
import { figureText, type Words, words } from "../review/words.ts";
import { traceCsv } from "../swing/csv.ts";
import { type SampledTrace, sampleTrace } from "../swing/trace.ts";
import { CallError, readCall, textOption } from "./call.ts";
import { relatchRecord } from "./command-review.ts";
import { readDoorFile, unitSystem } from "./door-input.ts";
import { columns } from "./table.ts";
import { writeTextFile } from "./write-file.ts";

/** Time between two rows of the trace, s: fifty to a hundred in the swing of an ordinary flap's half period. */
const INTERVAL = 0.005;

/** Runs `swing`. */
export function swingCommand(args: readonly string[]): number {
  const options = {
    hold: { type: "string" },
    csv: { type: "string" },
    json: { type: "boolean" },
    units: { type: "string" },
  } as const;
  const call = readCall(args, options, ["FILE"]);
  const { door, file } = readDoorFile(call.files[0]);
  const hold = holdOption(textOption(call, "hold"));
  const computed = compute(door);
  const { governing, trace, solenoid } = computed;
  const relatch =
    hold === null ? computed.relatch : relatchAt(door, computed, governing, trace, hold, solenoid);
  const samples = sampleTrace(trace, computed.system, governing.swing.endTime, INTERVAL);
  const csv = textOption(call, "csv");
  if (csv !== null) writeTextFile(csv, traceCsv(samples));
  const spoken = words(unitSystem(textOption(call, "units"), file));
  const json = call.options.json === true;
  process.stdout.write(
    json ? swingJson(computed, relatch, samples) : swingText(computed, relatch, spoken, csv),
  );
  return 0;
}

function holdOption(text: string | null): number | null {
  if (text === null) return null;
  const read = parseQuantity(text, "time");
  if (!read.ok) throw new CallError(`--hold: ${read.problem}; expected ${read.expected}; received "${text}"`);
  if (!(read.value > 0)) throw new CallError(`--hold must be above 0 s; received "${text}"`);
  return read.value;
}

const SWING_NAMES = RESULTS.filter((r) => /^(swing|energy|flap|latch)\./.test(r.name));

function swingJson(computed: Computed, relatch: HoldRelatch | null, samples: SampledTrace): string {
  const all = resultValues(computed);
  const report = {
    door: computed.door.name,
    animal: computed.governing.animal.name,
    status: computed.governing.swing.status,
    message: computed.governing.swing.message,
    results: Object.fromEntries(SWING_NAMES.map((r) => [r.name, all[r.name]])),
    relatch: relatch === null ? null : relatchRecord(relatch),
    trace: {
      time_s: [...samples.time],
      angle_rad: [...samples.angle],
      speed_rad_per_s: [...samples.speed],
    },
  };
  return `${JSON.stringify(report)}\n`;
}

function swingText(
  computed: Computed,
  relatch: HoldRelatch | null,
  spoken: Words,
  csv: string | null,
): string {
  const { governing } = computed;
  const rows = SWING_NAMES.map((r) => [
    `  ${figureText(r.value(computed), r.unit, spoken)}`,
    r.name,
    r.title,
  ]);
  const parts = [
    `${computed.door.name}: the flap after ${governing.animal.name}, ${governing.swing.message}`,
    columns(rows),
    `Turning points after let-go\n${turningPoints(computed, spoken)}`,
    relatchText(relatch, spoken),
  ];
  if (csv !== null) parts.push(`Trace written to ${csv}.`);
  return `${parts.join("\n\n")}\n`;
}

/** The first dozen turning points: what a person can see and a teacher can plot. */
function turningPoints(computed: Computed, spoken: Words): string {
  const { trace } = computed;
  const rows: string[][] = [];
  for (let i = 1; i < trace.count && rows.length < 12; i++) {
    if (trace.startSpeed(i) !== 0 || trace.times[i] === 0) continue;
    rows.push([`  ${spoken.time(trace.times[i])}`, spoken.angle(trace.startAngle(i))]);
  }
  return rows.length === 0 ? "  none" : columns(rows);
}

function relatchText(relatch: HoldRelatch | null, spoken: Words): string {
  if (relatch === null) return "No latch or no hold: nothing relatches.";
  const when = spoken.time(Math.abs(relatch.time));
  const side = relatch.time < 0 ? "before" : "after";
  return `The hold ends ${spoken.time(relatch.holdEnds)} after let-go: ${relatch.outcome}, ${when} ${side} let-go, flap at ${spoken.energy(relatch.energy)}.`;
}
