/** `review`: all of the door, for a person or as JSON; `--explain` one figure. */

import type { DoorFile } from "../door/index.ts";
import { type Computed, compute } from "../review/compute.ts";
import { explain } from "../review/explain.ts";
import type { Finding } from "../review/finding.ts";
import { findings, verdict, worstFirst } from "../review/findings.ts";
import { RESULTS, resultNamed, resultValues } from "../review/results.ts";
import { figureText, type Words, words } from "../review/words.ts";
import { CallError, readCall, textOption } from "./call.ts";
import { readDoorFile, unitSystem } from "./door-input.ts";
import { columns, STATUS_WORD, wrapped } from "./table.ts";

const FAILED = 1;

/** Runs `review`; the exit code is 1 where a finding fails. */
export function reviewCommand(args: readonly string[]): number {
  const options = {
    json: { type: "boolean" },
    explain: { type: "string" },
    units: { type: "string" },
  } as const;
  const call = readCall(args, options, ["FILE"]);
  const { door, file } = readDoorFile(call.files[0]);
  const spoken = words(unitSystem(textOption(call, "units"), file));
  const asked = textOption(call, "explain");
  if (asked !== null) return explainResult(compute(door), asked, spoken, file, call.options.json === true);
  const computed = compute(door);
  const found = findings(computed, spoken);
  const text = call.options.json === true ? reviewJson(computed, found) : reviewText(computed, found, spoken);
  process.stdout.write(text);
  return found.some((finding) => finding.status === "fail") ? FAILED : 0;
}

/** The contract's JSON of a review; suggestions and the part a finding leads to are added to it. */
function reviewJson(computed: Computed, found: readonly Finding[]): string {
  const { relatch } = computed;
  const report = {
    door: computed.door.name,
    results: resultValues(computed),
    findings: found,
    relatch: relatch === null ? null : relatchRecord(relatch),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** The relatch as the contract writes it. */
export function relatchRecord(relatch: NonNullable<Computed["relatch"]>) {
  const { holdEnds, outcome, time, energy } = relatch;
  return { holdEnds, outcome, time, energy };
}

function reviewText(computed: Computed, found: readonly Finding[], spoken: Words): string {
  const parts = [
    computed.door.name,
    wrapped(verdict(found, computed, spoken), 0),
    worstFirst(found).map(findingText).join("\n"),
    figuresText(computed, spoken),
    "review --explain NAME shows how a figure comes about.",
  ];
  return `${parts.join("\n\n")}\n`;
}

function findingText({ status, message, suggestions }: Finding): string {
  const costs = suggestions.flatMap((way) => (way.cost === null ? [] : [`${way.label}: ${way.cost}.`]));
  const lines = [message, ...costs].map((line) => wrapped(line, 6));
  return `${STATUS_WORD[status].padEnd(4)}  ${lines.join("\n      ")}`;
}

function figuresText(computed: Computed, spoken: Words): string {
  const rows = RESULTS.map((r) => [`  ${figureText(r.value(computed), r.unit, spoken)}`, r.name, r.title]);
  return `Figures\n${columns(rows)}`;
}

function explainResult(
  computed: Computed,
  name: string,
  spoken: Words,
  file: DoorFile,
  json: boolean,
): number {
  if (resultNamed(name) === undefined) {
    const near = RESULTS.map((r) => r.name).filter((n) => n.startsWith(name.split(".")[0]));
    const hint = near.length > 0 ? near : RESULTS.map((r) => r.name);
    throw new CallError(
      `--explain must be the name of a result; received "${name}". There are: ${hint.join(", ")}`,
    );
  }
  const told = explain(computed, name, spoken, file);
  process.stdout.write(json ? `${JSON.stringify(told, null, 2)}\n` : explanationText(told));
  return 0;
}

function explanationText(told: ReturnType<typeof explain>): string {
  const rows = told.inputs.map((input) => [`  ${input.name}`, input.text]);
  const head = `${told.name} = ${told.text}\n${told.title}\n\n  ${wrapped(told.formula, 2)}`;
  return `${head}\n\nfrom\n${columns(rows)}\n\nsource: ${told.source}\n`;
}
