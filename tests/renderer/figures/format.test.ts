import { describe, expect, test } from "vitest";
import { RESULTS } from "../../../core/review/results.ts";
import { changeText, figureText } from "../../../renderer/figures/format.ts";

test.each([
  [0.0123, "m", "12.3 mm", "0.484 in"],
  [0.5, "rad", "28.6°", "28.6°"],
  [8.8964432305, "N", "8.9 N", "2 lbf"],
  [0.006, "N m", "6 mN m", "0.85 ozf in"],
  [0.0292639653, "kg m^2", "0.0293 kg m²", "100 lb in²"],
  [0.0115212462, "kg m", "0.0115 kg m", "1 lb in"],
  [20, "degC", "20 °C", "68 °F"],
  [0.0123, "J", "12.3 mJ", "12.3 mJ"],
  [14, "1", "14", "14"],
])("%s %s", (value, unit, metric, inch) => {
  expect(figureText(value, unit, "metric")).toBe(metric);
  expect(figureText(value, unit, "inch")).toBe(inch);
});

test("what does not exist is a dash", () => {
  expect(figureText(null, "s", "metric")).toBe("—");
});

describe("every result's unit is known", () => {
  test.each(RESULTS.map(({ name, unit }) => [name, unit]))("%s in %s", (_, unit) => {
    const text = figureText(1.234, unit, "metric");
    expect(text).toMatch(/^[\d.]+/);
    expect(text).not.toContain("^");
  });
});

test("changes carry their sign; temperatures change by kelvins", () => {
  expect(changeText(0.5, "s", "metric")).toBe("+0.5 s");
  expect(changeText(-0.5, "s", "metric")).toBe("−0.5 s");
  expect(changeText(0, "s", "metric")).toBe("no change");
  expect(changeText(10, "degC", "metric")).toBe("+10 K");
});
