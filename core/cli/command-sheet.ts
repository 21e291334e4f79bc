/** `sheet`: the door on paper and as files, written to a folder. */
import { existsSync, mkdirSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import type { Door } from "../door/door.ts";
import { PAPERS, type PaperName } from "../sheet/paper.ts";
import { sheetInput } from "../sheet/sheet-input.ts";
import { type SheetFile, sheetSet, zipFile } from "../sheet/sheet-set.ts";
import { symbolsFor } from "../sheet/symbols-for.ts";
import type { SymbolSet } from "../sheet/wiring.ts";
import { StudyStopped } from "../study/channel.ts";
import { type HoldStudy, holdStudy } from "../study/hold-study.ts";
import { DEFAULT_SEED, requestFaults } from "../study/request.ts";
import { type Call, CallError, countOption, readCall, textOption } from "./call.ts";
import { countSamples } from "./command-hold.ts";
import { readDoorFile, unitSystem } from "./door-input.ts";
import { columns } from "./table.ts";
import { writeBytesFile } from "./write-file.ts";

const FAILED = 1;
/** What a shell reports for a program that Ctrl-C ended. */
const INTERRUPTED = 130;

/** Runs `sheet`; the exit code is 1 where a finding fails, after the set is written. */
export async function sheetCommand(args: readonly string[]): Promise<number> {
  try {
    return await writeSheets(args);
  } catch (error) {
    if (!(error instanceof StudyStopped)) throw error;
    process.stderr.write("swingstill: stopped; nothing was written\n");
    return INTERRUPTED;
  }
}

async function writeSheets(args: readonly string[]): Promise<number> {
  const options = {
    out: { type: "string" },
    units: { type: "string" },
    paper: { type: "string" },
    symbols: { type: "string" },
    samples: { type: "string" },
    seed: { type: "string" },
    workers: { type: "string" },
    zip: { type: "boolean" },
  } as const;
  const call = readCall(args, options, ["FILE"]);
  const folder = textOption(call, "out");
  if (folder === null || folder === "")
    throw new CallError("--out must name the folder to write to; received none");
  const paper = PAPERS[paperName(textOption(call, "paper"))];
  const asked = symbolSet(textOption(call, "symbols"));
  const samples = countOption(call, "samples", 1, 0);
  const seed = countOption(call, "seed", 0, DEFAULT_SEED);
  const { door, file } = readDoorFile(call.files[0]);
  const system = unitSystem(textOption(call, "units"), file);
  const study = samples === 0 ? null : await studyOf(door, samples, seed, call);
  const input = sheetInput(door, file, system, study);
  const files = await sheetSet(input, paper, asked ?? symbolsFor(system));
  if (call.options.zip === true) files.push(packed(files));
  writeAll(folder, files);
  process.stdout.write(
    `${door.name}: written to ${folder}\n${columns(files.map((one) => [`  ${one.name}`, one.what]))}\n`,
  );
  return input.findings.some(({ status }) => status === "fail") ? FAILED : 0;
}

/** `null` leaves the choice to the units. */
function symbolSet(text: string | null): SymbolSet | null {
  if (text === null || text === "iec" || text === "ieee") return text;
  throw new CallError(`--symbols must be iec or ieee; received "${text}"`);
}

function paperName(text: string | null): PaperName {
  if (text === null) return "a4";
  const name = text.toLowerCase();
  if (name === "a4" || name === "letter") return name;
  throw new CallError(`--paper must be a4 or letter; received "${text}"`);
}

/** The study on worker threads, with its bar on a terminal. */
async function studyOf(door: Door, samples: number, seed: number, call: Call): Promise<HoldStudy> {
  const request = { door, samples, seed };
  const faults = requestFaults(request);
  if (faults.length > 0) throw new CallError(faults.map(({ message }) => message).join("\n"));
  return holdStudy(request, await countSamples(request, call, 0, samples));
}

function packed(files: readonly SheetFile[]): SheetFile {
  const bytes = zipFile("door", files);
  return { name: "door.zip", type: "application/zip", bytes, what: "all of these in one" };
}

/** File by file, each whole or not at all. */
function writeAll(folder: string, files: readonly SheetFile[]): void {
  try {
    makeFolder(resolve(folder));
  } catch (error) {
    throw new CallError(`${folder} can't be made: ${error instanceof Error ? error.message : String(error)}`);
  }
  for (const { name, bytes } of files) writeBytesFile(join(folder, name), bytes);
}

/** A folder and those above it, one by one: Node's own recursive way never ends where a file system takes no folders. */
function makeFolder(folder: string): void {
  if (existsSync(folder) && statSync(folder).isDirectory()) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder));
  mkdirSync(folder);
}
