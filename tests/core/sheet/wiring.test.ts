/** The wiring diagram: what is on it, that nothing runs through words, that no wires cross, and that it fits its paper. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import type { UnitSystem } from "../../../core/quantity/format.ts";
import { figureText } from "../../../core/review/words.ts";
import type { Drawing, Point, Text } from "../../../core/sheet/drawing.ts";
import { MARGIN, PAPERS, type PaperName } from "../../../core/sheet/paper.ts";
import { holdToSet, type SheetInput, sheetInput } from "../../../core/sheet/sheet-input.ts";
import { clearBox } from "../../../core/sheet/svg.ts";
import { type SymbolSet, wiringDiagram } from "../../../core/sheet/wiring.ts";
import { fuseRating, wiringValues } from "../../../core/sheet/wiring-values.ts";
import { exampleDoor, referenceDoor } from "../doors.ts";
import { goodWith } from "../review/doors.ts";

/** Inputs of a door by its unit system: the swing is computed once. */
const KNOWN = new Map<string, SheetInput>();
function inputOf(door: Door, system: UnitSystem = "metric"): SheetInput {
  const known = KNOWN.get(`${JSON.stringify(door)} ${system}`);
  if (known !== undefined) return known;
  const made = sheetInput(door, { text: null, root: {} }, system);
  KNOWN.set(`${JSON.stringify(door)} ${system}`, made);
  return made;
}

const plain = (changes: Readonly<Record<string, unknown>>) => goodWith({ magnets: undefined, ...changes });

const DOORS: Readonly<Record<string, () => Door>> = {
  cat: () => exampleDoor("cat"),
  "large dog": () => exampleDoor("large-dog-plywood"),
  "medium dog": () => exampleDoor("medium-dog"),
  "never latches": () => exampleDoor("never-latches"),
  "R and C for another hold": () => referenceDoor("15-damper"),
  "one trigger": () =>
    plain({ "timer.resistor": "1 Mohm", "timer.capacitor": "4.7 uF", "timer.retriggers": false }),
  "nothing but a flap": () => referenceDoor("02-bare"),
  "no driver": () => referenceDoor("37-coil-no-driver"),
  "no supply": () => referenceDoor("38-no-supply"),
  "long numbers": () =>
    plain({
      "supply.voltage": "24.75 V",
      "supply.logicVoltage": "3.65 V",
      "solenoid.ratedVoltage": "23.75 V",
      "solenoid.ratedCurrent": "127.5 mA",
      "driver.baseResistor": "1.27 kohm",
      "driver.clamp": "zener",
      "driver.clampVoltage": "48.75 V",
      "driver.driveVoltage": "3.65 V",
      "detection.range": "275 cm",
      "detection.pulseInterval": "1.25 s",
      "supply.ambient": "101.5 degC",
      name: "A name that goes on and on and on, and then some more, so that it does not fit on one line of any paper at all",
    }),
};
const SETS: readonly SymbolSet[] = ["iec", "ieee"];
const PAPER_NAMES: readonly PaperName[] = ["a4", "letter"];

const textsOf = ({ layers }: Drawing): Text[] =>
  layers.flatMap(({ items }) => items.filter((item): item is Text => item.kind === "text"));
const wordsOf = (drawing: Drawing) => textsOf(drawing).map(({ text }) => text);

type Segment = readonly [Point, Point];
function segmentsOf({ layers }: Drawing): Segment[] {
  return layers.flatMap(({ items }) =>
    items.flatMap((item): Segment[] => {
      if (item.kind === "line") return [[item.from, item.to]];
      if (item.kind !== "polyline") return [];
      const points = item.closed ? [...item.points, item.points[0]] : item.points;
      return points.slice(1).map((to, i): Segment => [points[i], to]);
    }),
  );
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function boxOf(item: Text): Box {
  const { x, y, width, height } = clearBox(item);
  // The clearing is larger than the letters by 0.4 mm at each side.
  return { left: x + 0.4, top: y, right: x + width - 0.4, bottom: y + height };
}

const overlap = (a: Box, b: Box) =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Liang and Barsky's clipping: whether any of a segment lies within a box. */
function cuts([[x1, y1], [x2, y2]]: Segment, box: Box): boolean {
  let [from, to] = [0, 1];
  const sides: [number, number][] = [
    [x1 - x2, x1 - box.left],
    [x2 - x1, box.right - x1],
    [y1 - y2, y1 - box.top],
    [y2 - y1, box.bottom - y1],
  ];
  for (const [p, q] of sides) {
    if (p === 0 && q < 0) return false;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  return from < to;
}

/** Wires are longer than any stroke of a symbol they could meet. */
const WIRE = 5.5;
function crossings(segments: readonly Segment[]): string[] {
  const length = ([a, b]: Segment) => Math.hypot(b[0] - a[0], b[1] - a[1]);
  const long = segments.filter((one) => length(one) > WIRE);
  const level = long.filter(([a, b]) => Math.abs(a[1] - b[1]) < 1e-9);
  const upright = long.filter(([a, b]) => Math.abs(a[0] - b[0]) < 1e-9);
  const within = (value: number, a: number, b: number) =>
    value > Math.min(a, b) + 0.2 && value < Math.max(a, b) - 0.2;
  return level.flatMap(([a, b]) =>
    upright
      .filter(([c, d]) => within(c[0], a[0], b[0]) && within(a[1], c[1], d[1]))
      .map(([c]) => `(${c[0]}, ${a[1]})`),
  );
}

/** What is wrong with the picture, in words; nothing is right. */
function faultsOf(drawing: Drawing): string[] {
  const texts = textsOf(drawing);
  const boxes = texts.map(boxOf);
  const segments = segmentsOf(drawing);
  const found = crossings(segments).map((where) => `wires cross at ${where}`);
  for (const [i, box] of boxes.entries()) {
    const words = `"${texts[i].text}"`;
    const outside =
      box.left < MARGIN ||
      box.top < MARGIN ||
      box.right > drawing.widthMm - MARGIN ||
      box.bottom > drawing.heightMm - MARGIN;
    if (outside) found.push(`${words} in the margin`);
    if (texts[i].size < LEAST_SIZE) found.push(`${words} too small`);
    const on = boxes.findIndex((other, k) => k !== i && overlap(box, other));
    if (on !== -1) found.push(`${words} on "${texts[on].text}"`);
    const cut = segments.find((one) => cuts(one, box));
    if (cut !== undefined) found.push(`${JSON.stringify(cut)} through ${words}`);
  }
  return found;
}

/** Six and a half points, mm. */
const LEAST_SIZE = 2.3;

describe("wiring diagram as a picture", () => {
  test.each(Object.keys(DOORS))(
    "%s: words clear of lines and of each other, no crossing wires, on its paper",
    (name) => {
      const door = DOORS[name]();
      for (const system of ["metric", "inch"] as const) {
        const input = inputOf(door, system);
        for (const set of SETS)
          for (const paper of PAPER_NAMES)
            expect(faultsOf(wiringDiagram(input, PAPERS[paper], set))).toEqual([]);
      }
    },
  );

  test("the check itself rejects words on a wire and crossing wires", () => {
    const drawing = wiringDiagram(inputOf(DOORS.cat()), PAPERS.a4, "iec");
    const [first] = textsOf(drawing);
    const { left, right, top, bottom } = boxOf(first);
    const y = (top + bottom) / 2;
    expect(faultsOf(drawing)).toEqual([]);
    const through = { name: "OUTLINE", items: [{ kind: "line", from: [left, y], to: [right, y] }] } as const;
    expect(faultsOf({ ...drawing, layers: [...drawing.layers, through] })).toEqual([
      expect.stringContaining(`through "${first.text}"`),
    ]);
    const twice = { name: "TEXT", items: [first] } as const;
    expect(faultsOf({ ...drawing, layers: [...drawing.layers, twice] }).join()).toContain(
      `on "${first.text}"`,
    );
    expect(faultsOf({ ...drawing, widthMm: 200 }).join()).toContain("in the margin");
    expect(
      crossings([
        [
          [0, 5],
          [10, 5],
        ],
        [
          [5, 0],
          [5, 10],
        ],
      ]),
    ).toHaveLength(1);
  });

  test("lies down on its paper", () => {
    const input = inputOf(plain({}));
    expect(wiringDiagram(input, PAPERS.a4, "iec")).toMatchObject({ widthMm: 297, heightMm: 210 });
    expect(wiringDiagram(input, PAPERS.letter, "iec")).toMatchObject({ widthMm: 279.4, heightMm: 215.9 });
  });
});

describe("what the wiring diagram says", () => {
  const words = (door: Door, set: SymbolSet = "iec") => wordsOf(wiringDiagram(inputOf(door), PAPERS.a4, set));

  test("the values of every part", () => {
    const found = words(exampleDoor("cat")).join("\n");
    for (const value of [
      "12 V, 200 mA",
      "60 Ω at 20 °C",
      "120 mH",
      "drop 0.9 V",
      "2.2 kΩ",
      "together 12.7 V",
      "switching",
    ])
      expect(found).toContain(value);
    expect(found).toContain("symbols after IEC 60617");
    expect(words(exampleDoor("cat"), "ieee").join("\n")).toContain("symbols after IEEE 315");
  });

  test("the review's figures, each once", () => {
    const input = inputOf(exampleDoor("medium-dog"));
    const found = wordsOf(wiringDiagram(input, PAPERS.a4, "iec")).join("\n");
    const { computed, words: w } = input;
    expect(found).toContain(`takes ${figureText(computed.solenoid?.coil?.current ?? Number.NaN, "A", w)}`);
    expect(found).toContain(`heat ${figureText(computed.driver?.dissipation ?? Number.NaN, "W", w)}`);
    expect(found).toContain(
      `junction ${figureText(computed.supply?.regulatorTemperature ?? Number.NaN, "degC", w)}`,
    );
    expect(found).toContain(`hold ${w.time(holdToSet(input)?.time ?? Number.NaN)}`);
  });

  test("a coil without a clamp is told, in a frame", () => {
    const drawing = wiringDiagram(inputOf(exampleDoor("never-latches")), PAPERS.a4, "iec");
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["NO CLAMP –", "add one"]));
    expect(drawing.layers.find(({ name }) => name === "CUT")?.items).toHaveLength(2);
    expect(words(exampleDoor("cat"))).not.toContain("NO CLAMP –");
  });

  test("R and C as in the file where they give the hold, else the ones for the hold to set with a trimmer", () => {
    expect(words(exampleDoor("never-latches"))).toEqual(expect.arrayContaining(["82 kΩ", "47 µF"]));
    const other = words(referenceDoor("15-damper")).join("\n");
    expect(other).not.toContain("100 kΩ");
    expect(other).toMatch(/\nat [\d.]+ kΩ/);
    expect(other).toContain("give the hold to set");
  });

  test("only a timer that restarts has the transistor for it; a microcontroller has neither", () => {
    const parts = { "timer.resistor": "100 kohm", "timer.capacitor": "100 uF" };
    expect(words(plain({ ...parts, "timer.retriggers": true }))).toContain("Q2");
    expect(words(plain({ ...parts, "timer.retriggers": false }))).not.toContain("Q2");
    expect(words(plain({}))).toEqual(expect.arrayContaining(["microcontroller", "DETECT", "COIL", "LAMP"]));
  });

  test("a gate has its pull-down, a base its resistor", () => {
    expect(words(plain({ driver: { kind: "mosfet", onResistance: "50 mohm" } }))).toContain("100 kΩ");
    expect(words(plain({ "driver.baseResistor": "3.3 kohm" }))).toContain("3.3 kΩ");
  });

  test("what the file leaves out is said", () => {
    const found = words(referenceDoor("02-bare"));
    for (const said of ["not in the file:", "no timer in the file", "no driver", "no solenoid"])
      expect(found).toContain(said);
  });

  test("the cautions stand on every diagram", () => {
    for (const door of Object.values(DOORS))
      expect(words(door()).join(" ")).toContain("Never mains inside the door.");
  });
});

describe("small parts", () => {
  test("a fuse carries its load at two thirds of its rating at most, and no next smaller one would", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 50, noNaN: true }), (draw) => {
        const rating = fuseRating(draw) ?? Number.NaN;
        expect(draw / rating).toBeLessThanOrEqual(2 / 3 + 1e-9);
        // Two neighbours of the series differ by a quarter, or a little more.
        expect(draw / rating).toBeGreaterThan(2 / 3 / 1.29);
      }),
    );
    expect(fuseRating(null)).toBeNull();
    expect(fuseRating(0)).toBeNull();
    expect(fuseRating(0.13)).toBe(0.2);
  });

  test("the indicator's current is 5 mA or a little less, and there is none where the output is too low", () => {
    const at = (volts: string) =>
      wiringValues(inputOf(plain({ "driver.driveVoltage": volts })).computed).lampResistor;
    // (5 V − 2 V)/600 Ω = 5 mA; the next of E12 is 680 Ω.
    expect(at("5 V")).toBe(680);
    expect(at("3.3 V")).toBe(270);
    expect(at("2.1 V")).toBeNull();
  });
});
