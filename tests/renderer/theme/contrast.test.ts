/** WCAG 2.2, success criterion 1.4.3: relative luminance and contrast ratio of the theme's colours. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync(new URL("../../../renderer/theme/tokens.css", import.meta.url), "utf8");

function coloursIn(block: string): Map<string, string> {
  return new Map(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map(([, name, value]) => [name, value]),
  );
}

const [lightBlock, darkBlock] = css.split(':root[data-theme="dark"]');
const light = coloursIn(lightBlock);
const dark = new Map([...light, ...coloursIn(darkBlock)]);

function luminance(colour: string): number {
  const channel = (at: number): number => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

test("black on white is 21 to 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
});

const TEXTS = ["ink", "ink-soft", "act", "open", "caught", "riding", "shut-out", "ghost"];
const GROUNDS = ["paper", "bench", "well"];
const PAIRS = [
  ...TEXTS.flatMap((text) => GROUNDS.map((ground) => [text, ground] as const)),
  ...["open", "caught", "riding", "shut-out"].map((name) => [name, `${name}-soft`] as const),
  ["ink", "act-soft"],
  ["ink-soft", "act-soft"],
  ["act-ink", "act"],
  ["paper", "ink"],
] as const;

describe.each([
  ["light", light],
  ["dark", dark],
] as const)("in %s colours", (_, colours) => {
  const of = (name: string): string => {
    const colour = colours.get(name);
    if (colour === undefined) throw new Error(`there is no colour --${name}`);
    return colour;
  };
  test.each(PAIRS)("%s on %s is at least 4.5 to 1", (text, ground) => {
    expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(4.5);
  });
  test.each(GROUNDS)("the focus ring and the edges of inputs stand out from %s, 3 to 1", (ground) => {
    expect(contrast(of("focus"), of(ground))).toBeGreaterThanOrEqual(3);
    expect(contrast(of("line-strong"), of(ground))).toBeGreaterThanOrEqual(3);
  });
});
