import fc from "fast-check";
import { expect, test } from "vitest";
import { lineWords } from "../../../core/sheet/line-words.ts";

test.each([
  ["at most 60 mΩ when on, 240 mA or more", ["at", "most", "60 mΩ", "when", "on,", "240 mA", "or", "more"]],
  ["22 7/8 in (581 mm) above", ["22 7/8 in", "(581 mm)", "above"]],
  ["9.68 N (987 g, 34.1 oz)", ["9.68 N", "(987 g,", "34.1 oz)"]],
  ["13 V to 14.6 V.", ["13 V", "to", "14.6 V."]],
  ["5.72 oz at 74 lb/ft³", ["5.72 oz", "at", "74 lb/ft³"]],
  ["class B and a seal", ["class", "B", "and", "a", "seal"]],
])("%s breaks between its pieces only", (text, pieces) => {
  expect(lineWords(text)).toEqual(pieces);
});

test("nothing is lost, and a figure in front of a long word may break", () => {
  fc.assert(fc.property(fc.string(), (text) => lineWords(text).join(" ") === text));
  expect(lineWords("400 doors drawn")).toEqual(["400 doors", "drawn"]);
  expect(lineWords("2 finished doors")).toEqual(["2", "finished", "doors"]);
});
