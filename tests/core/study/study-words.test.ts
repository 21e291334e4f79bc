import { expect, test } from "vitest";
import { settleWords } from "../../../core/study/study-words.ts";

test("a settle time with its error, told upwards; never, and no error, are said as such", () => {
  expect(settleWords(6.954, 0.0412)).toEqual({ time: "6.95", error: "± 0.05 s" });
  expect(settleWords(6.954, 0.05)).toEqual({ time: "6.95", error: "± 0.05 s" });
  expect(settleWords(6.9, null)).toEqual({ time: "6.90 s", error: "" });
  expect(settleWords(null, null)).toEqual({ time: "never", error: "" });
});
