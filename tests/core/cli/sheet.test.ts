/** `sheet` as a person calls it: files in a folder, complaints that name what was expected. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folder, MEDIUM_DOG, ROOT, run } from "./program.ts";

const example = (name: string) => join(ROOT, `assets/examples/${name}.door.json`);

describe("sheet", () => {
  test.each([
    ["cat", 0],
    ["never-latches", 1],
  ])("%s: the whole set, exit %i", (name, code) => {
    const out = join(folder(), "new", "place");
    const done = run(["sheet", example(name), "--out", out, "--zip"]);
    expect([done.code, done.error]).toEqual([code, ""]);
    const names = readdirSync(out);
    for (const file of names) expect(done.out).toContain(file);
    for (const file of [
      "build-sheet.pdf",
      "drill-template.pdf",
      "template-flap.dxf",
      "bench-card.html",
      "door.zip",
    ])
      expect(names).toContain(file);
    expect(names.filter((file) => file.endsWith(".part"))).toEqual([]);
    expect(readFileSync(join(out, "build-sheet.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
  });

  test("inches and Letter", () => {
    const out = folder();
    const done = run(["sheet", MEDIUM_DOG, "--out", out, "--units", "inch", "--paper", "letter"]);
    expect(done.code).toBe(0);
    const html = readFileSync(join(out, "build-sheet.html"), "utf8");
    expect(html).toContain("14 9/16 in (370 mm)");
    expect(html).toContain("size: 215.9mm 279.4mm");
  });

  test("an old set is replaced file by file", () => {
    const out = folder();
    writeFileSync(join(out, "results.csv"), "old");
    writeFileSync(join(out, "mine.txt"), "mine");
    expect(run(["sheet", example("cat"), "--out", out]).code).toBe(0);
    expect(readFileSync(join(out, "results.csv"), "utf8")).toMatch(/^name,value,unit/);
    expect(readFileSync(join(out, "mine.txt"), "utf8")).toBe("mine");
  });

  test.each([
    [["--paper", "a4"], "--out must name the folder"],
    [["--out", "x", "--paper", "a5"], '--paper must be a4 or letter; received "a5"'],
    [["--out", "x", "--units", "cubits"], '--units must be metric or inch; received "cubits"'],
    [["--out", "x", "--samples", "0"], '--samples must be a whole number of at least 1; received "0"'],
  ])("refuses %j", (words, complaint) => {
    const cwd = folder();
    const done = run(["sheet", MEDIUM_DOG, ...words], cwd);
    expect([done.code, done.out]).toEqual([2, ""]);
    expect(done.error).toContain(complaint);
    expect(existsSync(join(cwd, "x"))).toBe(false);
  });

  test("a folder that cannot be is told, and nothing is on standard output", () => {
    const out = join(folder(), "file");
    writeFileSync(out, "in the way");
    const done = run(["sheet", example("cat"), "--out", out]);
    expect([done.code, done.out]).toEqual([2, ""]);
    expect(done.error).toContain("can't be made");
  });
});
