/** The bench test card: what to measure on the finished door, what to expect, within which limits, and room to write. */

import { temperatureAfter } from "../parts/coil-heating.ts";
import { HEATING_TIME } from "../parts/coil-trial.ts";
import {
  CLASS_LIMIT,
  heatedCoil,
  ratedResistance,
  SUPPLY_LOW_END,
  TOUCH_CAUTION,
} from "../parts/solenoid.ts";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import type { UnitSystem } from "../quantity/format.ts";
import type { BenchLimits, Spread } from "./bench-limits.ts";
import { type Block, checklist, heading, type Page, paragraph } from "./page.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";

/** A person's stopwatch is this wrong, s (assumption). */
const STOPWATCH = 0.3;
/** Newtons in a pound-force and in an ounce-force: 0.45359237 kg × 9.80665 m/s², and a sixteenth. */
const POUND_FORCE = 0.45359237 * STANDARD_GRAVITY;
const OUNCE_FORCE = POUND_FORCE / 16;

interface Test {
  readonly what: string;
  readonly expect: string;
  readonly limits: string;
}

export function benchCard(input: SheetInput): Page {
  const { door } = input;
  const blocks: Block[] = [
    paragraph(basis(input), "note"),
    {
      kind: "fields",
      perRow: 3,
      labels: [
        "built by",
        "date",
        "room temperature",
        "hold set",
        "adapter, volts on its label",
        "tag or animal",
      ],
    },
    heading("Before anything moves"),
    checklist(before(input)),
    ...section("Swing, the bolt drawn back", swingTests(input)),
    ...section("Push", pushTests(input)),
    ...section("Bolt and coil", coilTests(input)),
    ...section("Hold", holdTests(input)),
    heading("Remarks"),
    { kind: "fields", perRow: 1, labels: ["", "", ""] },
    paragraph(
      "A value outside its limits is a clue, not a verdict: the findings on the build sheet say what it depends on. A measured swing (time and angle) can be fitted, which narrows every limit on this card.",
      "note",
    ),
  ];
  return { title: "Bench card", door: door.name, blocks };
}

function section(title: string, tests: readonly Test[]): Block[] {
  if (tests.length === 0) return [];
  return [
    heading(title),
    {
      kind: "table",
      roomy: true,
      columns: [
        { title: "do and measure", share: 12 },
        { title: "expect", share: 5 },
        { title: "limits", share: 6 },
        { title: "1", share: 3, writeIn: true },
        { title: "2", share: 3, writeIn: true },
        { title: "3", share: 3, writeIn: true },
      ],
      rows: tests.map(({ what, expect, limits }) => [what, expect, limits, "", "", ""]),
    },
  ];
}

function basis({ bench, words: w }: SheetInput): string {
  if (bench.sampled === null) {
    return "Expected values are those of the door exactly as its file has it. Limits need a latch and a study's tolerances, which this file does not give.";
  }
  const broken =
    bench.sampled.cannotWork > 0
      ? ` ${w.ratio(bench.sampled.cannotWork)} of them have a latch that cannot work at all.`
      : "";
  return `Expected values are those of the door exactly as its file has it. Limits are those between which nine finished doors in ten lie: ${bench.samples} doors drawn from the tolerances on the build sheet, seed ${bench.seed}.${broken}`;
}

function before({ door, plan, sizes }: SheetInput): string[] {
  const { magnets, driver, supply } = door;
  const items = [
    `The flap swings free from stop to stop; ${sizes.long(plan.opening.half - plan.flap.half)} stay open at each side and ${sizes.long(plan.opening.sill - plan.flap.bottom)} below.`,
    "A child's hand can push the flap open from inside and nothing traps it; no finger fits at the hinge side.",
  ];
  if (magnets !== null) {
    const feel = magnets.force === "attract" ? "pull together" : "push apart";
    items.push(
      `Held face to face before gluing, the two magnets of every pair ${feel}. ${plan.pockets.length === 2 ? "Both" : `All ${plan.pockets.length}`} are bonded or capped, and counted.`,
    );
  }
  if (plan.bolt !== null)
    items.push("The bolt slides by its own spring and is drawn back by hand from inside.");
  if (driver !== null) items.push("The clamp is across the coil, the diode's cathode to the supply's plus.");
  if (supply !== null)
    items.push(
      "The adapter is a listed, limited-energy one; its cord is pinched neither by flap nor by door; no mains inside the door.",
    );
  return items;
}

function swingTests({ bench, computed, door, sizes, words: w }: SheetInput): Test[] {
  const angle = w.angle(bench.letGo);
  const { nominal, sampled } = bench;
  const tests: Test[] = [
    {
      what: `Let go at ${angle} without a push. Count how often the middle is passed until the flap stays within the bolt's play.`,
      expect: String(nominal.passes),
      limits: sampled === null ? "" : range(sampled.passes, String),
    },
    {
      what: `The same, with a stopwatch: from let-go until it stays within the bolt's play${playWords(computed, door, sizes)}.`,
      expect: nominal.settle === null ? "never, as the file has it" : stopwatch(nominal.settle),
      limits: sampled === null ? "" : range(sampled.settle, stopwatch, "may never"),
    },
    {
      what: "The same, until it is still.",
      expect: nominal.still === null ? "never quite" : stopwatch(nominal.still),
      limits: sampled === null ? "" : range(sampled.still, stopwatch, "may never"),
    },
  ];
  const reach = computed.body.reach;
  const offset = (rad: number) => upTo(reach * Math.sin(rad) * 1000, sizes);
  const most = sampled?.offCentre.p95 ?? null;
  const capture = computed.latch?.capture ?? null;
  tests.push({
    what: "Push it a little to either side and let it come to rest, five times each way: how far from the middle does it stop?",
    expect: `at most ${offset(computed.deadBand)} at the lower edge`,
    limits: [
      most === null ? "" : `at most ${offset(most)}`,
      capture === null
        ? ""
        : `the bolt finds its slot within ${sizes.long(reach * Math.sin(capture) * 1000)}`,
    ]
      .filter((words) => words !== "")
      .join("; "),
  });
  return tests;
}

function playWords(
  computed: SheetInput["computed"],
  door: SheetInput["door"],
  sizes: SheetInput["sizes"],
): string {
  if (computed.latch === null || door.latch === null) return "";
  const play = ((door.latch.slotWidth - door.latch.boltWidth) / 2) * 1000;
  return ` (${sizes.long(play)} either way at the bolt)`;
}

function pushTests({ bench, computed, door, sizes, words: w }: SheetInput): Test[] {
  const index = computed.hardestPush;
  const one = computed.pushes[index];
  const animal = door.animals[index];
  if (one.force === null) return [];
  return [
    {
      what: `Bolt drawn back, push the flap open slowly with a kitchen scale, ${sizes.long(animal.pushHeight * 1000)} above the floor (${animal.name}), square to the flap. Read the most it shows.`,
      expect: forceWords(one.force, w.system),
      limits: [
        bench.sampled === null ? "" : range(bench.sampled.push, w.force),
        `${animal.name} is at ease up to ${forceWords(one.limit, w.system)}`,
      ]
        .filter((words) => words !== "")
        .join("; "),
    },
  ];
}

/** What a person's stopwatch shows, s. */
const stopwatch = (time: number): string => `${time.toFixed(1)} s`;

/** A small distance rounded up to what a rule shows: half a millimetre, or a 64th of an inch. */
function upTo(mm: number, sizes: SheetInput["sizes"]): string {
  const step = sizes.system === "metric" ? 0.5 : 25.4 / 64;
  return sizes.long(Math.max(1, Math.ceil(mm / step - 1e-9)) * step);
}

const round = (value: number): string => String(Number(value.toPrecision(3)));

/** "6.08 N (620 g, 21.9 oz)", "1.37 lbf (21.9 oz, 620 g)", "5.56 ozf (158 g)": what a force scale, a kitchen scale and one of the other units show. */
export function forceWords(newtons: number, system: UnitSystem = "metric"): string {
  const grams = `${round((1000 * newtons) / STANDARD_GRAVITY)} g`;
  const ounces = `${round(newtons / OUNCE_FORCE)} oz`;
  if (system === "metric") return `${round(newtons)} N (${grams}, ${ounces})`;
  if (newtons < POUND_FORCE) return `${ounces}f (${grams})`;
  return `${round(newtons / POUND_FORCE)} lbf (${ounces}, ${grams})`;
}

function coilTests({ bench, computed, door, words: w }: SheetInput): Test[] {
  const { solenoid, driver, supply } = door;
  if (solenoid === null) return [];
  const tests: Test[] = [
    {
      what: "Coil alone, cold, with a multimeter.",
      expect: `${w.resistance(ratedResistance(solenoid))} at ${w.temperature(20)}`,
      limits: "as the coil's maker states",
    },
  ];
  if (driver === null || supply === null) return tests;
  const current = computed.solenoid?.coil?.current ?? null;
  if (current !== null) {
    tests.push({
      what: "Coil on, cold: its current.",
      expect: w.current(current),
      limits: `the whole door below ${w.current(supply.currentLimit)}`,
    });
  }
  tests.push(...pullTests(bench, computed, supply.voltage, w), heatTest(solenoid, driver, supply.voltage, w));
  return tests;
}

function pullTests(
  bench: BenchLimits,
  computed: SheetInput["computed"],
  volts: number,
  w: SheetInput["words"],
): Test[] {
  if (computed.latch === null) return [];
  const pull = computed.solenoid?.pullInVoltage ?? null;
  const low = SUPPLY_LOW_END * volts;
  const share = bench.sampled?.pullsAtLowEnd ?? null;
  const spread = bench.sampled?.pullIn ?? null;
  return [
    {
      what: `An adjustable supply at ${w.voltage(low)} in the adapter's place (its low end): switch the coil on ten times.`,
      expect: pull !== null && pull < low ? "drawn back fully, ten of ten" : "does not draw back",
      limits:
        share === null
          ? ""
          : share === 1
            ? "every door drawn does"
            : `${w.ratio(share)} of the doors drawn do`,
    },
    {
      what: "Turn the supply up from nothing: at which voltage is the bolt drawn back?",
      expect: pull === null ? "never" : w.voltage(pull),
      limits: spread === null ? "" : range(spread, w.voltage, "never"),
    },
  ];
}

function heatTest(
  solenoid: NonNullable<SheetInput["door"]["solenoid"]>,
  driver: NonNullable<SheetInput["door"]["driver"]>,
  volts: number,
  w: SheetInput["words"],
): Test {
  const hot = temperatureAfter(heatedCoil(solenoid, driver, volts), HEATING_TIME);
  const limit = CLASS_LIMIT[solenoid.insulationClass];
  const touch =
    hot > TOUCH_CAUTION ? `; too hot to touch above ${w.temperature(TOUCH_CAUTION)}: guard it` : "";
  return {
    what: `Coil on for ten minutes, at ${w.temperature(solenoid.ambient)} around it: temperature of the coil.`,
    expect: w.temperature(hot),
    limits: `never above ${w.temperature(limit)} (class ${solenoid.insulationClass})${touch}`,
  };
}

function holdTests(input: SheetInput): Test[] {
  const { computed, door, words: w, bench } = input;
  if (door.timer === null || computed.timer === null) return [];
  const set = holdToSet(input);
  const wanted = set?.time ?? computed.timer.nominal;
  const factor = wanted / computed.timer.nominal;
  const from = Math.max(0, computed.timer.shortest * factor - STOPWATCH);
  const to = computed.timer.longest * factor + STOPWATCH;
  const start = door.timer.retriggers ? "the last pulse" : "the trigger";
  const tests: Test[] = [
    {
      what: `Stopwatch from ${start} until the bolt comes out.`,
      expect: w.time(wanted),
      limits: `${stopwatch(from)} to ${stopwatch(to)}, the stopwatch included`,
    },
  ];
  if (computed.latch !== null) {
    tests.push({
      what: `Take the tag through and let the flap go at ${w.angle(bench.letGo)}; wait for the bolt. Twenty times, from both sides.`,
      expect: "caught, twenty of twenty",
      limits: "none stuck, none shut out",
    });
  }
  return tests;
}

function range(spread: Spread, write: (value: number) => string, never = "none"): string {
  const { p5, p95 } = spread;
  if (p5 === null) return never;
  if (p95 === null) return `${write(p5)} or more; ${never}`;
  const [low, high] = [write(p5), write(p95)];
  return low === high ? `about ${low}` : `${low} to ${high}`;
}
