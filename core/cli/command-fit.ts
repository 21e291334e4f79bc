/** `fit`: hinge, seal and air values from a measured swing, with what is uncertain about them. */
import { writeDoor } from "../door/index.ts";
import { parseQuantity } from "../quantity/quantity.ts";
import { fitSwing } from "../study/fit/fit.ts";
import type { FitDone, Measured } from "../study/fit/fit-types.ts";
import { readMeasured } from "../study/fit/measured.ts";
import { fitEdits, withFitEdits } from "../study/fit/write-back.ts";
import { type Call, CallError, readCallOf, textOption } from "./call.ts";
import { type DoorInput, readDoorFile, textOf } from "./door-input.ts";
import { columns, wrapped } from "./table.ts";
import { writeTextFile } from "./write-file.ts";

/**
 * Runs `fit`: of a measured file, or of what was counted (`--count`). Data that tell nothing of the door are a wrong file: what
 * they lack is the complaint.
 */
export function fitCommand(args: readonly string[]): number {
  const options = {
    count: { type: "boolean" },
    angle: { type: "string" },
    passes: { type: "string" },
    "passes-until-still": { type: "string" },
    rest: { type: "string" },
    settle: { type: "string" },
    write: { type: "string" },
    tolerances: { type: "boolean" },
    json: { type: "boolean" },
  } as const;
  const call = readCallOf(args, options);
  const wanted = call.options.count === true ? ["FILE"] : ["FILE", "MEASURED.csv"];
  if (call.files.length !== wanted.length) {
    throw new CallError(`expected ${wanted.join(" ")}; received ${call.files.join(" ") || "none"}`);
  }
  const input = readDoorFile(call.files[0]);
  const fit = fitSwing(input.door, measuredOf(call));
  if (!fit.ok) throw new CallError(`${call.files[1] ?? "--count"}: ${fit.says}`);
  const copy = textOption(call, "write");
  const edits = fitEdits(fit, input.file, { tolerances: call.options.tolerances === true });
  if (copy !== null) writeTextFile(copy, writeDoor(withFitEdits(input.file, edits)));
  process.stdout.write(call.options.json === true ? fitJson(fit, edits) : fitText(fit, edits, input, copy));
  return 0;
}

function measuredOf(call: Call): Measured {
  if (call.options.count === true) return countedSwing(call);
  const read = readMeasured(textOf(call.files[1]));
  if (read.ok) return read.measured;
  throw new CallError(`${call.files[1]}:\n${read.errors.map((fault) => `  ${fault.message}`).join("\n")}`);
}

/** Only "let go at 60°, 14 passes, still after 11.2 s": passes as the bench card counts them, or until still. */
function countedSwing(call: Call): Measured {
  const angle = quantityOption(call, "angle", "angle");
  if (angle === null) throw new CallError('--count needs --angle, such as --angle "60 deg"');
  const passes = passesOption(call, "passes");
  const passesUntilStill = passesOption(call, "passes-until-still");
  const rest = quantityOption(call, "rest", "time");
  const settle = quantityOption(call, "settle", "time");
  const count = {
    releaseAngle: angle,
    ...(passes === null ? {} : { passes }),
    ...(passesUntilStill === null ? {} : { passesUntilStill }),
    ...(rest === null ? {} : { restTime: rest }),
    ...(settle === null ? {} : { settleTime: settle }),
  };
  return { kind: "count", count };
}

function passesOption(call: Call, name: string): number | null {
  const text = textOption(call, name);
  if (text === null) return null;
  if (!/^\d{1,6}$/.test(text)) throw new CallError(`--${name} must be a whole number; received "${text}"`);
  return Number(text);
}

function quantityOption(call: Call, name: string, dimension: "angle" | "time"): number | null {
  const text = textOption(call, name);
  if (text === null) return null;
  const read = parseQuantity(text, dimension);
  if (!read.ok)
    throw new CallError(`--${name}: ${read.problem}; expected ${read.expected}; received "${text}"`);
  return read.value;
}

function fitJson(fit: FitDone, edits: readonly { path: string; text: string }[]): string {
  return `${JSON.stringify({ ...fit, edits }, null, 2)}\n`;
}

function fitText(
  fit: FitDone,
  edits: readonly { path: string; text: string }[],
  input: DoorInput,
  copy: string | null,
): string {
  const blocks = [input.door.name, fit.says.map((line) => wrapped(line, 0)).join("\n"), correlationText(fit)];
  const rows = edits.map(({ path, text }) => [`  ${path}`, text]);
  blocks.push(`For the door file\n${columns(rows)}`);
  if (copy !== null) blocks.push(`${copy} written: a copy of the door file with these values.`);
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

/** Correlations weaker than this are left to --json. */
const WORTH_SAYING = 0.7;

function correlationText({ correlations }: FitDone): string {
  const strong = correlations.filter(({ value }) => Math.abs(value) >= WORTH_SAYING);
  const rows = strong.map(({ a, b, value }) => [`  ${value.toFixed(2)}`, `${a} with ${b}`]);
  return rows.length === 0 ? "" : `Strongly correlated\n${columns(rows)}`;
}
