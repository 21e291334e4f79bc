/** Figures a map offers: all there are, once each, in words of the page. */
import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { studyView } from "../../../core/review/study-view.ts";
import { words } from "../../../core/review/words.ts";
import { doorMap } from "../../../core/study/map.ts";
import { parseAxis } from "../../../core/study/map-axis.ts";
import { withSampled } from "../../../core/study/sampled-figures.ts";
import {
  absentWords,
  FIGURE_GROUPS,
  figureScale,
  figureTitle,
  isSampled,
} from "../../../renderer/plots/map-figures.ts";
import { exampleText } from "../example.ts";

const offered = FIGURE_GROUPS.flatMap(({ figures }) => figures);

describe("what is offered", () => {
  test("is every figure the map's thread can compute, once each", () => {
    const computed = withSampled(studyView(words("metric"))).figures.map(({ name }) => name);
    expect(offered.map(({ name }) => name).sort()).toEqual([...computed].sort());
    expect(new Set(offered.map(({ name }) => name)).size).toBe(offered.length);
  });

  test("has titles that differ within their group, and groups that are not empty", () => {
    for (const { title, figures } of FIGURE_GROUPS) {
      expect([title, figures.length > 0]).toEqual([title, true]);
      expect(new Set(figures.map((figure) => figure.title)).size).toBe(figures.length);
    }
  });

  test("has the figures with the tolerances in apart from the rest", () => {
    const mixed = FIGURE_GROUPS.filter(({ figures }) => {
      const sampled = figures.filter(({ name }) => isSampled(name)).length;
      return sampled !== 0 && sampled !== figures.length;
    });
    expect(mixed).toEqual([]);
    expect(offered.filter(({ name }) => isSampled(name)).length).toBe(5);
    expect([isSampled("swing.settleTime"), isSampled("toString")]).toEqual([false, false]);
  });
});

test("titles are the page's own; what is no figure keeps its own", () => {
  expect(figureTitle("sampled.settle95", "?")).toBe("95 % of all passages are settled within");
  expect(figureTitle("wind.gust", "the flap in wind")).toBe("the flap in wind");
});

test("shares of passages are in per cent, times in seconds", () => {
  const share = figureScale("sampled.caught", "1", 0.5, "metric");
  expect([share.unit, share.of(0.995)]).toEqual(["%", 99.5]);
  const time = figureScale("sampled.settle95", "s", 7, "metric");
  expect(time.unit).toBe("s");
  expect(time.of(6.5)).toBeCloseTo(6.5, 9);
  expect(figureScale("swing.centrePasses", "1", 12, "metric").unit).toBe("");
});

test("a door without a timer has no share caught at the hold: absent, with the reason", () => {
  const file = JSON.parse(exampleText("medium-dog"));
  delete file.timer;
  const read = readDoor(JSON.stringify(file));
  if (!read.ok) throw new Error("does not read");
  const axis = parseAxis("magnets.gap=4 mm..6 mm:2", read.door);
  if (!axis.ok) throw new Error("no axis");
  const request = { x: axis.axis, y: null, of: "sampled.caught" };
  const made = doorMap(read.file, read.door, request, withSampled(studyView(words("metric"))));
  if (!made.ok) throw new Error("no map");
  expect([...made.map.points()].map(({ value }) => value)).toEqual([null, null]);
  expect(absentWords("sampled.caught")).toBe("no timer");
  expect(absentWords("hold.required")).toBe("does not exist");
});
