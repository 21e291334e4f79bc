import { expect, test } from "vitest";
import { readme, withFreshBlocks } from "./readme-blocks.mjs";

test("the README's worked examples are what the program prints", () => {
  const text = readme();
  expect(text).toContain("$ npm run -s swingstill -- fit");
  expect(text).toContain("$ npm run -s swingstill -- hold");
  expect(withFreshBlocks(text)).toBe(text);
}, 300_000);
