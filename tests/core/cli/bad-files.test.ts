/** Every bad file or call: exit code 2, a complaint that says where, nothing on standard output. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fileOf, folder, MEDIUM_DOG, run } from "./program.ts";

const GOOD = readFileSync(MEDIUM_DOG, "utf8");
const changed = (from: string, to: string) => {
  if (!GOOD.includes(from)) throw new Error(`the example has no ${from}`);
  return GOOD.replace(from, to);
};

const FILES: [string, string | Uint8Array, RegExp][] = [
  ["wrong dimension", changed('"gap": "6 mm"', '"gap": "6 g"'), /magnets\.gap.*6 g/s],
  ["missing unit", changed('"gap": "6 mm"', '"gap": "6"'), /magnets\.gap/],
  ["a plain number where a unit is due", changed('"gap": "6 mm"', '"gap": 6'), /magnets\.gap/],
  ["slot not wider than bolt", changed('"slotWidth": "16 mm"', '"slotWidth": "8 mm"'), /latch\.slotWidth/],
  ["negative mass", changed('"mass": "14 kg"', '"mass": "-14 kg"'), /animals\.0\.mass/],
  ["unknown key", changed('"retriggers": true', '"retrigger": true'), /timer\.retrigger/],
  ["truncated JSON", GOOD.slice(0, 700), /line \d+/],
  ["deep nesting", "[".repeat(100_000), /./],
  ["__proto__", changed('"notes":', '"__proto__": { "polluted": true }, "notes":'), /__proto__/],
  ["NaN text", changed('"gap": "6 mm"', '"gap": "NaN mm"'), /magnets\.gap/],
  ["a newer version", changed('"version": 1', '"version": 2'), /version/],
  ["not UTF-8", Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d), /UTF-8/],
  ["empty", "", /./],
];

describe("a bad file", () => {
  test.each(FILES)("%s", (_name, text, message) => {
    const { code, out, error } = run(["review", fileOf(text)]);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(error).toMatch(message);
    expect(error).not.toMatch(/at .*\.(ts|mjs):\d+/);
  });

  test("50 MB of brackets", () => {
    const { code, out, error } = run(["review", fileOf("[".repeat(50_000_000))]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toMatch(/too large/);
  });

  test("all errors of a file at once", () => {
    const twice = changed('"gap": "6 mm"', '"gap": "6 g"').replace('"mass": "14 kg"', '"mass": "x"');
    const { error } = run(["review", fileOf(twice)]);
    expect(error).toMatch(/magnets\.gap/);
    expect(error).toMatch(/animals\.0\.mass/);
  });

  test("a byte order mark is no fault", () => {
    expect(run(["review", "--json", fileOf(`\uFEFF${GOOD}`)]).code).toBe(0);
  });
});

describe("a bad call", () => {
  test.each([
    [["review"]],
    [["review", "no-such-file.door.json"]],
    [["review", MEDIUM_DOG, "--nonsense"]],
    [["review", MEDIUM_DOG, "--explain", "swing.nothing"]],
    [["review", MEDIUM_DOG, "--units", "cubits"]],
    [["swing", MEDIUM_DOG, "--hold", "10 V"]],
    [["swing", MEDIUM_DOG, "--hold", "soon"]],
    [["hold", MEDIUM_DOG, "--samples", "0"]],
    [["hold", MEDIUM_DOG, "--part", "3/2"]],
    [["hold", MEDIUM_DOG, "--samples", "2", "--part", "1/3"]],
    [["hold", "--join"]],
    [["map", MEDIUM_DOG, "--of", "swing.settleTime"]],
    [["map", MEDIUM_DOG, "--x", "magnets.gap=2 V..8 mm:3", "--of", "swing.settleTime"]],
    [["fit", MEDIUM_DOG]],
    [["fit", MEDIUM_DOG, "--count", "--angle", "60 deg", "--passes", "0", "--rest", "5 s"]],
    [["best", MEDIUM_DOG, "--over", "magnets.sides=1..2.5"]],
    [["best", MEDIUM_DOG, "--over", "magnets.gap=3 mm..8 mm:5"]],
    [["new", "--from", "no-such-example", "x.door.json"]],
    [["dance"]],
    [[]],
  ])("%j", (args) => {
    const { code, out, error } = run(args, folder());
    expect([code, out]).toEqual([2, ""]);
    expect(error.length).toBeGreaterThan(10);
  });

  test.skipIf(process.platform !== "linux")(
    "a folder that can't be made, where the system takes none",
    () => {
      const { code, out, error } = run(
        ["sheet", MEDIUM_DOG, "--samples", "50", "--out", "/proc/none/sheets"],
        folder(),
      );
      expect([code, out]).toEqual([2, ""]);
      expect(error).toContain("/proc/none/sheets can't be made");
    },
  );
});
