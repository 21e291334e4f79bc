/** `best`: over some inputs, the least hold that keeps every finding; a local search from many starts that says so. */
import { studyView } from "../review/study-view.ts";
import { entryText, type Words, words } from "../review/words.ts";
import { type BestFound, type BestResult, searchBest } from "../study/best.ts";
import type { Binding } from "../study/best-binding.ts";
import { type MapAxis, parseAxis } from "../study/map-axis.ts";
import { type Call, CallError, INTERRUPTED, interruptible, readCall } from "./call.ts";
import { type DoorInput, readDoorFile, unitSystem } from "./door-input.ts";
import { columns, wrapped } from "./table.ts";

/** A range needs a number of values, which a search does not: it moves freely. The two ends suit whole numbers too. */
const ENDS = 2;

/** Runs `best`; exit code 1 where no place keeps every finding. */
export async function bestCommand(args: readonly string[]): Promise<number> {
  const options = {
    over: { type: "string", multiple: true },
    json: { type: "boolean" },
    units: { type: "string" },
  } as const;
  const call = readCall(args, options, ["FILE"]);
  const input = readDoorFile(call.files[0]);
  const units = call.options.units;
  const spoken = words(unitSystem(typeof units === "string" ? units : null, input.file));
  const result = await searched(input, ranges(call, input), spoken);
  if (result === null) return INTERRUPTED;
  if (!result.ok) throw new CallError(result.errors.map((fault) => fault.message).join("\n"));
  process.stdout.write(
    call.options.json === true ? `${JSON.stringify(result, null, 2)}\n` : bestText(result, spoken),
  );
  return result.kept ? 0 : 1;
}

/** "KEY=FROM..TO", the number of values left out. */
function ranges(call: Call, input: DoorInput): MapAxis[] {
  const { over } = call.options;
  if (!Array.isArray(over))
    throw new CallError('--over is missing: a range such as --over "magnets.gap=3 mm..8 mm"');
  return over.map((text) => {
    const count = /:\s*\d+\s*$/.exec(String(text));
    if (count !== null)
      throw new CallError(
        `--over: given "${text}", expected a range without a number of values: leave out "${count[0].trim()}"`,
      );
    const read = parseAxis(`${text}:${ENDS}`, input.door);
    if (!read.ok) throw new CallError(`--over: ${read.error.message}`);
    return read.axis;
  });
}

async function searched(
  input: DoorInput,
  over: readonly MapAxis[],
  spoken: Words,
): Promise<BestResult | null> {
  const search = searchBest(input.file, input.door, { over }, studyView(spoken));
  let result: BestResult | null = null;
  await interruptible(() => {
    const step = search.next();
    if (step.done === true) result = step.value;
    return step.done === true;
  });
  return result;
}

function bestText(found: BestFound, spoken: Words): string {
  const { inputs, hold, holdBefore, starts, agreeing, tried, bars, newCautions } = found;
  const time = (value: number | null) => (value === null ? "none" : spoken.time(value));
  const head = found.kept
    ? `The least hold found that keeps every finding: ${time(hold)} required, where the door as it stands requires ${time(holdBefore)}.`
    : `No place found keeps every finding; nearest is one that fails ${bars.join(", ")}.`;
  const trust = `Best of ${starts} local searches, ${agreeing} of which ended there (${tried} doors tried): not proven to be the least there is.`;
  const rows = inputs.map(({ key, value }) => [`  ${key}`, entryText(key, value, spoken.system)]);
  const blocks = [wrapped(head, 0), columns(rows), `What stops it\n${bindingText(found.binding, spoken)}`];
  if (newCautions.length > 0)
    blocks.push(`Cautions there that the door did not have: ${newCautions.join(", ")}.`);
  return `${[...blocks, wrapped(trust, 0)].join("\n\n")}\n`;
}

function bindingText(bindings: readonly Binding[], spoken: Words): string {
  const rows = bindings.map(({ key, direction, stops, worse, hold }) => {
    const why =
      stops === "findings"
        ? worse.map(({ id, to }) => `${id} becomes ${to ?? "absent"}`).join(", ")
        : stops === "longer hold" && hold !== null
          ? `the hold grows to ${spoken.time(hold)}`
          : stops;
    return [`  ${key}`, direction, why];
  });
  return columns(rows);
}
