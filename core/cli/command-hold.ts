/** `hold`: the tolerance study and the hold it recommends; in parts for many machines, and joined again. */
import { counted } from "../quantity/format.ts";
import { countOnWorkers, StudyStopped } from "../study/channel.ts";
import { holdJson } from "../study/hold-json.ts";
import { type HoldStudy, holdStudy } from "../study/hold-study.ts";
import { joinParts, parsePart, partRange, readPart, writePart } from "../study/part.ts";
import { DEFAULT_SAMPLES, DEFAULT_SEED, requestFaults, type StudyRequest } from "../study/request.ts";
import { percent, seconds, settleWords } from "../study/study-words.ts";
import type { StudyTotal } from "../study/total.ts";
import { type Call, CallError, countOption, INTERRUPTED, readCallOf, textOption } from "./call.ts";
import { readDoorFile, textOf } from "./door-input.ts";
import { progressBar } from "./progress.ts";
import { startStudyWorker, workerCount } from "./study-worker.ts";
import { columns, wrapped } from "./table.ts";
import { writeTextFile } from "./write-file.ts";

/** Runs `hold`. */
export async function holdCommand(args: readonly string[]): Promise<number> {
  const options = {
    samples: { type: "string" },
    seed: { type: "string" },
    workers: { type: "string" },
    part: { type: "string" },
    out: { type: "string" },
    join: { type: "boolean" },
    json: { type: "boolean" },
  } as const;
  const call = readCallOf(args, options);
  if (call.options.join === true) return printed(joined(call.files), call);
  if (call.files.length !== 1)
    throw new CallError(`expected FILE; received ${call.files.join(" ") || "none"}`);
  const request = requested(call);
  try {
    return textOption(call, "part") === null
      ? printed(holdStudy(request, await countSamples(request, call, 0, request.samples)), call)
      : await countPart(request, call);
  } catch (error) {
    if (!(error instanceof StudyStopped)) throw error;
    process.stderr.write("swingstill: stopped; nothing was written\n");
    return INTERRUPTED;
  }
}

function requested(call: Call): StudyRequest {
  const { door } = readDoorFile(call.files[0]);
  const samples = countOption(call, "samples", 1, DEFAULT_SAMPLES);
  const request = { door, samples, seed: countOption(call, "seed", 0, DEFAULT_SEED) };
  const faults = requestFaults(request);
  if (faults.length > 0) throw new CallError(faults.map((fault) => fault.message).join("\n"));
  return request;
}

/** Counts samples on worker threads, with a bar on a terminal; Ctrl-C stops at once. */
export async function countSamples(
  request: StudyRequest,
  call: Call,
  from: number,
  to: number,
): Promise<StudyTotal> {
  const count = countOption(call, "workers", 1, workerCount(to - from));
  const workers = Array.from({ length: count }, () => startStudyWorker());
  const stop = new AbortController();
  const interrupt = () => stop.abort();
  process.once("SIGINT", interrupt);
  const bar = progressBar("hold");
  try {
    const watch = { onProgress: bar.update, signal: stop.signal };
    return await countOnWorkers(request, { from, to }, workers, watch);
  } finally {
    bar.end();
    process.off("SIGINT", interrupt);
  }
}

async function countPart(request: StudyRequest, call: Call): Promise<number> {
  const text = textOption(call, "part") ?? "";
  const read = parsePart(text);
  if (read === null) throw new CallError(`--part must be such as 2/4; received "${text}"`);
  const { from, to } = partRange(request.samples, read.part, read.parts);
  if (to <= from) {
    throw new CallError(
      `part ${read.part} of ${read.parts} has no samples: ${request.samples} are asked for in all; expected at least as many samples as parts`,
    );
  }
  const total = await countSamples(request, call, from, to);
  const out = textOption(call, "out") ?? `hold-part-${read.part}-of-${read.parts}.json`;
  writeTextFile(out, writePart(request, total.asTally({ from, to })));
  process.stdout.write(
    `${out} written: samples ${from} to ${to - 1} of ${request.samples}. Next: hold --join PARTS…\n`,
  );
  return 0;
}

function joined(files: readonly string[]): HoldStudy {
  if (files.length === 0) throw new CallError("--join expects the files of all parts; received none");
  const parts = files.map((file) => {
    const read = readPart(textOf(file), file);
    if (!read.ok) throw new CallError(read.error.message);
    return read.part;
  });
  const joint = joinParts(parts, files);
  if (!joint.ok) throw new CallError(joint.error.message);
  return joint.study;
}

function printed(study: HoldStudy, call: Call): number {
  const text = call.options.json === true ? `${JSON.stringify(holdJson(study))}\n` : holdText(study);
  process.stdout.write(text);
  return 0;
}

function holdText(study: HoldStudy): string {
  const blocks = [study.door, wrapped(answerSentence(study), 0), settleText(study), causesText(study)];
  for (const animal of study.animals)
    blocks.push(`${animal.name}: ${animalText(animal.recommended, animal.whyNone)}`);
  blocks.push(driversText(study), study.notes.map((note) => wrapped(note, 0)).join("\n"));
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function answerSentence(study: HoldStudy): string {
  const { recommended, probability, lowerBound, reliability, samples, seed } = study;
  const base = `(${counted(samples, "sample")}, seed ${seed})`;
  if (recommended === null || probability === null || lowerBound === null) {
    return `No hold is recommended at ${percent(reliability)} ${base}: ${study.whyNone ?? ""}`;
  }
  return `Set the hold to ${seconds(recommended)}: caught in ${percent(probability)} of passages, at least ${percent(lowerBound)} with 95 % confidence ${base}.`;
}

function animalText(recommended: number | null, whyNone: string | null): string {
  return recommended === null ? `none will do: ${whyNone ?? ""}` : `${seconds(recommended)}`;
}

function settleText({ settle, settleError, settleFrom }: HoldStudy): string {
  const rows = SHARES.map((share) => {
    const { time, error } = settleWords(settle[share], settleError[share]);
    return [`  ${share} %`, `${time} ${error}`.trim()];
  });
  return `Settled after let-go, share of passages\n${columns(rows)}\n${wrapped(`From ${settleFrom}; ± one standard error.`, 0)}`;
}

const SHARES = ["5", "50", "95", "99"] as const;

function causesText({ causes, causesAt }: HoldStudy): string {
  const rows = Object.entries(causes).flatMap(([cause, share]) =>
    share > 0 ? [[`  ${percent(share)}`, cause]] : [],
  );
  return rows.length === 0 ? "" : `Not caught at a hold of ${seconds(causesAt)}\n${columns(rows)}`;
}

function driversText({ drivers }: HoldStudy): string {
  if (drivers.length === 0) return "";
  const rows = drivers
    .slice(0, 10)
    .map(({ key, value, error, alone }) => [
      `  ${indexWords(value, error)}`,
      alone === null ? "" : indexWords(alone.value, alone.error),
      key,
    ]);
  const [{ measure, alone }] = drivers;
  const from = `In all: ${measure}. By itself: ${alone?.measure ?? "not estimated"}. ± one standard error.`;
  const head = ["  in all", "by itself", ""];
  return `What drives the settle time\n${columns([head, ...rows])}\n${wrapped(from, 0)}`;
}

function indexWords(value: number, error: number | null): string {
  return error === null ? value.toFixed(3) : `${value.toFixed(3)} ± ${error.toFixed(3)}`;
}
