import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Json } from "../../../core/door/json.ts";
import { readDoor } from "../../../core/door/read-door.ts";
import { SAMPLE, textWith } from "./sample.ts";

describe("any change to a door file", () => {
  /** Every place in the sample, as a path of keys. */
  function places(value: Json, path: string[] = []): string[][] {
    if (typeof value !== "object" || value === null) return [path];
    return [path, ...Object.entries(value).flatMap(([key, inner]) => places(inner as Json, [...path, key]))];
  }

  function replaced(value: Json, [key, ...rest]: string[], entry: Json): Json {
    if (key === undefined) return entry;
    const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, Json>;
    copy[key] = replaced(copy[key], rest, entry);
    return copy as unknown as Json;
  }

  const odd = fc.oneof(
    fc.constantFrom<Json>(
      "",
      "NaN",
      "1e999 m",
      "-5 cm",
      "5 furl",
      "39",
      null,
      true,
      -1,
      0,
      1e308,
      "none",
      [],
      {},
      [[]],
      { "": "" },
    ),
    fc.jsonValue() as fc.Arbitrary<Json>,
  );

  it("gives a door or faults with paths, and never throws", () => {
    const all = places(SAMPLE);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...all), odd), { minLength: 1, maxLength: 3 }),
        (edits) => {
          const root = edits.reduce<Json>((before, [path, entry]) => {
            try {
              return replaced(before, path, entry);
            } catch {
              return before;
            }
          }, SAMPLE);
          const read = readDoor(JSON.stringify(root));
          if (read.ok) return;
          expect(read.errors.length).toBeGreaterThan(0);
          for (const fault of read.errors) {
            expect(fault.path).not.toBe("");
            expect(fault.message).not.toMatch(/undefined|\[object|NaN, expected/);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it("survives cuts and swaps in the text itself", () => {
    const text = textWith();
    const place = fc.nat(text.length - 1);
    fc.assert(
      fc.property(place, fc.nat(20), fc.string({ maxLength: 5 }), (at, cut, put) => {
        const read = readDoor(text.slice(0, at) + put + text.slice(at + cut));
        if (!read.ok)
          expect(read.errors.every(({ path, message }) => path !== "" && message !== "")).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});
