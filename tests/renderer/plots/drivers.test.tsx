/** Ranked bars of drivers: their order, both parts, the error, and the same in figures. */
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { type Driver, Drivers } from "../../../renderer/plots/Drivers.tsx";

const MEASURE = "total Sobol' index of the rank of the settle time, 64 scrambled Sobol' points";
const ALONE = "first-order Sobol' index of the rank of the settle time, 64 scrambled Sobol' points";

function driver(key: string, value: number, error: number | null, alone: number): Driver {
  return { key, measure: MEASURE, value, error, alone: { value: alone, error: 0.01, measure: ALONE } };
}

const html = (drivers: readonly Driver[], leads = (_: string) => true): string =>
  renderToStaticMarkup(<Drivers drivers={drivers} of="settling time" onChoose={() => {}} leads={leads} />);

const rows = (markup: string): string[] => markup.split("<tr").slice(2);
const text = (markup: string): string => markup.replace(/<[^>]*>/g, "|").replace(/\|+/g, "|");
const attributes = (markup: string, kind: string, name: string): string[] =>
  [...markup.matchAll(new RegExp(`<rect class="${kind}"[^>]* ${name}="([^"]*)"`, "g"))].map(
    ([, value]) => value,
  );

const TWO = [driver("b", 0.3, 0.04, 0.1), driver("a", 0.5, 0.1, 0.45)];

describe("bars", () => {
  test("the strongest first, each split into its own part and that with others, to the longest end", () => {
    const [first, second] = rows(html(TWO));
    expect(text(first)).toContain("|a|");
    // The longest bar with its error ends at 0.6.
    expect(attributes(first, "drivers-alone", "width")).toEqual(["75.00%"]);
    expect(attributes(first, "drivers-together", "x")).toEqual(["75.00%"]);
    expect(attributes(first, "drivers-together", "width")).toEqual(["8.33%"]);
    expect(attributes(second, "drivers-alone", "width")).toEqual(["16.67%"]);
    expect(attributes(second, "drivers-together", "width")).toEqual(["33.33%"]);
    expect(first).toContain('<line x1="66.67%" x2="100.00%"');
    expect(second).toContain('<line x1="43.33%" x2="56.67%"');
  });

  test("an own part estimated beyond the whole fills the bar and no more; below 0 there is none", () => {
    const [over, none] = rows(html([driver("a", 0.5, null, 0.52), driver("b", 0.1, null, -0.01)]));
    expect(attributes(over, "drivers-alone", "width")).toEqual(["100.00%"]);
    expect(over).not.toContain("drivers-together");
    expect(over).not.toContain("drivers-whisker");
    expect(attributes(none, "drivers-alone", "width")).toEqual(["0.00%"]);
    expect(attributes(none, "drivers-together", "width")).toEqual(["20.00%"]);
  });
});

describe("figures", () => {
  test("both parts with their errors, as exact as the value is told, errors upwards", () => {
    const [first, second] = rows(html([driver("a", 0.503, 0.041, 0.4), driver("b", 0.0123, 0.00412, 0)]));
    expect(text(first)).toContain("50 |± 5 %|40 |± 1 %|");
    expect(text(second)).toContain("1.2 |± 0.5 %|0.0 |± 1.0 %|");
  });

  test("columns are named, the picture is left to the eye, and the measure and its points are told", () => {
    const markup = html(TWO);
    expect(text(markup)).toContain("|in all|by itself|");
    expect(markup.match(/<td class="drivers-track" aria-hidden="true">/g)?.length).toBe(2);
    expect(text(markup)).toContain(
      "Measure: total Sobol&#x27; index of the rank of the settle time, 64 scrambled Sobol&#x27; points; by itself: first-order Sobol&#x27; index. ± is one standard error.",
    );
  });

  test("without a part of its own there is one column, and no talk of others", () => {
    const markup = html([
      { key: "a", measure: "first-order Sobol' index", value: 0.4, error: 0.02, alone: null },
    ]);
    expect(text(markup)).toContain("40 |± 2 %|");
    expect(text(markup)).not.toContain("together");
    expect(text(markup)).not.toContain("in all");
  });
});

test("an input that leads nowhere is no button", () => {
  const [first, second] = rows(html(TWO, (key) => key === "a"));
  expect([first.includes("<button"), second.includes("<button")]).toEqual([true, false]);
});

test("the weak ones wait behind a button that says how weak they are", () => {
  const many = Array.from({ length: 11 }, (_, i) => driver(`k${i}`, 0.5 / (i + 1), 0.001, 0));
  const markup = html(many);
  expect(rows(markup).length).toBe(8);
  expect(text(markup)).toContain("|3 more, 5.6 % and less|");
});
