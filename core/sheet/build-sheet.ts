/** The build sheet: the door drawn, what to buy, what to set, what to expect, what was found and what was assumed. */

import { fileEntry } from "../door/file.ts";
import { numericPaths } from "../door/numeric-paths.ts";
import { getValue } from "../door/path.ts";
import { fieldAt, isNumeric } from "../door/schema.ts";
import { worstFirst } from "../review/findings.ts";
import { studyInputs } from "../study/inputs.ts";
import { doorViews } from "./door-views.ts";
import { resultRow } from "./figures.ts";
import { latchDrawing } from "./latch-section.ts";
import { type Block, heading, list, type Page, paragraph, textRoom } from "./page.ts";
import type { Paper } from "./paper.ts";
import { partsList } from "./parts-list.ts";
import { planNotes } from "./plan-notes.ts";
import { settings } from "./settings.ts";
import type { SheetInput } from "./sheet-input.ts";

/** Shares of a page's height for the door and for the latch: both on the first page. */
const VIEW_SHARE = 0.44;
const LATCH_SHARE = 0.3;

/** What a builder expects of the finished door, by results' names. */
const EXPECTED = [
  "swing.settleTime",
  "swing.restTime",
  "swing.centrePasses",
  "swing.deadBand",
  "latch.captureAngle",
  "latch.boltRiseTime",
  "push.force",
  "push.limit",
  "wind.gustSpeed",
  "solenoid.resistance",
  "solenoid.current",
  "solenoid.pullInVoltage",
  "solenoid.holdTemperature",
  "solenoid.continuousTemperature",
  "supply.current",
  "regulator.temperature",
  "passage.arrivalTime",
  "passage.passTime",
  "timer.nominal",
  "hold.required",
] as const;

/** What the model leaves out (model page, "known limits"). */
const LIMITS = [
  "The flap is rigid, its hinge without play; the bolt's spring is the same over the whole stroke.",
  "The air that moves with the flap is not counted (2 to 3 % of inertia); magnets do not feel steel nearby.",
  "Being caught in passing by a fast flap is a blow, not a latching; the energy is in the review.",
  "Eddy currents count only as the damper given.",
];

export function buildSheet(input: SheetInput, paper: Paper): Page {
  const { door } = input;
  return {
    title: "Build sheet",
    door: door.name,
    blocks: [
      paragraph(input.verdict, "lead"),
      ...(door.notes === "" ? [] : [paragraph(door.notes, "note")]),
      ...pictures(input, paper),
      ...beforeCutting(input),
      heading("Parts"),
      {
        kind: "table",
        columns: [
          { title: "qty", share: 1.3, align: "right" },
          { title: "part", share: 6 },
          { title: "what matters", share: 18 },
        ],
        rows: partsList(input).map(({ count, name, values }) => [count, name, values]),
      },
      heading("Settings"),
      {
        kind: "table",
        columns: [
          { title: "setting", share: 6 },
          { title: "to", share: 5 },
          { title: "how", share: 14 },
        ],
        rows: settings(input).map(({ name, value, how }) => [name, value, how]),
      },
      heading("What to expect"),
      expected(input),
      heading("Findings"),
      paragraph(
        "Judged from the figures above. “fails” stops the build; “care” is to be read; “fine” is as it should be.",
        "note",
      ),
      {
        kind: "verdicts",
        items: worstFirst(input.findings).map(({ status, message }) => ({ status, text: message })),
      },
      ...assumed(input),
    ],
  };
}

function beforeCutting({ plan, sizes }: SheetInput): Block[] {
  const notes = planNotes(plan, sizes);
  return notes.length === 0 ? [] : [heading("Before cutting"), list(notes)];
}

function pictures(input: SheetInput, paper: Paper): Block[] {
  const { computed, plan, sizes } = input;
  const room = textRoom(paper);
  const views = doorViews(computed, plan, sizes, { width: room.width, height: VIEW_SHARE * room.height });
  const blocks: Block[] = [
    {
      kind: "picture",
      drawing: views,
      caption: `The door, ${sizes.note}. Red is the flap, violet a magnet, green the latch. The wall's depth is drawn, not known.`,
    },
  ];
  if (plan.bolt !== null) {
    blocks.push({
      kind: "picture",
      drawing: latchDrawing(plan, sizes, { width: room.width, height: LATCH_SHARE * room.height }),
      caption: `The latch cut open along the swing, enlarged; outdoors is the right side. Dashed: the bolt out in its slot, and the depth from which it holds.`,
    });
  }
  return blocks;
}

function expected(input: SheetInput): Block {
  const rows = EXPECTED.map((name) => resultRow(input.computed, name, input.words));
  const { relatch } = input.computed;
  const latched =
    relatch === null
      ? []
      : [
          [
            `Relatch with the timer at ${input.words.time(input.computed.timer?.nominal ?? 0)}`,
            relatch.outcome,
          ],
        ];
  return {
    kind: "table",
    columns: [
      { title: "", share: 15 },
      { title: "value", share: 7 },
    ],
    rows: [...rows, ...latched],
  };
}

function assumed(input: SheetInput): Block[] {
  const defaults = defaultRows(input);
  const spreads = spreadRows(input);
  const blocks: Block[] = [heading("What was assumed")];
  if (defaults.length > 0) {
    blocks.push(paragraph("The file says nothing of these, so the usual value was taken:"), {
      kind: "table",
      columns: [
        { title: "key", share: 8 },
        { title: "taken", share: 5 },
        { title: "what it is", share: 14 },
      ],
      rows: defaults,
    });
  }
  if (spreads.length > 0) {
    blocks.push(
      paragraph(
        "How far the finished door may differ from the file, for the limits on the bench card and the study:",
      ),
      {
        kind: "table",
        columns: [
          { title: "key", share: 8 },
          { title: "from … to", share: 8 },
          { title: "why", share: 11 },
        ],
        rows: spreads,
      },
    );
  }
  return [...blocks, paragraph("What the computation leaves out:"), list(LIMITS)];
}

const DARLINGTON_ONLY = new Set(
  ["dropVoltage", "currentGain", "baseEmitterVoltage", "baseResistor"].map((key) => `driver.${key}`),
);

/** Numbers of the door that are not in its file, with what they are. */
function defaultRows({ door, file, words: w }: SheetInput): string[][] {
  const entries = (path: string) =>
    path === "animals" ? door.animals.length : path === "flap.extraMasses" ? door.flap.extraMasses.length : 0;
  return numericPaths(entries).flatMap((path) => {
    const value = getValue(door, path);
    const field = fieldAt(path);
    if (value === null || !isNumeric(field) || fileEntry(file, path) !== undefined) return [];
    if (door.driver?.kind === "mosfet" && DARLINGTON_ONLY.has(path)) return [];
    const text = field.kind === "number" ? w.number(value) : w.of(value, field.dimension);
    return [[path, text, field.doc]];
  });
}

/** The study's inputs at their ± 2 σ points or ends. */
function spreadRows({ door, words: w }: SheetInput): string[][] {
  return studyInputs(door).inputs.map(({ key, spread, target, reason }) => {
    const field = fieldAt(key);
    const factor = target === "timer" || target === "let-go share";
    const write = (value: number) =>
      factor
        ? w.ratio(value)
        : isNumeric(field) && field.kind === "quantity"
          ? w.of(value, field.dimension)
          : w.number(value);
    const range = `${write(spread.low)} … ${write(spread.high)}${factor ? " of nominal" : ""}`;
    return [key, range.replaceAll(/-(?=\d)/g, "−"), reason];
  });
}
