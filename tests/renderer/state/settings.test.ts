import { describe, expect, test } from "vitest";
import { createSettings, readSettings, ZOOMS, zoomStep } from "../../../renderer/state/settings.ts";

function shelf(start: Record<string, string> = {}) {
  const kept = new Map(Object.entries(start));
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}

test("what was chosen is there the next time", () => {
  const place = shelf();
  const chosen = { theme: "dark", units: "inch", zoom: 1.5, paper: "a4", symbols: "ieee" } as const;
  createSettings(place).setState(chosen);
  expect(readSettings(place)).toEqual(chosen);
});

describe("whatever else is kept gives the usual settings", () => {
  test.each(["", "null", "[]", "3", "{", '{"theme":"pink","units":7,"zoom":1e9,"paper":"a0","symbols":[]}'])(
    "%s",
    (text) => {
      const usual = { theme: "system", units: "metric", zoom: 1, paper: null, symbols: null };
      expect(readSettings(shelf({ "swingstill-settings": text }))).toEqual(usual);
    },
  );
});

test("a shelf that refuses does not stop the page", () => {
  const refusing = {
    getItem: () => {
      throw new Error("forbidden");
    },
    setItem: () => {
      throw new Error("forbidden");
    },
  };
  const settings = createSettings(refusing);
  settings.setState({ units: "inch" });
  expect(settings.getState().units).toBe("inch");
});

test("text sizes go up and down within their ends", () => {
  expect(zoomStep(1, 1)).toBe(1.1);
  expect(zoomStep(1, -1)).toBe(0.9);
  expect(zoomStep(2, 1)).toBe(2);
  expect(zoomStep(ZOOMS[0], -1)).toBe(ZOOMS[0]);
});
