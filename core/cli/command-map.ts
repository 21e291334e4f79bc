/** `map`: a result over one or two inputs, as a table or a CSV file. */
import { studyView } from "../review/study-view.ts";
import { entryText, figureText, words } from "../review/words.ts";
import { doorMap } from "../study/map.ts";
import { axisValue, type MapAxis, parseAxis } from "../study/map-axis.ts";
import { addPoint, emptyMapTable, type MapTable, mapCsv } from "../study/map-table.ts";
import { withSampled } from "../study/sampled-figures.ts";
import { type Call, CallError, INTERRUPTED, interruptible, readCall, textOption } from "./call.ts";
import { type DoorInput, readDoorFile, unitSystem } from "./door-input.ts";
import { progressBar } from "./progress.ts";
import { columns } from "./table.ts";
import { writeTextFile } from "./write-file.ts";

/** Runs `map`. */
export async function mapCommand(args: readonly string[]): Promise<number> {
  const options = {
    x: { type: "string" },
    y: { type: "string" },
    of: { type: "string" },
    csv: { type: "string" },
    json: { type: "boolean" },
    units: { type: "string" },
  } as const;
  const call = readCall(args, options, ["FILE"]);
  const input = readDoorFile(call.files[0]);
  const spoken = words(unitSystem(textOption(call, "units"), input.file));
  const table = await mapTable(call, input, spoken);
  if (table === null) return INTERRUPTED;
  const csv = textOption(call, "csv");
  if (csv !== null) writeTextFile(csv, mapCsv(table));
  process.stdout.write(mapOutput(table, call, spoken, csv));
  return 0;
}

type Spoken = ReturnType<typeof words>;

/** Computes the whole map; `null` where Ctrl-C stopped it. */
async function mapTable(call: Call, input: DoorInput, spoken: Spoken): Promise<MapTable | null> {
  const x = axisOption(call, "x", input);
  if (x === null) throw new CallError('--x is missing: a range such as --x "magnets.gap=2 mm..8 mm:13"');
  const of = textOption(call, "of");
  if (of === null)
    throw new CallError("--of is missing: the name of a result, such as --of swing.settleTime");
  const request = { x, y: axisOption(call, "y", input), of };
  const made = doorMap(input.file, input.door, request, withSampled(studyView(spoken)));
  if (!made.ok) throw new CallError(made.errors.map((fault) => fault.message).join("\n"));
  const table = emptyMapTable(request, made.map.subject);
  const bar = progressBar("map");
  const points = made.map.points();
  const size = made.map.order.length;
  let done = 0;
  const whole = await interruptible(() => {
    const next = points.next();
    if (next.done === true) return true;
    addPoint(table, next.value);
    bar.update(++done, size);
    return done === size;
  });
  bar.end();
  return whole ? table : null;
}

function axisOption(call: Call, name: string, input: DoorInput): MapAxis | null {
  const text = textOption(call, name);
  if (text === null) return null;
  const read = parseAxis(text, input.door);
  if (!read.ok) throw new CallError(`--${name}: ${read.error.message}`);
  return read.axis;
}

function mapOutput(table: MapTable, call: Call, spoken: Spoken, csv: string | null): string {
  if (call.options.json === true) return `${JSON.stringify(mapRecord(table))}\n`;
  return csv === null ? `${mapText(table, spoken)}\n` : `${csv} written: ${table.values.length} points.\n`;
}

function axisValues(axis: MapAxis): number[] {
  return Array.from({ length: axis.count }, (_, i) => axisValue(axis, i));
}

function mapRecord({ request, subject, values }: MapTable) {
  const { x, y } = request;
  return {
    of: subject.name,
    unit: subject.unit,
    x: { key: x.key, values: axisValues(x) },
    y: y === null ? null : { key: y.key, values: axisValues(y) },
    values: values.map((value) => value ?? null),
  };
}

/** The map as text: x down the side, y across the top. */
function mapText({ request, subject, values }: MapTable, spoken: Spoken): string {
  const { x, y } = request;
  const label = (axis: MapAxis, value: number) => entryText(axis.key, value, spoken.system);
  const cell = (value: MapTable["values"][number]) =>
    typeof value === "string" ? value : figureText(value ?? null, subject.unit, spoken);
  const across = y === null ? [] : axisValues(y);
  const head = [`  ${x.key}`, ...(y === null ? [subject.name] : across.map((value) => label(y, value)))];
  const rows = axisValues(x).map((value, i) => {
    const cells = (y === null ? [0] : across.map((_, j) => j)).map((j) => cell(values[j * x.count + i]));
    return [`  ${label(x, value)}`, ...cells];
  });
  const title = y === null ? subject.title : `${subject.title}; across: ${y.key}`;
  return `${title}\n${columns([head, ...rows])}`;
}
