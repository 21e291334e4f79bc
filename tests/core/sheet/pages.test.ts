/** Build sheet and bench card as data and as HTML: every figure the review's, nothing missing, nothing from outside. */
import { describe, expect, test } from "vitest";
import { resultNamed } from "../../../core/review/results.ts";
import { timerParts } from "../../../core/review/suggest-timer.ts";
import { figureText } from "../../../core/review/words.ts";
import { benchCard, forceWords } from "../../../core/sheet/bench-card.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import { faceBytes } from "../../../core/sheet/fonts.ts";
import type { Page } from "../../../core/sheet/page.ts";
import { pageHtml } from "../../../core/sheet/page-html.ts";
import { PAPERS } from "../../../core/sheet/paper.ts";
import { partsList } from "../../../core/sheet/parts-list.ts";
import { newPdf, printable } from "../../../core/sheet/pdf-type.ts";
import { settings } from "../../../core/sheet/settings.ts";
import { holdToSet, type SheetInput } from "../../../core/sheet/sheet-input.ts";
import { sizes } from "../../../core/sheet/sizes.ts";
import type { HoldStudy } from "../../../core/study/hold-study.ts";
import { runStudy } from "../../../core/study/study.ts";
import { EXAMPLES } from "../doors.ts";
import { exampleInput, inputOf, variant } from "./sample.ts";

/** Every word of a page's blocks and drawings. */
function wordsOf(page: Page): string[] {
  const found: string[] = [];
  const walk = (value: unknown, key: string) => {
    if (typeof value === "string") {
      if (!["kind", "name", "status", "tone", "align", "anchor", "along"].includes(key)) found.push(value);
    } else if (Array.isArray(value)) for (const one of value) walk(one, key);
    else if (typeof value === "object" && value !== null) {
      for (const [k, one] of Object.entries(value)) walk(one, k);
    }
  };
  walk(page, "");
  return found;
}

const tables = (page: Page) => page.blocks.flatMap((block) => (block.kind === "table" ? [block] : []));

const BOTH = EXAMPLES.flatMap((name) => [
  [`${name}, metric`, name, "metric"] as const,
  [`${name}, inch`, name, "inch"] as const,
]);

describe("build sheet", () => {
  test.each(BOTH)("%s: what to expect is the review's figures, by its titles", (_, name, system) => {
    const input = exampleInput(name, system);
    const rows = tables(buildSheet(input, PAPERS.a4)).flatMap(({ rows: all }) => all);
    for (const result of [
      "swing.settleTime",
      "push.force",
      "solenoid.current",
      "hold.required",
      "supply.current",
    ]) {
      const definition = resultNamed(result);
      if (definition === undefined) throw new Error(result);
      const row = rows.find(([title]) => title.toLowerCase() === definition.title.toLowerCase());
      const value = definition.value(input.computed);
      const text =
        value === null ? "does not exist for this door" : figureText(value, definition.unit, input.words);
      expect([result, row?.[1]]).toEqual([result, text]);
    }
  });

  test.each(BOTH)("%s: every finding's sentence with its verdict, the worst first", (_, name, system) => {
    const input = exampleInput(name, system);
    const [verdicts] = buildSheet(input, PAPERS.a4).blocks.flatMap((b) =>
      b.kind === "verdicts" ? [b.items] : [],
    );
    expect(verdicts.map(({ text }) => text).sort()).toEqual(
      input.findings.map(({ message }) => message).sort(),
    );
    const order = { fail: 0, caution: 1, ok: 2 } as const;
    const ranks = verdicts.map(({ status }) => order[status]);
    expect(ranks).toEqual([...ranks].sort());
  });

  test("parts: magnets counted and graded, preferred R and C with the trimmer's place, ratings above what flows", () => {
    const input = exampleInput("medium-dog");
    const parts = new Map(partsList(input).map(({ name, count, values }) => [name, { count, values }]));
    expect(parts.get("disc magnet")).toMatchObject({ count: "4" });
    expect(parts.get("disc magnet")?.values).toMatch(
      /Ø 8 mm × 4 mm.*1\.19 T.*N35 \(NdFeB\).*unlike poles facing/,
    );
    const hold = holdToSet(input);
    const made = timerParts(input.computed, hold?.time ?? null)?.parts;
    if (made === undefined) throw new Error("no parts");
    const { words: w } = input;
    expect(parts.get("if a one-shot: resistor")?.values).toContain(w.resistance(made.resistor));
    expect(parts.get("if a one-shot: trimmer")?.values).toContain(w.resistance(made.trimmerSetting));
    expect(parts.get("if a one-shot: capacitor")?.values).toContain(w.capacitance(made.capacitor));
    expect(made.resistor + made.trimmerSetting).toBeCloseTo(
      (hold?.time ?? 0) / (made.capacitor * Math.log(3)),
      6,
    );
    expect(parts.get("clamp diode")?.values).toContain("240 mA or more");
    expect(parts.get("supply")?.values).toContain("24 V DC, 500 mA");
  });

  test("a coil without a clamp is no part to buy but a warning", () => {
    const parts = partsList(exampleInput("never-latches"));
    expect(parts.find(({ name }) => name === "clamp across the coil")).toMatchObject({ count: "0" });
  });

  test("the hold to set is the review's first setting, said to be one; where none is sure, none is named", () => {
    const dog = exampleInput("medium-dog");
    expect(holdToSet(dog)?.time).toBe(dog.computed.hold?.setting);
    expect(settings(dog).find(({ name }) => name === "hold")?.how).toContain("first setting");
    const never = exampleInput("never-latches");
    expect(holdToSet(never)).toBeNull();
    expect(settings(never).find(({ name }) => name === "hold")?.value).toBe("none is sure");
  });

  test("a study of too few samples leaves the first setting and says why; one that shows there is none does not", () => {
    const dog = exampleInput("medium-dog");
    const few = runStudy({ door: dog.door, samples: 30, seed: 1 });
    const row = (study: HoldStudy) => settings({ ...dog, study }).find(({ name }) => name === "hold");
    expect(holdToSet({ ...dog, study: few })?.grounds).toBe("first setting");
    expect(row(few)?.how).toContain("30 samples cannot show");
    const none = { ...few, samples: 5000, whyNone: "No hold will do: why." };
    expect(holdToSet({ ...dog, study: none })).toBeNull();
    expect(row(none)).toMatchObject({ value: "none is sure", how: "No hold will do: why." });
  });

  test("what the file leaves out is listed with its value; what it says is not", () => {
    const rows = tables(buildSheet(exampleInput("medium-dog"), PAPERS.a4)).flatMap(({ rows: all }) => all);
    const row = (key: string) => rows.find(([first]) => first === key);
    expect(row("latch.guideFactor")?.[1]).toBe("2");
    expect(row("animals.0.comfortablePush")?.[1]).toBe("13.7 N");
    expect(row("hinge.stopAngle")).toBeUndefined();
    // ± 40 % of 5 mN m, assumed.
    expect(row("hinge.frictionTorque")?.[1]).toBe("3 mN m … 7 mN m");
    expect(row("driver.currentGain")).toBeUndefined();
  });

  test("a flap and nothing else still has its sheet and its card", () => {
    const bare = variant({
      magnets: null,
      latch: null,
      solenoid: null,
      driver: null,
      timer: null,
      supply: null,
    });
    const input = inputOf(bare);
    expect(partsList(input).map(({ name }) => name)).toEqual([
      "flap",
      "bottom rail and strike",
      "hinge, along the top edge",
      "stop",
      "seal, brush or lip",
      "damper",
    ]);
    const [, swing] = [buildSheet(input, PAPERS.a4), tables(benchCard(input))];
    expect(swing.length).toBe(2);
    expect(swing[0].rows.every(([, expected]) => expected !== "")).toBe(true);
  });

  test("a strike that would strike the sill is told before cutting", () => {
    const blocks = (input: SheetInput) =>
      buildSheet(input, PAPERS.a4)
        .blocks.flatMap((b) => (b.kind === "list" ? b.items : []))
        .join(" ");
    const low = variant({ latch: { distanceFromHinge: "39 cm" } });
    expect(blocks(inputOf(low))).toContain("into the sill and cannot swing");
    for (const name of EXAMPLES) {
      expect(blocks(exampleInput(name))).not.toContain("into the sill");
    }
  });
});

describe("bench card", () => {
  test.each(BOTH)(
    "%s: the push is the review's, on a force scale and on both kitchen scales",
    (_, name, system) => {
      const input = exampleInput(name, system);
      const { force } = input.computed.pushes[input.computed.hardestPush];
      const cells = tables(benchCard(input)).flatMap(({ rows }) => rows.flat());
      expect(cells).toContain(forceWords(force ?? 0, system));
    },
  );

  test("forces on three scales agree: 1 kg on the scale is 9.80665 N is 35.27 oz", () => {
    expect(forceWords(9.80665)).toBe("9.81 N (1000 g, 35.3 oz)");
    expect(forceWords(0.2780139)).toBe("0.278 N (28.3 g, 1 oz)");
    // A pound is 453.59237 g and 16 oz.
    expect(forceWords(0.45359237 * 9.80665, "inch")).toBe("1 lbf (16 oz, 454 g)");
    expect(forceWords(0.45359237 * 9.80665 * 0.25, "inch")).toBe("4 ozf (113 g)");
  });

  test("there is a place to write beside every test", () => {
    for (const { columns, roomy } of tables(benchCard(exampleInput("cat")))) {
      expect(columns.filter(({ writeIn }) => writeIn === true).length).toBe(3);
      expect(roomy).toBe(true);
    }
  });

  test("the low end of the adapter and the ten minutes are in it", () => {
    const text = wordsOf(benchCard(exampleInput("medium-dog"))).join(" ");
    for (const said of ["22.8 V", "ten minutes", "60°", "kitchen scale", "Stopwatch", "130 °C"])
      expect(text).toContain(said);
  });
});

describe("HTML", () => {
  test.each(BOTH)("%s: needs nothing from outside and says all there is", (_, name, system) => {
    const input = exampleInput(name, system);
    for (const page of [buildSheet(input, PAPERS.letter), benchCard(input)]) {
      const html = pageHtml(page, PAPERS.letter);
      const outside = [...html.matchAll(/(?:src|href|url)\s*[=(]\s*["']?([^"')\s]+)/g)].map(
        ([, address]) => address,
      );
      expect(outside.filter((address) => !address.startsWith("data:"))).toEqual([]);
      expect(html).toContain("@page { size: 215.9mm 279.4mm");
      const text = html.replaceAll(/<[^>]+>/g, "\n");
      for (const said of wordsOf({ ...page, blocks: page.blocks.filter(({ kind }) => kind !== "picture") })) {
        const escaped = said
          .replaceAll("&", "&amp;")
          .replaceAll("<", "&lt;")
          .replaceAll(">", "&gt;")
          .replaceAll('"', "&quot;");
        expect(text).toContain(escaped);
      }
    }
  });

  test("a person's words cannot become markup", () => {
    const evil = variant({}) as unknown as Record<string, unknown>;
    evil.name = '<script>alert("x")</script> & co';
    evil.notes = "<img src=http://example.invalid/x>";
    const html = pageHtml(buildSheet(inputOf(evil), PAPERS.a4), PAPERS.a4);
    expect(html).not.toContain("<script>alert");
    expect(html).not.toContain("<img");
    expect(html).toContain("&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; co");
  });
});

describe("paper's faces", () => {
  test("show every sign the sheets write", async () => {
    const { type } = await newPdf("x");
    for (const name of EXAMPLES) {
      for (const system of ["metric", "inch"] as const) {
        const input = exampleInput(name, system);
        for (const page of [buildSheet(input, PAPERS.a4), benchCard(input)]) {
          for (const said of wordsOf(page)) expect(printable(said, type)).toBe(said.normalize("NFC"));
        }
      }
    }
  });

  test("replace a sign they lack instead of printing a box", async () => {
    const { type } = await newPdf("x");
    expect(printable("≈ 3 ✂ Ω", type)).toBe("about  3 ? Ω");
    expect(faceBytes("Figtree", 400).length).toBeGreaterThan(10_000);
  });
});

describe("lengths", () => {
  test("inches as fractions where a rule shows them, thousandths where a fit needs them, millimetres beside", () => {
    const inch = sizes("inch");
    expect([25.4, 368.3, 12.7, 9.525, 584.2].map(inch.short)).toEqual([
      '1"',
      '14 1/2"',
      '1/2"',
      '3/8"',
      '23"',
    ]);
    expect(inch.short(13)).toBe('0.512"');
    expect(inch.long(370)).toBe("14 9/16 in (370 mm)");
    expect(sizes("metric").long(0.5)).toBe("0.5 mm");
    expect(sizes("metric").short(368.3)).toBe("368.3");
  });

  test("a fraction is never more than 1/128 in from the length, and reads back", () => {
    for (let mm = 0; mm < 900; mm += 0.37) {
      const text = sizes("inch").short(mm).replace('"', "");
      const parts = text.split(" ").map((part) => {
        const [a, b] = part.split("/").map(Number);
        return b === undefined ? a : a / b;
      });
      const inches = parts.reduce((sum, part) => sum + part, 0);
      expect(Math.abs(inches * 25.4 - mm)).toBeLessThanOrEqual(25.4 / 128 + 1e-9);
    }
  });
});
