import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEEPEST_JSON, parseJson } from "../../../core/door/json.ts";

/** What the engine's own parser makes of a text. */
function engine(text: string): { value?: unknown; ok: boolean } {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false };
  }
}

function fault(text: string) {
  const read = parseJson(text);
  if (read.ok) throw new Error(`read as ${JSON.stringify(read.value)}`);
  return read.faults[0];
}

describe("JSON", () => {
  it("is read as the engine reads it", () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), fc.nat(3), (text, indent) => {
        const spaced = JSON.stringify(JSON.parse(text), null, indent);
        const read = parseJson(spaced);
        expect(read.ok && JSON.stringify(read.value)).toBe(JSON.stringify(JSON.parse(spaced)));
      }),
    );
  });

  it("is refused where the engine refuses it, and only there", () => {
    const piece = fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"a"',
      '"b"',
      '"',
      "\\",
      "1",
      "-",
      "0",
      ".",
      "e5",
      "true",
      "null",
      " ",
      "\n",
      "x",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        const text = pieces.join("");
        const read = parseJson(text);
        const twice = !read.ok && read.faults.every(({ path }) => path !== "");
        if (!twice) expect(read.ok, text).toBe(engine(text).ok);
      }),
      { numRuns: 20_000 },
    );
  });

  it.each([
    "01",
    "1.",
    ".5",
    "+1",
    "1e",
    "0x1",
    "nan",
    "+Infinity",
    "NaNs",
    "tru",
    "truex",
    "'a'",
    '"\t"',
    '"\\x"',
    '"\\u12"',
    "[1,]",
    "{a:1}",
    '{"a" 1}',
    '{"a":1,}',
    "// c",
    "",
    "   ",
    "1 2",
  ])("%j is refused, as by the engine", (text) => {
    expect(engine(text).ok).toBe(false);
    expect(parseJson(text).ok).toBe(false);
  });

  it("says the line and column of what is broken", () => {
    const cut = fault('{\n  "a": 1,\n  "b": "cu');
    expect([cut.line, cut.column, cut.path]).toEqual([3, 8, ""]);
    expect(fault('{"a": 1').given).toBe("the end of the file");
    expect(fault('\ufeff{"a": x}').column).toBe(7);
    expect(fault('{"a": 1}\r\n}').line).toBe(2);
  });

  it("passes over a byte order mark", () => {
    expect(parseJson("\ufeff1")).toEqual({ ok: true, value: 1 });
  });

  it("names keys given twice, all of them", () => {
    const read = parseJson('{"a": {"b": 1, "b": 2}, "c": [{"d": 1,\n"d": 2}], "a": 3}');
    expect(read.ok ? [] : read.faults.map(({ path, line }) => `${path} ${line}`)).toEqual([
      "a.b 1",
      "c.0.d 2",
      "a 2",
    ]);
  });

  it("bounds the nesting", () => {
    const nested = (depth: number) => "[".repeat(depth) + "]".repeat(depth);
    expect(parseJson(nested(DEEPEST_JSON)).ok).toBe(true);
    expect(fault(nested(DEEPEST_JSON + 1)).problem).toBe("the nesting is too deep");
    expect(fault("[".repeat(3_000_000)).problem).toBe("the nesting is too deep");
    expect(fault('{"a":'.repeat(100_000)).problem).toBe("the nesting is too deep");
  });

  it("reads long texts without running out of stack", () => {
    const long = "x\\n".repeat(1_000_000);
    const read = parseJson(`"${long}"`);
    expect(read.ok && (read.value as string).length).toBe(2_000_000);
    expect(fault(`"${long}`).problem).toContain("not closed");
  });

  it("keeps __proto__ a key like any other", () => {
    const read = parseJson('{"__proto__": {"polluted": true}}');
    expect(read.ok && Object.keys(read.value as object)).toEqual(["__proto__"]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(read.ok && JSON.stringify(read.value)).toBe('{"__proto__":{"polluted":true}}');
  });
});
